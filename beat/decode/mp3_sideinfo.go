package decode

import "encoding/binary"

// sideInfo is what the core must know of a frame's side information.
type sideInfo struct {
	back      int  // main_data_begin: bytes taken from frames before
	bits      int  // length of all granules [bit]
	plausible bool // every field is within what the standard allows
}

// readSideInfo reads the side information of a layer III frame.
//
// Ref: ISO/IEC 11172-3 2.4.1.7 and 13818-3 2.4.1.7.
func readSideInfo(h mp3Header, b []byte) sideInfo {
	r := bitReader{b: b}
	info := sideInfo{plausible: true}
	granules, scaleBits, tail := 2, 4, 3 // preflag, scale, table of count1
	channels := h.channels()
	if h.version == mpeg1 {
		const scfsi = 4
		info.back = r.bits(9)
		r.bits([3]int{0, 5, 3}[channels] + channels*scfsi)
	} else {
		granules, scaleBits, tail = 1, 9, 2
		info.back = r.bits(8)
		r.bits(channels) // private
	}
	const maxBigValues = 288 // pairs of the 576 lines
	for range granules * channels {
		info.bits += r.bits(12)
		if r.bits(9) > maxBigValues {
			info.plausible = false
		}
		r.bits(8 + scaleBits) // gain, scale factors
		if r.bits(1) == 1 {   // a window other than the long one
			const longBlock = 0
			if r.bits(2) == longBlock {
				info.plausible = false
			}
			r.bits(1 + 2*5 + 3*3) // mixed, tables, gains
		} else {
			r.bits(3*5 + 4 + 3) // tables, regions
		}
		r.bits(tail)
	}
	return info
}

// muteSideInfo makes a frame silent and keeps its bytes for those that follow.
func muteSideInfo(h mp3Header, b []byte, back int) {
	clear(b)
	if h.version == mpeg1 {
		binary.BigEndian.PutUint16(b, uint16(back<<7))
	} else {
		b[0] = byte(back)
	}
}

// bitReader reads big-endian bit fields of up to 32 bits.
type bitReader struct {
	b  []byte
	at int // [bit]
}

func (r *bitReader) bits(n int) int {
	v := 0
	for range n {
		v <<= 1
		if i := r.at >> 3; i < len(r.b) {
			v |= int(r.b[i]>>(7-r.at&7)) & 1
		}
		r.at++
	}
	return v
}
