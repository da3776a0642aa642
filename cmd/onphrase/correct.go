package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"strings"

	"github.com/spf13/cobra"

	"onphrase/beat"
	"onphrase/beat/correct"
	"onphrase/beat/decode"
	"onphrase/cmd/internal/library"
	"onphrase/cmd/internal/told"
)

type correctOptions struct {
	listenFlags
	track    string
	one      []string
	half     bool
	double   bool
	phrase   []string
	noPhrase []string
	counts   int
	at       string
	show     bool
	undo     bool
}

const correctLong = `Corrects what was heard in a track. Every other command then goes by it, and
says "corrected by you". Times are the track's, such as 0:15.4, and mean the
nearest count:

  --one 0:15.4        count 1 of a phrase falls here. The phrases round it keep
                      their lengths and move along
  --phrase 1:02.0     a phrase starts here; the others stay where they are
  --no-phrase 1:02.0  no phrase starts here
  --counts 16 --at 1:02.0
                      the phrase at that time has 16 counts; those after it move
                      along
  --half, --double    you count half or twice as fast

What you have set stays: later corrections move only what lies between. Without
any of these, what is known of the track is shown.

Corrections are kept in TRACK` + library.CorrectionEnding + ` beside the track or, where nothing can be
written there, in your configuration folder. They belong to the sound: new tags
leave them in force, another recording of the same name is refused. The file may
be edited.`

func newCorrectCmd(s *streams) *cobra.Command {
	o := &correctOptions{}
	cmd := &cobra.Command{
		Use:   "correct TRACK",
		Short: "Set count 1, tempo and phrases of a track",
		Long:  correctLong,
		Example: `  onphrase correct "music/slow ferry.mp3" --one 0:15.4
  onphrase correct "music/slow ferry.mp3" --counts 16 --at 1:02
  onphrase correct "music/slow ferry.mp3" --undo`,
		Args: takes(1, 1, "a track"),
		RunE: func(cmd *cobra.Command, args []string) error {
			o.track = args[0]
			return runCorrect(cmd, s, o)
		},
	}
	o.register(cmd)
	f := cmd.Flags()
	f.StringArrayVar(&o.one, "one", nil, "count 1 of a phrase falls at this `TIME`")
	f.BoolVar(&o.half, "half", false, "counted half as fast")
	f.BoolVar(&o.double, "double", false, "counted twice as fast")
	f.StringArrayVar(&o.phrase, "phrase", nil, "a phrase starts at this `TIME`")
	f.StringArrayVar(&o.noPhrase, "no-phrase", nil, "no phrase starts at this `TIME`")
	f.IntVar(&o.counts, "counts", 0, "`N` counts has the phrase that --at lies in")
	f.StringVar(&o.at, "at", "", "the `TIME` that --counts is about")
	f.BoolVar(&o.show, "show", false, "show what was corrected and what is known of the track")
	f.BoolVar(&o.undo, "undo", false, "take the last correction back")
	return cmd
}

func runCorrect(cmd *cobra.Command, s *streams, o *correctOptions) error {
	asked, err := o.corrections(cmd)
	if err != nil {
		return err
	}
	a, err := o.analyst(s)
	if err != nil {
		return err
	}
	path, err := findTrack(s, o.track)
	if err != nil {
		return err
	}
	kept, err := library.CorrectionsOf(path)
	if err != nil {
		return told.Failed("nothing was changed", "%s", err)
	}
	known := &correcting{kept}
	for _, note := range known.Notes {
		s.say("%s", note)
	}
	heard, err := a.heard(cmd.Context(), path)
	if err != nil {
		return err
	}
	switch {
	case o.undo:
		err = known.takeBack(s, heard)
	case len(asked) > 0:
		err = known.set(s, heard, path, asked)
	}
	if err != nil {
		return err
	}
	return known.show(s, heard)
}

// corrections reads what the flags ask for, tempo first: times then mean
// counts as she counts them.
func (o *correctOptions) corrections(cmd *cobra.Command) ([]correct.Correction, error) {
	if err := oneOf(cmd, "half", "double"); err != nil {
		return nil, err
	}
	var list []correct.Correction
	if o.half {
		list = append(list, correct.Correction{Kind: correct.Half})
	}
	if o.double {
		list = append(list, correct.Correction{Kind: correct.Double})
	}
	for _, given := range []struct {
		kind  correct.Kind
		times []string
	}{{correct.One, o.one}, {correct.Phrase, o.phrase}, {correct.NoPhrase, o.noPhrase}} {
		for _, text := range given.times {
			at, err := correct.ParseClock(text)
			if err != nil {
				return nil, usage("", "--%s: %s", given.kind, err)
			}
			list = append(list, correct.Correction{Kind: given.kind, Time: at})
		}
	}
	counts, at := cmd.Flags().Changed("counts"), cmd.Flags().Changed("at")
	switch {
	case counts != at:
		return nil, usage("for example --counts 16 --at 1:02.0", "--counts and --at belong together")
	case counts && (o.counts < 1 || o.counts > correct.MostCounts):
		return nil, usage("", "--counts %d: 1 to %d is possible", o.counts, correct.MostCounts)
	case counts:
		t, err := correct.ParseClock(o.at)
		if err != nil {
			return nil, usage("", "--at: %s", err)
		}
		list = append(list, correct.Correction{Kind: correct.Counts, Time: t, Counts: o.counts})
	}
	if o.undo && len(list) > 0 || o.show && (o.undo || len(list) > 0) {
		return nil, usage("do one after the other", "--show and --undo go with no other correction")
	}
	return list, nil
}

// findTrack is the file of a track. A name as a class file has it is looked
// for in the folders below.
func findTrack(s *streams, name string) (string, error) {
	info, err := os.Stat(name)
	switch {
	case err == nil && info.Mode().IsRegular():
		return name, nil
	case err == nil:
		return "", usage("name one track", "%s is not a file", name)
	case !errors.Is(err, os.ErrNotExist) || !filepath.IsLocal(name) || !decode.IsAudio(name):
		return "", told.Failed("", "%s: %s", name, told.Reason(err))
	}
	files, _ := library.AudioFiles(".")
	var fits []string
	for _, f := range files {
		if strings.HasSuffix(f, string(filepath.Separator)+filepath.Clean(name)) {
			fits = append(fits, f)
		}
	}
	switch len(fits) {
	case 0:
		return "", told.Failed("name it with its folder", "%s: no such file, here or in a folder below", name)
	case 1:
		s.say("%s: the one in %s", name, filepath.Dir(fits[0]))
		return fits[0], nil
	}
	return "", told.Failed("name one of them", "%s: there are several: %s", name, strings.Join(fits, ", "))
}

// correcting is what is corrected of a track while a person goes on with it.
type correcting struct{ library.Corrections }

// set adds corrections and keeps them, all or none. One that changes nothing is
// said and left out, so that every step back has an effect.
func (c *correcting) set(s *streams, heard beat.Track, path string, asked []correct.Correction) error {
	now, err := c.Apply(heard)
	if err != nil {
		return told.Failed("nothing was changed", "%s", err)
	}
	if c.File == nil {
		sound, err := decode.Identity(path)
		if err != nil {
			return told.Failed("", "%s: %s", path, err)
		}
		c.File = correct.NewFile(filepath.Base(path), sound)
	}
	var said []string
	for _, ask := range asked {
		fix, err := correct.Snap(now, ask)
		if err != nil {
			return told.Failed("nothing was changed", "%s: --%s: %s", path, ask.Kind, err)
		}
		again := c.Says(fix)
		c.File.Add(fix)
		then, err := c.Apply(heard)
		if err != nil {
			return told.Failed("nothing was changed", "%s: --%s: %s", path, ask.Kind, errors.Unwrap(err))
		}
		if again && reflect.DeepEqual(now, then) {
			c.File.Undo()
			s.say("%s: set already, this changes nothing", fix)
			continue
		}
		now = then
		said = append(said, snapped(ask, fix))
	}
	if len(said) == 0 {
		return nil
	}
	if err := c.Save(); err != nil {
		return err
	}
	for _, text := range said {
		s.say("%s", text)
	}
	s.say("kept in %s; the last one is taken back by: onphrase correct %q --undo", c.Path, path)
	return nil
}

// snapped says what a correction became and how far it moved.
func snapped(ask, fix correct.Correction) string {
	const heard = 0.0005 // [s] what writing to the millisecond may move it
	off := fix.Time - ask.Time
	switch {
	case off > -heard && off < heard:
		return fix.String()
	case fix.Kind == correct.Counts:
		return fmt.Sprintf("%s; %s lies in it", fix, correct.Clock(ask.Time))
	case fix.Kind == correct.NoPhrase:
		return fmt.Sprintf("%s, the start nearest to %s (%+.3f s)", fix, correct.Clock(ask.Time), off)
	}
	return fmt.Sprintf("%s, the count nearest to %s (%+.3f s)", fix, correct.Clock(ask.Time), off)
}

// takeBack undoes the last correction.
func (c *correcting) takeBack(s *streams, heard beat.Track) error {
	if c.File == nil {
		return told.Failed("", "%s: nothing was corrected", heard.File)
	}
	last, ok := c.File.Undo()
	if !ok {
		return told.Failed("", "%s: nothing is left to take back", c.Path)
	}
	if err := c.Save(); err != nil {
		return err
	}
	s.say("taken back: %s", last)
	return nil
}

// show writes the corrections and the track as it now is.
func (c *correcting) show(s *streams, heard beat.Track) error {
	now, err := c.Apply(heard)
	if err != nil {
		return told.Failed("", "%s", err)
	}
	if c.File != nil && len(c.File.List) > 0 {
		fmt.Fprintf(s.out, "corrected by you, in %s:\n", c.Path)
		for i, fix := range c.File.List {
			fmt.Fprintf(s.out, "  %d. %s\n", i+1, fix)
		}
		fmt.Fprintln(s.out)
	}
	return writePhrases(s.out, []beat.Track{now})
}
