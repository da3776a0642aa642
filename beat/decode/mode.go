package decode

import "fmt"

// Mode says which decoders may be used.
type Mode string

const (
	// Auto prefers the built-in decoders and asks ffmpeg for the rest.
	Auto Mode = "auto"
	// Builtin never starts another program.
	Builtin Mode = "builtin"
	// FFmpeg gives every file to ffmpeg.
	FFmpeg Mode = "ffmpeg"
)

// ParseMode reads a mode as a person writes it.
func ParseMode(s string) (Mode, error) {
	switch m := Mode(s); m {
	case Auto, Builtin, FFmpeg:
		return m, nil
	}
	return "", fmt.Errorf("decoder %q: unknown; it is auto, builtin or ffmpeg", s)
}
