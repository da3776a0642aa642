package decode

import (
	"errors"
	"io"
	"os"
)

// Stream is the sound of one file, decoded as it is read. It is not safe for
// use by several goroutines.
type Stream struct {
	format string
	sound  decoder
	file   *os.File
	notes  []string // about the choice of decoder
	err    error    // what Read ended with
}

// decoder is what each format gives to a Stream.
type decoder interface {
	rate() int     // [Hz]
	channels() int // 1 or 2
	// read fills dst, whose length is a multiple of channels, with at least one
	// sample of each channel, or returns 0 and an error; io.EOF at the end.
	read(dst []float32) (int, error)
	notes() []string
}

// Open opens an audio file with the decoders that mode allows. What a file
// holds decides, not its name. The error, of type *Error where the file itself
// is at fault, says what the file is and how to get it decoded.
func Open(path string, mode Mode) (*Stream, error) {
	f, size, err := openFile(path)
	if err != nil {
		return nil, err
	}
	s, err := open(f, size, mode)
	if err != nil {
		f.Close()
		return nil, err
	}
	return s, nil
}

// openFile opens a regular file that is not empty and tells its size [bytes].
func openFile(path string) (*os.File, int64, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, 0, err
	}
	info, err := f.Stat()
	switch {
	case err != nil:
	case info.IsDir():
		err = notAudio("it is a folder")
	case !info.Mode().IsRegular():
		err = notAudio("it is not a regular file")
	case info.Size() == 0:
		err = notAudio("it is empty")
	default:
		return f, info.Size(), nil
	}
	f.Close()
	return nil, 0, err
}

// open chooses the decoder for an open file.
func open(f *os.File, size int64, mode Mode) (*Stream, error) {
	found, err := sniff(f, size)
	if err != nil {
		return nil, err
	}
	s := &Stream{format: found.name, file: f}
	reason := unsupportedError(found.name)
	var part decoder // decodes some of the file
	if found.builtin != nil && mode != FFmpeg {
		d, err := found.builtin(f, size)
		if err == nil {
			s.sound = d
			return s, nil
		}
		if !errors.As(err, &reason) {
			return nil, &Error{Place: found.place, Msg: err.Error()}
		}
		part = d
		s.notes = []string{string(reason) + ": decoded by ffmpeg"}
	}
	if mode != Builtin {
		s.sound, err = newFFmpeg(f.Name(), reason)
	} else {
		err = &Error{Msg: string(reason) + " is not built in", Hint: "let ffmpeg decode it"}
	}
	if err != nil && part != nil {
		s.sound, s.notes, err = part, nil, nil
	}
	return s, err
}

// Rate is the sample rate [Hz].
func (s *Stream) Rate() int { return s.sound.rate() }

// Channels is 1 or 2; two channels come interleaved.
func (s *Stream) Channels() int { return s.sound.channels() }

// Format is the kind of file, such as "MP3" or "M4A (AAC)".
func (s *Stream) Format() string { return s.format }

// Read fills dst with samples in [-1, 1] and returns how many it wrote, a
// multiple of Channels. At the end it returns 0, io.EOF.
func (s *Stream) Read(dst []float32) (int, error) {
	if s.err != nil || len(dst) == 0 {
		return 0, s.err
	}
	dst = dst[:len(dst)-len(dst)%s.Channels()]
	if len(dst) == 0 {
		return 0, io.ErrShortBuffer
	}
	n, err := s.sound.read(dst)
	s.err = err
	return n, err
}

// Notes are what a person should know about the sound: times that may be late,
// damage that was muted. They are complete when Read has reached the end.
func (s *Stream) Notes() []string {
	return append(append([]string(nil), s.notes...), s.sound.notes()...)
}

// Close ends the stream, and with it the ffmpeg child if there is one. It may
// be called at any time and more than once.
func (s *Stream) Close() error {
	if s.err == nil {
		s.err = os.ErrClosed
	}
	if c, ok := s.sound.(io.Closer); ok {
		c.Close()
	}
	if err := s.file.Close(); !errors.Is(err, os.ErrClosed) {
		return err
	}
	return nil
}
