package decode

import "encoding/binary"

// mpegVersion is the version field of an MPEG audio header.
type mpegVersion int

const (
	mpeg25 mpegVersion = iota
	mpegReserved
	mpeg2
	mpeg1
)

// Values of the channel mode field.
const (
	modeJoint = 1
	modeMono  = 3
)

// mp3Header is the 32-bit header of an MPEG audio frame.
//
// Ref: ISO/IEC 11172-3 2.4.1.3 and 13818-3 2.4.2.3.
type mp3Header struct {
	version   mpegVersion
	layer     int // 1..3
	crc       bool
	bitrate   int // [bit/s]; 0 is free format
	rate      int // [Hz]
	padding   int // 0 or 1 slots
	mode      int
	extension int // what joint stereo joins: 1 intensity, 2 mid and side
}

const mp3HeaderSize = 4 // [bytes]

// bitrates holds [kbit/s] by row (MPEG-1 layer I, II, III, MPEG-2 layer I,
// MPEG-2 layers II and III) and the index of the header.
var bitrates = [5][15]int{
	{0, 32, 64, 96, 128, 160, 192, 224, 256, 288, 320, 352, 384, 416, 448},
	{0, 32, 48, 56, 64, 80, 96, 112, 128, 160, 192, 224, 256, 320, 384},
	{0, 32, 40, 48, 56, 64, 80, 96, 112, 128, 160, 192, 224, 256, 320},
	{0, 32, 48, 56, 64, 80, 96, 112, 128, 144, 160, 176, 192, 224, 256},
	{0, 8, 16, 24, 32, 40, 48, 56, 64, 80, 96, 112, 128, 144, 160},
}

var mpeg1Rates = [3]int{44100, 48000, 32000} // [Hz]

// parseMP3Header reads the header at the start of b. It reports false for
// anything that no frame starts with.
func parseMP3Header(b []byte) (mp3Header, bool) {
	if len(b) < mp3HeaderSize || b[0] != 0xFF || b[1]&0xE0 != 0xE0 {
		return mp3Header{}, false
	}
	w := binary.BigEndian.Uint32(b)
	version := mpegVersion(w >> 19 & 3)
	layer := 4 - int(w>>17&3)
	bitrate, rate := int(w>>12&15), int(w>>10&3)
	const reservedEmphasis = 2
	if version == mpegReserved || layer == 4 || bitrate == 15 || rate == 3 || w&3 == reservedEmphasis {
		return mp3Header{}, false
	}
	h := mp3Header{
		version:   version,
		layer:     layer,
		crc:       w>>16&1 == 0,
		rate:      mpeg1Rates[rate],
		padding:   int(w >> 9 & 1),
		mode:      int(w >> 6 & 3),
		extension: int(w >> 4 & 3),
	}
	row := layer - 1
	switch {
	case version == mpeg1:
	case layer == 1:
		row = 3
	default:
		row = 4
	}
	h.bitrate = bitrates[row][bitrate] * 1000
	switch version {
	case mpeg2:
		h.rate /= 2
	case mpeg25:
		h.rate /= 4
	}
	return h, true
}

// size is the length of the frame with its header [bytes], 0 in free format.
func (h mp3Header) size() int {
	if h.bitrate == 0 {
		return 0
	}
	const layer1Slot = 4 // [bytes]
	if h.layer == 1 {
		return (h.samples()/(8*layer1Slot)*h.bitrate/h.rate + h.padding) * layer1Slot
	}
	return h.samples()/8*h.bitrate/h.rate + h.padding
}

// samples is the length of the frame [samples per channel].
func (h mp3Header) samples() int {
	switch {
	case h.layer == 1:
		return 384
	case h.layer == 3 && h.version != mpeg1:
		return 576
	}
	return 1152
}

func (h mp3Header) channels() int {
	if h.mode == modeMono {
		return 1
	}
	return 2
}

// sideInfo is the length of layer III's side information [bytes].
func (h mp3Header) sideInfo() int {
	switch {
	case h.version == mpeg1 && h.mode == modeMono:
		return 17
	case h.version == mpeg1:
		return 32
	case h.mode == modeMono:
		return 9
	}
	return 17
}

// body is where the side information begins, after header and checksum [bytes].
func (h mp3Header) body() int {
	const crcSize = 2
	if h.crc {
		return mp3HeaderSize + crcSize
	}
	return mp3HeaderSize
}

// agrees reports whether both frames can belong to one stream.
func (h mp3Header) agrees(o mp3Header) bool {
	return h.version == o.version && h.layer == o.layer && h.rate == o.rate
}

// intensity reports whether the frame joins its channels by intensity.
func (h mp3Header) intensity() bool {
	return h.mode == modeJoint && h.extension&1 != 0
}
