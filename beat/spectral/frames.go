package spectral

// Frames is the sound of a track, frame by frame on a log-frequency scale: of
// each band ln(1 + 1000 m), m its magnitude relative to the track's level.
type Frames struct {
	FPS   float64     // frames per second; frame i is centred on i/FPS [s]
	Bands []float64   // centre of each band [Hz], increasing
	sheet [][]float32 // the levels of sheetFrames frames each, the last of fewer
}

// sheetFrames is how many frames are kept in one piece. In a single one, a mix
// of hours would be copied again and again as it grows.
const sheetFrames = 4096

// NewFrames makes frames of levels, len(bands) values a frame.
func NewFrames(fps float64, bands []float64, level []float32) *Frames {
	f := &Frames{FPS: fps, Bands: bands}
	for n := len(bands); len(level) >= n; level = level[n:] {
		f.add(level[:n])
	}
	return f
}

// add appends a frame.
func (f *Frames) add(row []float32) {
	last := len(f.sheet) - 1
	if last < 0 || len(f.sheet[last]) == sheetFrames*len(row) {
		f.sheet = append(f.sheet, nil)
		last++
	}
	f.sheet[last] = append(f.sheet[last], row...)
}

// levelCompression sets how far below the track's level a sound still counts.
const levelCompression = 1000

// Len is the number of frames.
func (f *Frames) Len() int {
	last := len(f.sheet) - 1
	if last < 0 {
		return 0
	}
	return last*sheetFrames + len(f.sheet[last])/len(f.Bands)
}

// At is frame i: one level for each band. The slice shares f's memory.
func (f *Frames) At(i int) []float32 {
	n := len(f.Bands)
	at := i % sheetFrames * n
	return f.sheet[i/sheetFrames][at : at+n : at+n]
}

// Rows are the levels of the frames from..to-1, one frame after the other, in
// memory of their own.
func (f *Frames) Rows(from, to int) []float32 {
	rows := make([]float32, 0, (to-from)*len(f.Bands))
	for i := from; i < to; i++ {
		rows = append(rows, f.At(i)...)
	}
	return rows
}
