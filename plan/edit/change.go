package edit

import (
	"fmt"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"

	"onphrase/plan"
)

// Change is one thing to change in a class file.
type Change interface{ to(*file) error }

// SetReps gives a set other repetitions. Entries that stay the same keep
// their spelling.
type SetReps struct {
	Item plan.Pos
	Was  []plan.Reps
	Reps []plan.Reps
}

// SetTime gives an interval or a pause another length.
type SetTime struct {
	Item plan.Pos
	Time plan.Length
}

// SetOn says what an item is laid on.
type SetOn struct {
	Item plan.Pos
	On   plan.Snap
}

// AddPause puts a pause directly before an item.
type AddPause struct {
	Before plan.Pos
	Name   string
	Time   plan.Length
	On     plan.Snap // plan.OnDefault: not written
}

// Swap exchanges two items that follow each other in one list, with the
// comments directly above them.
type Swap struct{ Item, Next plan.Pos }

// SetStart lets a part start on a phrase, from 1.
type SetStart struct {
	Part   plan.Pos
	Phrase int
}

// SetBPM lets a part be played at a tempo.
type SetBPM struct {
	Part plan.Pos
	BPM  float64
}

func (c SetReps) to(f *file) error {
	m, _, err := f.item(c.Item)
	if err != nil {
		return err
	}
	pieces, sign := make([]string, len(c.Reps)), "x"
	var old []string
	if n := value(m, "reps"); n != nil {
		old = strings.Split(n.Value, ",")
		if strings.Contains(n.Value, "×") {
			sign = "×"
		}
	}
	for i, r := range c.Reps {
		pieces[i] = fmt.Sprintf("%d %s %s", r.N, sign, r.Rhythm)
		if len(c.Was) == len(c.Reps) && len(old) == len(c.Was) && c.Was[i] == r {
			pieces[i] = strings.TrimSpace(old[i])
		}
	}
	return f.set(m, "reps", strings.Join(pieces, ", "))
}

func (c SetTime) to(f *file) error {
	m, _, err := f.item(c.Item)
	if err != nil {
		return err
	}
	return f.set(m, "time", length(c.Time))
}

func (c SetOn) to(f *file) error {
	m, _, err := f.item(c.Item)
	if err != nil {
		return err
	}
	return f.set(m, "on", string(c.On))
}

func (c AddPause) to(f *file) error {
	_, in, err := f.item(c.Before)
	if err != nil {
		return err
	}
	text := fmt.Sprintf("{pause: %s, time: %s}", c.Name, length(c.Time))
	if c.On != plan.OnDefault {
		text = fmt.Sprintf("{pause: %s, time: %s, on: %s}", c.Name, length(c.Time), c.On)
	}
	return f.insertEntry(in, text)
}

func (c Swap) to(f *file) error {
	_, a, err := f.item(c.Item)
	if err != nil {
		return err
	}
	_, b, err := f.item(c.Next)
	if err != nil {
		return err
	}
	return f.swap(a, b)
}

func (c SetStart) to(f *file) error {
	m, _, err := f.entry(c.Part, "part")
	if err != nil {
		return err
	}
	return f.setBefore(m, "do", "start", fmt.Sprintf("phrase %d", c.Phrase))
}

func (c SetBPM) to(f *file) error {
	m, _, err := f.entry(c.Part, "part")
	if err != nil {
		return err
	}
	return f.setBefore(m, "do", "bpm", strconv.FormatFloat(c.BPM, 'f', -1, 64))
}

// length writes a length as people do: eights where it is whole eights.
func length(l plan.Length) string {
	const eight = 8
	if l.Counts > eight && l.Counts%eight == 0 {
		return fmt.Sprintf("%d eights", l.Counts/eight)
	}
	return l.String()
}

// value is the value of a key of a mapping, nil when it is not there.
func value(m *yaml.Node, key string) *yaml.Node {
	for i := 0; i+1 < len(m.Content); i += 2 {
		if m.Content[i].Value == key {
			return m.Content[i+1]
		}
	}
	return nil
}
