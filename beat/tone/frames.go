package tone

// Classes is the number of pitch classes in an octave.
const Classes = 12

// Frames is the harmony of a track, frame by frame. The pitch classes follow
// the track's own tuning, of more than nine minutes that of what was heard so
// far; class 0 is the C of that tuning.
type Frames struct {
	FPS    float64   // frames per second; frame i is centred on i/FPS [s]
	Tuning float64   // of the whole track above A = 440 Hz [semitones], -0.5 to 0.5
	Chroma []float32 // magnitude of each pitch class above the bass, Classes values a frame
	Bass   []float32 // magnitude of each pitch class in the bass register, Classes values a frame
}

// Len is the number of frames.
func (f *Frames) Len() int { return len(f.Chroma) / Classes }

// ChromaAt is the pitch-class profile of frame i. The slice shares f's memory.
func (f *Frames) ChromaAt(i int) []float32 { return f.Chroma[i*Classes : (i+1)*Classes] }

// BassAt is the bass profile of frame i. The slice shares f's memory.
func (f *Frames) BassAt(i int) []float32 { return f.Bass[i*Classes : (i+1)*Classes] }
