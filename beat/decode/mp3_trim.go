package decode

// trim is a stretch of samples that is not music but the encoder's delay or
// padding [samples per channel].
type trim struct{ from, to int64 }

// trims lists them, in order.
func (s *mp3Survey) trims() []trim {
	info := s.info
	if !info.gapless {
		return nil
	}
	delay := trim{0, int64(info.delay + synthesisDelay)}
	// Where more music was joined to the file, ffmpeg and the browsers built on
	// it take the padding out of the middle if the addition is short, and no
	// longer believe the header if it is not.
	const longAddition = 16 // part of the whole
	if s.frames-info.frames > info.frames/longAddition {
		return []trim{delay}
	}
	end := info.frames * int64(s.first.samples())
	padding := end - int64(max(0, info.padding-synthesisDelay))
	return []trim{delay, {max(padding, delay.to), max(end, delay.to)}}
}

// within is the part of the trim that lies in a frame of so many samples whose
// first is at; indices into the frame, equal where none does.
func (t trim) within(at int64, samples int) (from, to int) {
	clamp := func(x int64) int { return int(min(max(x-at, 0), int64(samples))) }
	return clamp(t.from), clamp(t.to)
}
