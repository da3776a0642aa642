package main

import (
	"encoding/binary"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"

	"onphrase/beat/learn/midi"
	"onphrase/beat/learn/score"
	"onphrase/beat/learn/synth"
)

// The outside programs: fluidsynth plays MIDI, espeak-ng speaks, lame codes.
// Sound goes to and fro as 16-bit samples without a header.

// fluidsynth renders a take with a soundfont, to mono.
func fluidsynth(tmp, font string, take midi.Take, r score.Rand) ([]float32, error) {
	if _, err := os.Stat(font); err != nil {
		return nil, err // fluidsynth would play silence
	}
	mid, raw := filepath.Join(tmp, "take.mid"), filepath.Join(tmp, "take.raw")
	if err := os.WriteFile(mid, take.Write(), 0o644); err != nil {
		return nil, err
	}
	reverb, chorus := "0", "0"
	if r.Chance(0.6) {
		reverb = "1"
	}
	if r.Chance(0.4) {
		chorus = "1"
	}
	decode := "0"
	if filepath.Ext(font) == ".sf3" {
		decode = "1" // only the packed samples that are played: the same sound in a third of the time
	}
	cmd := exec.Command("fluidsynth", "-ni", "-q", "-g", "0.5", "-R", reverb, "-C", chorus, "-r", fmt.Sprint(synth.Rate),
		"-o", "synth.cpu-cores=1", "-o", "synth.dynamic-sample-loading="+decode, "-T", "raw", "-O", "s16", "-F", raw, font,
		mid)
	// else it decodes samples on every core, each waiting for the others
	cmd.Env = append(os.Environ(), "OMP_NUM_THREADS=1")
	if text, err := cmd.CombinedOutput(); err != nil {
		return nil, fmt.Errorf("fluidsynth: %w: %.300s", err, text)
	}
	stereo, err := readRaw(raw, 0)
	if err != nil {
		return nil, err
	}
	out := make([]float32, min(len(stereo)/2, int(take.Song.Length*synth.Rate)))
	for i := range out {
		out[i] = (stereo[2*i] + stereo[2*i+1]) / 2
	}
	return out, nil
}

var (
	voices    = []string{"en-us", "en-gb", "en-us+f2", "en-us+f4", "en-gb+m3", "de", "fr-fr", "es", "it", "en-us+whisper"}
	sentences = []string{
		"Four more, three, two and one.", "Now step to the right and bring the knees up.",
		"Breathe in, and breathe out slowly.",
		"This is the last round, stay with me.", "Take a drink of water and find your mat.",
		"The weather tomorrow will be mild with a little rain in the north.",
		"She had walked along the harbour every morning for eleven years.",
		"Please mind the gap between the boat and the quay.",
		"I wonder whether anybody has thought of asking the gardener.", "Shoulders down, chest up, keep the back long.",
	}
)

// speak says a few sentences.
func speak(r score.Rand, sentencesWanted int) ([]float32, error) {
	text := ""
	for range sentencesWanted {
		text += score.Pick(r, sentences) + " "
	}
	out, err := exec.Command("espeak-ng", "--stdout", "-v", score.Pick(r, voices), "-s", fmt.Sprint(110+r.IntN(120)), "-p",
		fmt.Sprint(10+r.IntN(80)), text).Output()
	if err != nil {
		return nil, fmt.Errorf("espeak-ng: %w", err)
	}
	const header = 44
	return fromBytes(out[min(header, len(out)):]), nil
}

// viaMP3 codes the samples as MP3 and back. Below 56 kbit/s a frame has no room
// for the delay that the decoder must take off.
func viaMP3(tmp string, x []float32, r score.Rand) ([]float32, error) {
	in, mp3, out := filepath.Join(tmp, "in.raw"), filepath.Join(tmp, "x.mp3"), filepath.Join(tmp, "out.raw")
	if err := os.WriteFile(in, toBytes(x), 0o644); err != nil {
		return nil, err
	}
	rate := score.Pick(r, []string{"56", "64"})
	if text, err := exec.Command("lame", "--quiet", "-r", "-s", "22.05", "--bitwidth", "16", "-m", "m", "-b", rate, in,
		mp3).CombinedOutput(); err != nil {
		return nil, fmt.Errorf("lame: %w: %.300s", err, text)
	}
	if text, err := exec.Command("lame", "--quiet", "--decode", "-t", mp3, out).CombinedOutput(); err != nil {
		return nil, fmt.Errorf("lame: %w: %.300s", err, text)
	}
	return readRaw(out, len(x))
}

// readRaw reads 16-bit samples; n > 0 says how many there must be.
func readRaw(path string, n int) ([]float32, error) {
	data, err := os.ReadFile(path)
	if err != nil {
		return nil, err
	}
	x := fromBytes(data)
	if n > 0 && (len(x) != n) {
		return nil, fmt.Errorf("%s: %d samples, want %d", path, len(x), n)
	}
	return x, nil
}

func fromBytes(b []byte) []float32 {
	x := make([]float32, len(b)/2)
	for i := range x {
		x[i] = float32(int16(binary.LittleEndian.Uint16(b[2*i:]))) / 32768
	}
	return x
}

func toBytes(x []float32) []byte {
	b := make([]byte, 0, 2*len(x))
	for _, v := range x {
		b = binary.LittleEndian.AppendUint16(b, uint16(int16(max(-32768, min(32767, v*32767)))))
	}
	return b
}
