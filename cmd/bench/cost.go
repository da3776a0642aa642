package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"text/tabwriter"

	"onphrase/beat"
	"onphrase/beat/decode"
)

// costFiles is how many songs of a folder the cost is measured on: enough to
// even songs out, few enough to be quick.
const costFiles = 6

// songLength is the part of a track whose memory is measured: an ordinary song
// [s].
const songLength = 240

// trial is a way to analyse a file whose cost is measured: a program of its own,
// so that its time and memory are all its own.
type trial struct {
	name, short string
	program     string
	args        []string // before the file
	cpu         float64  // of all files, children included [s]
}

// spent is what a file took.
type spent struct {
	file   string
	length float64   // [s]
	cpu    []float64 // by trial, children included [s]
	peak   float64   // greatest resident memory of the first trial [MiB]
}

// reportCost measures what the analysis costs, on one core, and beside it
// another beat tracker, file by file in turn: on a busy machine all the figures
// grow alike, and only their ratios mean anything.
func reportCost(w io.Writer, files []string, each bool) error {
	trials, err := costTrials()
	if err != nil {
		return err
	}
	var all []spent
	seconds := 0.0
	for _, file := range files {
		s := spent{file: file}
		for i := range trials {
			used, said, err := trials[i].run(file)
			if err != nil {
				return err
			}
			trials[i].cpu += used
			s.cpu = append(s.cpu, used)
			if i == 0 {
				if s.length, s.peak, err = readAlone(said); err != nil {
					return fmt.Errorf("%s: %w", file, err)
				}
			}
		}
		all = append(all, s)
		seconds += s.length
	}
	fmt.Fprintf(w, "\ncost of whole programs on one core, their children included: %d files, %.1f min\n", len(files),
		seconds/60)
	writeCosts(w, trials, seconds/60)
	if each {
		writeEach(w, trials, all)
	}
	return nil
}

// writeEach prints what each file took.
func writeEach(w io.Writer, trials []trial, all []spent) {
	fmt.Fprintln(w, "\neach file: CPU s a minute by trial, peak memory of the first")
	t := tabwriter.NewWriter(w, 0, 0, 2, ' ', tabwriter.AlignRight)
	fmt.Fprint(t, "\tmin\t")
	for _, trial := range trials {
		fmt.Fprintf(t, "%s\t", trial.short)
	}
	fmt.Fprintln(t, "MiB\t")
	for _, s := range all {
		fmt.Fprintf(t, "%s\t%.1f\t", filepath.Base(s.file), s.length/60)
		for _, cpu := range s.cpu {
			fmt.Fprintf(t, "%.3f\t", cpu/(s.length/60))
		}
		fmt.Fprintf(t, "%.0f\t\n", s.peak)
	}
	t.Flush()
}

// costTrials are the trials that this machine has the programs for. The first
// is the whole analysis as most people run it, the last another program's.
func costTrials() ([]trial, error) {
	self, err := os.Executable()
	if err != nil {
		return nil, err
	}
	all := []trial{
		{name: "whole analysis, built-in decoder", short: "whole", program: self,
			args: []string{"-decoder", "builtin", "-alone"}},
		{name: "decoding alone, built-in", short: "decoding", program: self,
			args: []string{"-decoder", "builtin", "-deaf", "-alone"}},
	}
	if _, err := exec.LookPath("ffmpeg"); err == nil {
		all = append(all, trial{name: "whole analysis, ffmpeg decodes", short: "ffmpeg", program: self,
			args: []string{"-decoder", "ffmpeg", "-alone"}})
	}
	if aubio, err := exec.LookPath("aubio"); err == nil {
		all = append(all, trial{name: aubioName, short: "aubio", program: aubio, args: []string{"beat"}})
	}
	return all, nil
}

const aubioName = "aubio beat"

// run analyses a file and returns the CPU time it took [s] and what the program
// said.
func (t *trial) run(file string, more ...string) (used float64, said string, err error) {
	cmd := exec.Command(t.program, slices.Concat(more, t.args, []string{file})...)
	cmd.Env = append(os.Environ(), "GOMAXPROCS=1", "OMP_NUM_THREADS=1")
	out, err := cmd.Output()
	if err != nil {
		var exit *exec.ExitError
		if errors.As(err, &exit) {
			err = fmt.Errorf("%w: %s", err, exit.Stderr)
		}
		return 0, "", fmt.Errorf("%s: %s: %w", t.name, filepath.Base(file), err)
	}
	state := cmd.ProcessState
	return state.UserTime().Seconds() + state.SystemTime().Seconds(), string(out), nil
}

// reportMemory measures the greatest resident memory of the whole analysis on as
// much of a file as an ordinary song lasts.
func reportMemory(w io.Writer, file string) error {
	trials, err := costTrials()
	if err != nil {
		return err
	}
	_, said, err := trials[0].run(file, "-first", strconv.Itoa(songLength))
	if err != nil {
		return err
	}
	length, peak, err := readAlone(said)
	if err != nil {
		return fmt.Errorf("%s: %w", file, err)
	}
	_, err = fmt.Fprintf(w, "peak memory for %.1f min: %.0f MiB\n", length/60, peak)
	return err
}

// readAlone reads what analyseAlone wrote.
func readAlone(said string) (length, peak float64, err error) {
	_, err = fmt.Sscan(said, &length, &peak)
	return length, peak, err
}

func writeCosts(w io.Writer, trials []trial, minutes float64) {
	last := trials[len(trials)-1]
	t := tabwriter.NewWriter(w, 0, 0, 2, ' ', tabwriter.AlignRight)
	fmt.Fprintln(t, "\tCPU s a minute\tof the whole\tof aubio\t")
	for _, trial := range trials {
		ofAubio := "-"
		if last.name == aubioName {
			ofAubio = fmt.Sprintf("%.2f", trial.cpu/last.cpu)
		}
		fmt.Fprintf(t, "%s\t%.2f\t%.2f\t%s\t\n", trial.name, trial.cpu/minutes, trial.cpu/trials[0].cpu, ofAubio)
	}
	t.Flush()
}

// analyseAlone is what a trial runs: it analyses a file, or the first seconds
// of it if first is above 0, and prints its length [s] and the greatest memory
// that it took [MiB]. A deaf trial only decodes.
func analyseAlone(w io.Writer, file string, mode decode.Mode, first float64, deaf bool) error {
	stream, err := decode.Open(file, mode)
	if err != nil {
		return err
	}
	defer stream.Close()
	sound := &opening{Stream: stream, left: int(first * float64(stream.Rate()*stream.Channels()))}
	if first <= 0 {
		sound.left = -1
	}
	if deaf {
		buf := make([]float32, 1<<14)
		for err == nil {
			_, err = sound.Read(buf)
		}
		if !errors.Is(err, io.EOF) {
			return err
		}
	} else if _, err := beat.Analyze(sound); err != nil {
		return err
	}
	peak, err := peakMemory()
	if err != nil {
		return err
	}
	_, err = fmt.Fprintln(w, float64(sound.read)/float64(stream.Rate()*stream.Channels()), peak)
	return err
}

// opening is the beginning of a stream: as many samples as are left, all where
// left is negative.
type opening struct {
	*decode.Stream
	left, read int
}

func (o *opening) Read(dst []float32) (int, error) {
	if o.left >= 0 {
		if dst = dst[:min(len(dst), o.left)]; len(dst) == 0 {
			return 0, io.EOF
		}
	}
	n, err := o.Stream.Read(dst)
	o.read += n
	if o.left >= 0 {
		o.left -= n
	}
	return n, err
}

// some are the files of a few songs, evenly over the folder.
func some(songs []song) []string {
	var files []string
	for i := range min(costFiles, len(songs)) {
		files = append(files, songs[i*len(songs)/min(costFiles, len(songs))].file)
	}
	return files
}

// largest is the greatest of files, which is mostly the longest.
func largest(files []string) string {
	best, size := "", int64(-1)
	for _, file := range files {
		if info, err := os.Stat(file); err == nil && info.Size() > size {
			best, size = file, info.Size()
		}
	}
	return best
}

// filesOf are the files of songs.
func filesOf(songs []song) []string {
	var files []string
	for _, s := range songs {
		files = append(files, s.file)
	}
	return files
}
