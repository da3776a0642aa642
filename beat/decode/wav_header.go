package decode

import (
	"encoding/binary"
	"errors"
	"fmt"
	"io"
)

// Format tags of a WAV file's fmt chunk.
const (
	wavPCM        = 0x0001
	wavFloat      = 0x0003
	wavExtensible = 0xFFFE
)

// wavHeader is what a WAV file says before its samples.
type wavHeader struct {
	tag      int    // wavPCM, wavFloat, or one that is not built in
	channels int    // 1..maxChannels
	rate     int    // [Hz]
	bytes    int    // of one sample of one channel
	bits     int    // of these, the ones that carry sound
	mask     uint32 // speakers, in the order of the channels; 0: not said
	size     int64  // of the samples [bytes]; -1: up to the end of the file
}

const maxChannels = 64

// checkRate refuses a sample rate that no music is stored at.
func checkRate(rate int) error {
	const low, high = 4000, 768000 // [Hz]
	if rate < low || rate > high {
		return fmt.Errorf("a sample rate of %d Hz", rate)
	}
	return nil
}

// blockSize is one sample of every channel [bytes].
func (h wavHeader) blockSize() int { return h.channels * h.bytes }

// readWAVHeader reads up to the first sample. It needs no seeking, so that the
// file may come through a pipe.
//
// Ref: Microsoft RIFF WAVE; EBU Tech 3306 (RF64).
func readWAVHeader(r io.Reader) (wavHeader, error) {
	var riff [12]byte
	if _, err := io.ReadFull(r, riff[:]); err != nil {
		return wavHeader{}, errors.New("the file ends within its header")
	}
	var h wavHeader
	long := int64(-1) // the size of the samples from the ds64 chunk
	for {
		var chunk [8]byte
		if _, err := io.ReadFull(r, chunk[:]); err != nil {
			return h, errors.New("no samples: the file ends before its data chunk")
		}
		size := binary.LittleEndian.Uint32(chunk[4:])
		switch id := string(chunk[:4]); id {
		case "data":
			if h.rate == 0 {
				return h, errors.New("the samples come before the fmt chunk that describes them")
			}
			h.size = dataSize(size, long)
			return h, nil
		case "fmt ":
			b, err := readChunk(r, size, 16, 40)
			if err != nil {
				return h, err
			}
			if h, err = readFmt(b); err != nil {
				return h, err
			}
		case "ds64":
			b, err := readChunk(r, size, 24, 24)
			if err != nil {
				return h, err
			}
			long = int64(binary.LittleEndian.Uint64(b[8:]) & (1<<63 - 1))
		default:
			if err := discard(r, padded(size)); err != nil {
				return h, fmt.Errorf("the file ends within its %q chunk", id)
			}
		}
	}
}

// dataSize is the size of the samples [bytes], -1 for up to the end. A program
// that writes to a pipe cannot know the size and leaves 0 or the largest one.
func dataSize(size uint32, long int64) int64 {
	const unknown = 0xFFFFFFFF
	switch {
	case size == unknown && long > 0:
		return long
	case size == unknown || size == 0:
		return -1
	}
	return int64(size)
}

// readChunk reads a chunk of at least low bytes and keeps no more than high.
func readChunk(r io.Reader, size uint32, low, high int64) ([]byte, error) {
	if int64(size) < low {
		return nil, fmt.Errorf("a header chunk of %d bytes, %d expected", size, low)
	}
	b := make([]byte, min(int64(size), high))
	if _, err := io.ReadFull(r, b); err != nil {
		return nil, errors.New("the file ends within its header")
	}
	if err := discard(r, padded(size)-int64(len(b))); err != nil {
		return nil, errors.New("the file ends within its header")
	}
	return b, nil
}

// padded is the room that a chunk takes: an even number of bytes.
func padded(size uint32) int64 { return int64(size) + int64(size&1) }

func discard(r io.Reader, n int64) error {
	_, err := io.CopyN(io.Discard, r, n)
	return err
}

// readFmt reads the body of the fmt chunk.
func readFmt(b []byte) (wavHeader, error) {
	u16 := func(at int) int { return int(binary.LittleEndian.Uint16(b[at:])) }
	h := wavHeader{tag: u16(0), channels: u16(2), rate: int(binary.LittleEndian.Uint32(b[4:])), bits: u16(14)}
	block := u16(12)
	if h.channels < 1 || h.channels > maxChannels {
		return h, fmt.Errorf("%d channels", h.channels)
	}
	if err := checkRate(h.rate); err != nil {
		return h, err
	}
	h.bytes = (h.bits + 7) / 8
	if h.tag == wavExtensible && len(b) >= 40 {
		h.tag, h.mask = u16(24), binary.LittleEndian.Uint32(b[20:])
		if valid := u16(18); valid > 0 && valid < h.bits {
			h.bits = valid
		}
	}
	// A block that holds more than the bits need says how wide the samples are.
	if block%h.channels == 0 && block/h.channels > h.bytes && block/h.channels <= 4 && h.tag == wavPCM {
		h.bytes = block / h.channels
	}
	return h, nil
}
