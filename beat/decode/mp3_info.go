package decode

import (
	"bytes"
	"encoding/binary"
)

// synthesisDelay is what a layer III decoder adds to the encoder's delay
// [samples]. Ref: LAME technical FAQ (528 + 1).
const synthesisDelay = 529

// mp3Info is what the frame that encoders put first says about the stream. It
// holds no sound and is never played.
type mp3Info struct {
	kind    string // "Xing", "Info" or "VBRI"
	frames  int64  // frames of sound that follow; 0: not said
	gapless bool   // delay and padding are known
	delay   int    // samples that the encoder put before the music
	padding int    // samples that the encoder put behind it
}

// gaplessEncoders start the encoder field of those whose delay and padding
// ffmpeg and browsers trust. A delay that players leave in must stay in.
var gaplessEncoders = []string{"LAME", "Lavf", "Lavc"}

// readMP3Info looks for the tag in the first frame of a stream.
//
// Ref: "MP3 Info Tag" rev. 1 (LAME project); Xing and Fraunhofer VBR headers.
func readMP3Info(h mp3Header, frame []byte) (mp3Info, bool) {
	const vbriOffset = mp3HeaderSize + 32 // whatever the channel mode
	// Encoders differ on whether a checksum moves the tag.
	for _, at := range [2]int{mp3HeaderSize + h.sideInfo(), h.body() + h.sideInfo()} {
		if at+8 > len(frame) {
			continue
		}
		if kind := string(frame[at : at+4]); kind == "Xing" || kind == "Info" {
			return readXing(kind, frame[at+4:]), true
		}
	}
	if at := vbriOffset; at+18 <= len(frame) && string(frame[at:at+4]) == "VBRI" {
		return mp3Info{kind: "VBRI", frames: int64(binary.BigEndian.Uint32(frame[at+14:]))}, true
	}
	return mp3Info{}, false
}

// readXing reads the fields behind the four letters.
func readXing(kind string, b []byte) mp3Info {
	info := mp3Info{kind: kind}
	flags := binary.BigEndian.Uint32(b)
	b = b[4:]
	const framesFlag, tocSize = 0, 100
	for i, size := range [4]int{4, 4, tocSize, 4} { // frames, bytes, seek table, quality
		if flags>>i&1 == 0 {
			continue
		}
		if len(b) < size {
			return info
		}
		if i == framesFlag {
			info.frames = int64(binary.BigEndian.Uint32(b))
		}
		b = b[size:]
	}
	const delayOffset = 21
	if len(b) < delayOffset+3 {
		return info
	}
	for _, encoder := range gaplessEncoders {
		if bytes.HasPrefix(b, []byte(encoder)) {
			v := int(b[delayOffset])<<16 | int(b[delayOffset+1])<<8 | int(b[delayOffset+2])
			info.gapless, info.delay, info.padding = true, v>>12, v&0xFFF
		}
	}
	return info
}
