package decode

import (
	"bufio"
	"bytes"
	"crypto/md5"
	"errors"
	"fmt"
	"hash"
	"io"
	"time"

	"github.com/mewkiz/flac/frame"
	"github.com/mewkiz/flac/meta"
)

// flacStream decodes a FLAC file frame by frame. Frames carry their place in
// the music, so that sound lost to damage becomes silence of the right length.
type flacStream struct {
	info    meta.StreamInfo
	src     io.ReaderAt
	in      flacReader
	end     int64 // of the file [bytes]
	fold    *fold
	at      int64 // samples given so far, per channel
	silence int64 // samples to fill in before the next frame, per channel
	next    *frame.Frame
	pending []float32
	wide    []float32
	buf     []float32
	sum     hash.Hash
	raw     []byte

	damaged int // places where frames were lost
	lost    int64
	failed  bool // the samples are not those that were encoded
	ended   bool
}

// flacReader counts the bytes that the frame parser takes.
type flacReader struct {
	*bufio.Reader
	offset int64 // in the file [bytes]
}

func (r *flacReader) Read(p []byte) (int, error) {
	n, err := r.Reader.Read(p)
	r.offset += int64(n)
	return n, err
}

const flacBuffer = 64 << 10 // [bytes]

// newFLAC reads the description of the stream and skips the tags.
func newFLAC(r io.ReaderAt, size int64) (decoder, error) {
	f := &flacStream{src: r, end: size, sum: md5.New()}
	const signature = 4
	f.seek(skipTags(r, size) + signature)
	if err := f.readInfo(); err != nil {
		return nil, err
	}
	if bits := f.info.BitsPerSample; bits > 24 {
		return nil, unsupportedError(fmt.Sprintf("FLAC with %d-bit samples", bits))
	}
	if err := checkRate(int(f.info.SampleRate)); err != nil {
		return nil, err
	}
	f.fold = newFold(int(f.info.NChannels), 0)
	return f, nil
}

// readInfo reads the metadata blocks; only the first matters here.
func (f *flacStream) readInfo() (err error) {
	defer recovered(&err)
	block, err := meta.New(&f.in)
	if err == nil && block.Type != meta.TypeStreamInfo {
		return errors.New("the file does not begin with its stream information")
	}
	if err == nil {
		err = block.Parse()
	}
	if err != nil {
		return fmt.Errorf("the header is damaged: %w", err)
	}
	f.info = *block.Body.(*meta.StreamInfo)
	for !block.IsLast {
		if block, err = meta.New(&f.in); err != nil {
			return errors.New("the file ends within its tags")
		}
		if err = discard(&f.in, block.Length); err != nil {
			return errors.New("the file ends within its tags")
		}
	}
	return nil
}

// seek goes on reading at an offset in the file.
func (f *flacStream) seek(offset int64) {
	section := io.NewSectionReader(f.src, offset, max(0, f.end-offset))
	if f.in.Reader == nil {
		f.in.Reader = bufio.NewReaderSize(section, flacBuffer)
	} else {
		f.in.Reader.Reset(section)
	}
	f.in.offset = offset
}

func (f *flacStream) rate() int     { return int(f.info.SampleRate) }
func (f *flacStream) channels() int { return f.fold.out }

func (f *flacStream) read(dst []float32) (int, error) {
	for len(f.pending) == 0 {
		if f.silence > 0 {
			n := min(f.silence, int64(len(dst)/f.fold.out))
			f.silence -= n
			f.at += n
			clear(dst[:int(n)*f.fold.out])
			return int(n) * f.fold.out, nil
		}
		if f.next == nil {
			if err := f.advance(); err != nil {
				f.ended = true
				return 0, err
			}
			continue
		}
		f.unpack(f.next)
		f.next = nil
	}
	n := copy(dst, f.pending)
	f.pending = f.pending[n:]
	return n, nil
}

// advance finds the next frame, behind damage if need be.
func (f *flacStream) advance() error {
	start := f.in.offset
	next, err := f.parse(&f.in)
	if err == io.EOF {
		return io.EOF
	}
	if err == nil {
		f.next = next
		return nil
	}
	f.failed = true
	next, lost := f.resync(start + 1)
	if next == nil {
		return io.EOF
	}
	f.damaged++
	f.next = next
	if gap := f.sampleNumber(next) - f.at; f.believable(gap, lost) {
		f.silence = gap
		f.lost += gap
	}
	return nil
}

// parse reads one frame that belongs to this stream.
func (f *flacStream) parse(r io.Reader) (fr *frame.Frame, err error) {
	defer recovered(&err)
	if fr, err = frame.New(r); err != nil {
		return nil, err
	}
	if !f.fits(fr) {
		return nil, errors.New("the frame belongs to another stream")
	}
	fr.BitsPerSample = f.info.BitsPerSample
	return fr, fr.Parse()
}

// fits reports whether a header agrees with the stream's description, which
// speaks where the header leaves a field open.
func (f *flacStream) fits(fr *frame.Frame) bool {
	return fr.BlockSize > 0 && fr.Channels.Count() == int(f.info.NChannels) &&
		(fr.SampleRate == 0 || fr.SampleRate == f.info.SampleRate) &&
		(fr.BitsPerSample == 0 || fr.BitsPerSample == f.info.BitsPerSample)
}

// unpack turns a frame into samples.
func (f *flacStream) unpack(fr *frame.Frame) {
	channels := int(f.info.NChannels)
	n := len(fr.Subframes[0].Samples)
	for _, s := range fr.Subframes {
		n = min(n, len(s.Samples))
	}
	f.digest(fr, n)
	scale := 1 / float32(int64(1)<<(f.info.BitsPerSample-1))
	f.wide = f.wide[:0]
	for i := range n {
		for _, s := range fr.Subframes {
			f.wide = append(f.wide, max(-1, min(1, float32(s.Samples[i])*scale)))
		}
	}
	if need := n * f.fold.out; cap(f.buf) < need {
		f.buf = make([]float32, need)
	}
	f.pending = f.buf[:f.fold.mix(f.buf[:cap(f.buf)], f.wide[:n*channels])]
	f.at += int64(n)
}

// digest adds n samples of each channel to the checksum of the stream.
func (f *flacStream) digest(fr *frame.Frame, n int) {
	width := (int(f.info.BitsPerSample) + 7) / 8
	f.raw = f.raw[:0]
	for i := range n {
		for _, s := range fr.Subframes {
			v := s.Samples[i]
			for k := range width {
				f.raw = append(f.raw, byte(v>>(8*k)))
			}
		}
	}
	f.sum.Write(f.raw)
}

func (f *flacStream) notes() []string {
	notes := f.fold.notes()
	rate := float64(f.info.SampleRate)
	seconds := func(n int64) time.Duration {
		return time.Duration(float64(n) / rate * float64(time.Second)).Round(time.Millisecond)
	}
	if f.damaged > 0 {
		notes = append(notes, fmt.Sprintf("damaged in %s, %s muted", plural(f.damaged, "place"), seconds(f.lost)))
	}
	if !f.ended {
		return notes
	}
	total := int64(f.info.NSamples)
	switch {
	case total > f.at:
		notes = append(notes, fmt.Sprintf("the file is cut: %s of %s", seconds(f.at), seconds(total)))
	case !f.failed && f.info.MD5sum != [md5.Size]byte{} && !bytes.Equal(f.sum.Sum(nil), f.info.MD5sum[:]):
		notes = append(notes, "the samples differ from the checksum in the file")
	}
	return notes
}
