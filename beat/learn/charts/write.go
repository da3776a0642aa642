package main

import (
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"onphrase/beat/learn/charts/chart"
)

// fit makes the sound of a pair, below out where that is given, and holds the
// chart against it.
func (p pair) fit(out string) (*song, error) {
	folder := filepath.Join(out, p.source.part)
	if out == "" {
		folder = os.TempDir()
	}
	file := filepath.Join(folder, p.id+strings.ToLower(filepath.Ext(p.sounds[0])))
	if err := makeSound(file, p.sounds); err != nil {
		return nil, err
	}
	o, err := hear(file)
	if err != nil {
		os.Remove(file)
		return nil, err
	}
	s := &song{pair: p, sound: file, steady: p.chart.Steady()}
	s.offset, s.share, s.reject = fitTo(p.chart, o)
	if s.reject == "" && p.source.doubt != "" && between(p.chart, o, s.offset) {
		s.reject = "more sound begins between its counts than on them"
	}
	s.bpm = p.chart.BPM(o.to)
	if s.reject != "" || out == "" {
		return s, os.Remove(file)
	}
	for _, b := range p.chart.Beats(o.from-s.offset, o.to-s.offset) {
		s.beats = append(s.beats, chart.Beat{Time: b.Time + s.offset, One: b.One})
	}
	for _, m := range p.chart.Sections {
		if t := m.Time + s.offset; t >= 0 && t <= o.to {
			s.sections = append(s.sections, chart.Section{Time: t, Name: m.Name})
		}
	}
	return s, s.writeTruth()
}

// makeSound copies the sound of a song, or mixes its parts, unless that was done
// before.
func makeSound(file string, sounds []string) error {
	if info, err := os.Stat(file); err == nil && info.Size() > 0 {
		return nil
	}
	if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
		return err
	}
	if len(sounds) == 1 {
		return copyFile(file, sounds[0])
	}
	args := []string{"-v", "error", "-y"}
	for _, s := range sounds {
		args = append(args, "-i", s)
	}
	mix := fmt.Sprintf("amix=inputs=%d:normalize=0:duration=longest,alimiter=limit=0.95", len(sounds))
	half := strings.TrimSuffix(file, filepath.Ext(file)) + ".part" + filepath.Ext(file)
	args = append(args, "-filter_complex", mix, "-map_metadata", "-1", "-vn", "-threads", "1", "-q:a", "5", half)
	if text, err := exec.Command("ffmpeg", args...).CombinedOutput(); err != nil {
		return fmt.Errorf("mixing its parts: %w: %s", err, text)
	}
	return os.Rename(half, file)
}

func copyFile(to, from string) error {
	in, err := os.Open(from)
	if err != nil {
		return err
	}
	defer in.Close()
	out, err := os.Create(to)
	if err != nil {
		return err
	}
	if _, err := io.Copy(out, in); err != nil {
		return err
	}
	return out.Close()
}

// writeTruth writes the beats and sections of a song beside its sound.
func (s *song) writeTruth() error {
	stem := strings.TrimSuffix(s.sound, filepath.Ext(s.sound))
	var beats, sections strings.Builder
	for _, b := range s.beats {
		fmt.Fprintf(&beats, "%.4f\t%d\n", b.Time, b.One)
	}
	for _, m := range s.sections {
		fmt.Fprintf(&sections, "%.4f\t%s\n", m.Time, strings.Join(strings.Fields(m.Name), " "))
	}
	if len(s.sections) > 0 {
		if err := os.WriteFile(stem+".sections", []byte(sections.String()), 0o644); err != nil {
			return err
		}
	}
	return os.WriteFile(stem+".beats", []byte(beats.String()), 0o644)
}
