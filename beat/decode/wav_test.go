package decode

import (
	"encoding/binary"
	"errors"
	"io"
	"math"
	"slices"
	"strings"
	"testing"
)

// wavBytes builds a WAV file out of chunks.
func wavBytes(chunks ...[]byte) []byte {
	b := append([]byte("RIFF\x00\x00\x00\x00WAVE"), slices.Concat(chunks...)...)
	binary.LittleEndian.PutUint32(b[4:], uint32(len(b)-8))
	return b
}

// chunk is one RIFF chunk, padded to an even length.
func chunk(id string, body []byte) []byte {
	b := binary.LittleEndian.AppendUint32([]byte(id), uint32(len(body)))
	b = append(b, body...)
	if len(body)%2 == 1 {
		b = append(b, 0)
	}
	return b
}

// fmtChunk is the plain description of samples.
func fmtChunk(tag, channels, rate, bits int) []byte {
	return chunk("fmt ", fmtBody(tag, channels, rate, bits, (bits+7)/8))
}

func fmtBody(tag, channels, rate, bits, width int) []byte {
	le := binary.LittleEndian
	b := le.AppendUint16(nil, uint16(tag))
	b = le.AppendUint16(b, uint16(channels))
	b = le.AppendUint32(b, uint32(rate))
	b = le.AppendUint32(b, uint32(rate*channels*width))
	b = le.AppendUint16(b, uint16(channels*width))
	return le.AppendUint16(b, uint16(bits))
}

// extensible is the long description, with the tag in a GUID.
func extensible(tag, channels, rate, bits, valid int, mask uint32) []byte {
	le := binary.LittleEndian
	b := le.AppendUint16(fmtBody(wavExtensible, channels, rate, bits, bits/8), 22)
	b = le.AppendUint16(b, uint16(valid))
	b = le.AppendUint32(b, mask)
	b = le.AppendUint16(b, uint16(tag))
	return chunk("fmt ", append(b, "\x00\x00\x00\x00\x10\x00\x80\x00\x00\xAA\x00\x38\x9B\x71"...))
}

func floats(width int, v ...float64) []byte {
	var b []byte
	for _, x := range v {
		if width == 8 {
			b = binary.LittleEndian.AppendUint64(b, math.Float64bits(x))
		} else {
			b = binary.LittleEndian.AppendUint32(b, math.Float32bits(float32(x)))
		}
	}
	return b
}

// sized gives a data chunk another size than it has.
func sized(c []byte, size uint32) []byte {
	c = slices.Clone(c)
	binary.LittleEndian.PutUint32(c[4:], size)
	return c
}

// rf64 is a WAV file with its sizes in a ds64 chunk.
func rf64(magic string, size uint64, chunks ...[]byte) []byte {
	ds := binary.LittleEndian.AppendUint64(make([]byte, 8), size)
	b := wavBytes(append([][]byte{chunk("ds64", append(ds, make([]byte, 12)...))}, chunks...)...)
	copy(b, magic+"\xFF\xFF\xFF\xFF")
	return b
}

var pcm16 = chunk("data", []byte{0x00, 0x40, 0x00, 0x80, 0xFF, 0x7F, 0x00, 0x00}) // .5, -1, 1-, 0

var samples16 = []float32{0.5, -1, 32767.0 / 32768, 0}

var wavCases = []struct {
	name     string
	file     []byte
	channels int
	want     []float32
	noted    string
}{
	{"8 bit", wavBytes(fmtChunk(wavPCM, 1, 8000, 8), chunk("data", []byte{0x80, 0x00, 0xFF, 0xC0, 0x40})), 1,
		[]float32{0, -1, 127.0 / 128, 0.5, -0.5}, ""},
	{"16 bit", wavBytes(fmtChunk(wavPCM, 2, 44100, 16), pcm16), 2, samples16, ""},
	{"24 bit", wavBytes(fmtChunk(wavPCM, 1, 44100, 24), chunk("data",
		[]byte{0, 0, 0x40, 0, 0, 0x80, 1, 0, 0, 0xFF, 0xFF, 0xFF})), 1, []float32{0.5, -1, 1.0 / (1 << 23), -1.0 / (1 << 23)},
		""},
	{"32 bit", wavBytes(fmtChunk(wavPCM, 1, 44100, 32), chunk("data", []byte{0, 0, 0, 0x40, 0, 0, 0, 0x80})), 1,
		[]float32{0.5, -1}, ""},
	{"20 bit in 3 bytes", wavBytes(fmtChunk(wavPCM, 1, 44100, 20), chunk("data", []byte{0, 0, 0x40})), 1, []float32{0.5},
		""},
	{"24 bit in 4 bytes", wavBytes(chunk("fmt ", fmtBody(wavPCM, 1, 44100, 24, 4)), chunk("data", []byte{0, 0, 0, 0xC0})),
		1,
		[]float32{-0.5}, ""},
	{"float", wavBytes(fmtChunk(wavFloat, 2, 44100, 32), chunk("data", floats(4, 0.25, -0.5))), 2, []float32{0.25, -0.5},
		""},
	{"double", wavBytes(fmtChunk(wavFloat, 1, 44100, 64), chunk("data", floats(8, 0.25, -0.5))), 1, []float32{0.25, -0.5},
		""},
	{"float beyond full scale", wavBytes(fmtChunk(wavFloat, 1, 44100, 32),
		chunk("data", floats(4, 3, -7, math.Inf(1), math.NaN()))), 1, []float32{1, -1, 1, 0}, "1 sample muted: not a number"},
	{"extensible", wavBytes(extensible(wavPCM, 2, 48000, 16, 16, 3), pcm16), 2, samples16, ""},
	{"extensible float", wavBytes(extensible(wavFloat, 1, 48000, 32, 32, 4), chunk("data", floats(4, 0.75))), 1,
		[]float32{0.75}, ""},
	{"extensible 24 bit in 4 bytes", wavBytes(extensible(wavPCM, 1, 96000, 32, 24, 4),
		chunk("data", []byte{0, 0, 0, 0x40})), 1,
		[]float32{0.5}, ""},
	{"four channels", wavBytes(extensible(wavFloat, 4, 48000, 32, 32, uint32(frontLeft|frontRight|backLeft|backRight)),
		chunk("data", floats(4, 1, 0, 0, 0, 0, 1, 0, 1))), 2, []float32{float32(1 / (1 + math.Sqrt2/2)), 0, 0, 1},
		"4 channels folded to 2"},
	{"low frequency channel", wavBytes(extensible(wavFloat, 3, 48000, 32, 32, uint32(frontLeft|frontRight|lowFrequency)),
		chunk("data", floats(4, 0.5, -0.5, 1))), 2, []float32{0.5, -0.5}, "3 channels folded to 2"},
	{"odd chunk before", wavBytes(chunk("note", []byte("abc")), fmtChunk(wavPCM, 2, 44100, 16), chunk("junk", []byte{1}),
		pcm16), 2,
		samples16, ""},
	{"chunks behind", wavBytes(fmtChunk(wavPCM, 2, 44100, 16), pcm16, chunk("LIST", make([]byte, 400))), 2, samples16, ""},
	{"size of a pipe", wavBytes(fmtChunk(wavPCM, 2, 44100, 16), sized(pcm16, 0xFFFFFFFF)), 2, samples16, ""},
	{"no size", wavBytes(fmtChunk(wavPCM, 2, 44100, 16), sized(pcm16, 0)), 2, samples16, ""},
	{"size beyond the end", wavBytes(fmtChunk(wavPCM, 2, 44100, 16), sized(pcm16, 1<<30)), 2, samples16, ""},
	{"size within the file", wavBytes(fmtChunk(wavPCM, 2, 44100, 16), sized(pcm16, 4)), 2, samples16[:2], ""},
	{"cut within a sample", wavBytes(fmtChunk(wavPCM, 2, 44100, 16), pcm16)[:44+7], 2, samples16[:2], ""},
	{"RF64", rf64("RF64", 4, fmtChunk(wavPCM, 2, 44100, 16), sized(pcm16, 0xFFFFFFFF)), 2, samples16[:2], ""},
	{"BW64", rf64("BW64", 8, fmtChunk(wavPCM, 2, 44100, 16), sized(pcm16, 0xFFFFFFFF)), 2, samples16, ""},
	{"RF64 with a wild size", rf64("RF64", math.MaxUint64, fmtChunk(wavPCM, 2, 44100, 16), sized(pcm16, 0xFFFFFFFF)), 2,
		samples16, ""},
	{"no samples", wavBytes(fmtChunk(wavPCM, 2, 44100, 16), chunk("data", nil)), 2, nil, ""},
	{"ID3 in front", joined(id3v2(100, false), wavBytes(fmtChunk(wavPCM, 2, 44100, 16), pcm16)), 2, samples16, ""},
}

func TestWAV(t *testing.T) {
	for _, c := range wavCases {
		t.Run(c.name, func(t *testing.T) {
			got := ours(t, writeFile(t, "music.wav", c.file), Builtin)
			if got.channels != c.channels || !slices.Equal(got.samples, c.want) {
				t.Errorf("%d channels %v, want %d %v", got.channels, got.samples, c.channels, c.want)
			}
			if notes := strings.Join(got.notes, "; "); notes != c.noted {
				t.Errorf("notes %q, want %q", notes, c.noted)
			}
		})
	}
}

// The same files through ffmpeg: both must read the same samples out of them.
func TestWAVAgainstFFmpeg(t *testing.T) {
	program(t, "ffmpeg", "ffmpeg")
	ffmpegDiffers := map[string]string{
		"float beyond full scale":      "ffmpeg does not limit",
		"four channels":                "ffmpeg's mix has other gains",
		"low frequency channel":        "ffmpeg's mix has other gains",
		"no samples":                   "an error there",
		"24 bit in 4 bytes":            "refused there",
		"extensible 24 bit in 4 bytes": "ffmpeg keeps the lower bits",
		"RF64 with a wild size":        "refused there",
		"20 bit in 3 bytes":            "refused there",
		"cut within a sample":          "ffmpeg keeps half a sample",
		"ID3 in front":                 "an error there",
	}
	for _, c := range wavCases {
		if ffmpegDiffers[c.name] != "" {
			continue
		}
		t.Run(c.name, func(t *testing.T) {
			path := writeFile(t, "music.wav", c.file)
			got := ours(t, path, Builtin)
			if want := theirs(t, path, got.rate, got.channels); !slices.Equal(got.samples, want.samples) {
				t.Errorf("%v, ffmpeg %v", got.samples, want.samples)
			}
		})
	}
}

func TestWAVProblems(t *testing.T) {
	for _, c := range []struct {
		name string
		file []byte
		want string
	}{
		{"header only", []byte("RIFF\x00\x00\x00\x00WAVE"), "wav: no samples: the file ends before its data chunk"},
		{"no fmt", wavBytes(pcm16), "wav: the samples come before the fmt chunk that describes them"},
		{"short fmt", wavBytes(chunk("fmt ", make([]byte, 8)), pcm16), "wav: a header chunk of 8 bytes, 16 expected"},
		{"no channels", wavBytes(fmtChunk(wavPCM, 0, 44100, 16), pcm16), "wav: 0 channels"},
		{"no rate", wavBytes(fmtChunk(wavPCM, 2, 0, 16), pcm16), "wav: a sample rate of 0 Hz"},
		{"chunk beyond the end", wavBytes(sized(chunk("LIST", nil), 0xFFFFFFF0), pcm16),
			`wav: the file ends within its "LIST" chunk`},
		{"ADPCM", wavBytes(fmtChunk(2, 2, 44100, 4), pcm16),
			"WAV with Microsoft ADPCM is not built in (let ffmpeg decode it)"},
		{"MP3", wavBytes(fmtChunk(0x55, 2, 44100, 0), pcm16), "WAV with MP3 is not built in (let ffmpeg decode it)"},
		{"no bits", wavBytes(fmtChunk(wavPCM, 2, 44100, 0), pcm16),
			"WAV with 0-bit samples is not built in (let ffmpeg decode it)"},
		{"unknown", wavBytes(fmtChunk(0x1234, 2, 44100, 16), pcm16),
			"WAV with encoding 0x1234 is not built in (let ffmpeg decode it)"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := Open(writeFile(t, "music.wav", c.file), Builtin)
			var problem *Error
			if !errors.As(err, &problem) || err.Error() != c.want {
				t.Errorf("got %v\nwant %s", err, c.want)
			}
		})
	}
}

// A header may claim anything; only what is there is read.
func TestWAVBoundedMemory(t *testing.T) {
	file := wavBytes(fmtChunk(wavPCM, maxChannels, 44100, 32), sized(pcm16, 0xFFFFFFF0))
	allocated := testing.AllocsPerRun(5, func() {
		s, err := Open(writeFile(t, "music.wav", file), Builtin)
		if err != nil {
			t.Fatal(err)
		}
		defer s.Close()
		if _, err := s.Read(make([]float32, 100)); err != io.EOF {
			t.Errorf("got %v", err)
		}
	})
	if allocated > 500 {
		t.Errorf("%v allocations", allocated)
	}
}
