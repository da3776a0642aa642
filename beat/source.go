package beat

// Source is a stream of sound, such as decode.Open gives.
type Source interface {
	// Rate is the sample rate [Hz].
	Rate() int
	// Channels is 1 or 2; two channels come interleaved.
	Channels() int
	// Read fills dst with samples in [-1, 1] and returns how many it wrote, a
	// multiple of Channels. At the end it returns 0, io.EOF.
	Read(dst []float32) (int, error)
}
