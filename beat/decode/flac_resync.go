package decode

import (
	"bufio"
	"bytes"
	"io"

	"github.com/mewkiz/flac/frame"
)

// sampleNumber is where in the music a frame begins [samples]. All frames but
// the last are equally long where the block size is fixed.
func (f *flacStream) sampleNumber(fr *frame.Frame) int64 {
	if fr.HasFixedBlockSize {
		return int64(fr.Num) * int64(f.info.BlockSizeMax)
	}
	return int64(fr.Num)
}

// believable reports whether so many samples can have stood in so many bytes.
// A frame number that damage made up would fill in hours of silence.
func (f *flacStream) believable(gap, lostBytes int64) bool {
	if f.info.NSamples > 0 && f.at+gap > int64(f.info.NSamples) {
		return false
	}
	const shortestFrame = 10 // [bytes]
	return gap >= 0 && gap <= (lostBytes/shortestFrame+1)*int64(f.info.BlockSizeMax)
}

// resync finds the next whole frame from an offset on, and how many bytes were
// lost before it. The frame is nil when there is none within reach.
func (f *flacStream) resync(from int64) (*frame.Frame, int64) {
	const (
		reach     = 16 << 20 // [bytes]
		maxHeader = 16       // [bytes]
	)
	scan := bufio.NewReaderSize(io.NewSectionReader(f.src, from, min(reach, max(0, f.end-from))), flacBuffer)
	for at := from; ; at++ {
		b, _ := scan.Peek(maxHeader)
		if len(b) < 2 {
			return nil, 0
		}
		if b[0] == 0xFF && b[1]&0xFE == 0xF8 {
			if header, err := frame.New(bytes.NewReader(b)); err == nil && f.fits(header) {
				f.seek(at)
				if fr, err := f.parse(&f.in); err == nil {
					return fr, at - from + 1
				}
			}
		}
		scan.Discard(1)
	}
}
