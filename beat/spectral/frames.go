package spectral

// Frames is the sound of a track, frame by frame on a log-frequency scale.
type Frames struct {
	FPS   float64   // frames per second; frame i is centred on i/FPS [s]
	Bands []float64 // centre of each band [Hz], increasing
	Level []float32 // ln(1 + 1000 m) of each magnitude m relative to the track's level; len(Bands) values a frame
}

// levelCompression sets how far below the track's level a sound still counts.
const levelCompression = 1000

// Len is the number of frames.
func (f *Frames) Len() int {
	if len(f.Bands) == 0 {
		return 0
	}
	return len(f.Level) / len(f.Bands)
}

// At is frame i: one level for each band. The slice shares f's memory.
func (f *Frames) At(i int) []float32 {
	n := len(f.Bands)
	return f.Level[i*n : (i+1)*n : (i+1)*n]
}
