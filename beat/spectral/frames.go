package spectral

import "math"

// Frames is the sound of a track, frame by frame on a log-frequency scale: of
// each band ln(1 + 1000 m), m its magnitude relative to the track's level.
type Frames struct {
	FPS   float64     // frames per second; frame i is centred on i/FPS [s]
	Bands []float64   // centre of each band [Hz], increasing
	sheet [][]float32 // the levels of sheetFrames frames each, the last of fewer

	packed [][]uint16 // in place of sheet, once Pack was called
	row    []float32  // the frame that At unpacked last
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
		f.sheet = append(f.sheet, make([]float32, 0, sheetFrames*len(row)))
		last++
	}
	f.sheet[last] = append(f.sheet[last], row...)
}

// levelCompression sets how far below the track's level a sound still counts.
const levelCompression = 1000

// packStep is how exactly a level is kept once it is packed; a uint16 of them
// reaches beyond the loudest there can be.
const packStep = 1.0 / 4096

// Pack halves the memory that the frames take, and rounds their levels to
// packStep. The ear needs them as they are; to average them over a beat this
// will do, and a mix of hours fits in memory.
func (f *Frames) Pack() {
	for i, sheet := range f.sheet {
		packed := make([]uint16, len(sheet))
		for j, v := range sheet {
			packed[j] = uint16(min(v/packStep+0.5, math.MaxUint16))
		}
		f.packed = append(f.packed, packed)
		f.sheet[i] = nil
	}
	f.sheet = nil
	f.row = make([]float32, len(f.Bands))
}

// Len is the number of frames.
func (f *Frames) Len() int {
	if f.packed != nil {
		return rows(f.packed, len(f.Bands))
	}
	return rows(f.sheet, len(f.Bands))
}

// rows counts the rows of n values in sheets.
func rows[T any](sheets [][]T, n int) int {
	last := len(sheets) - 1
	if last < 0 {
		return 0
	}
	return last*sheetFrames + len(sheets[last])/n
}

// At is frame i: one level for each band. The slice shares f's memory and is
// valid until the next call.
func (f *Frames) At(i int) []float32 {
	n := len(f.Bands)
	at := i % sheetFrames * n
	if f.packed == nil {
		return f.sheet[i/sheetFrames][at : at+n : at+n]
	}
	for j, v := range f.packed[i/sheetFrames][at : at+n] {
		f.row[j] = float32(v) * packStep
	}
	return f.row
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
