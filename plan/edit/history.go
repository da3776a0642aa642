package edit

import (
	"bufio"
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
)

// Revision names the bytes of a file.
func Revision(src []byte) string {
	sum := sha256.Sum256(src)
	return hex.EncodeToString(sum[:8])
}

// Step is one change of a file, forwards and backwards.
type Step struct {
	Label  string `json:"label"`
	Before string `json:"before"` // revision
	After  string `json:"after"`
	At     int    `json:"at"` // byte
	Old    []byte `json:"old"`
	New    []byte `json:"new"`
}

// StepOf is the step from one state of a file to another.
func StepOf(label string, before, after []byte) Step {
	from := 0
	for from < min(len(before), len(after)) && before[from] == after[from] {
		from++
	}
	end := 0
	for end < min(len(before), len(after))-from && before[len(before)-1-end] == after[len(after)-1-end] {
		end++
	}
	return Step{
		Label: label, Before: Revision(before), After: Revision(after), At: from,
		Old: bytes.Clone(before[from : len(before)-end]), New: bytes.Clone(after[from : len(after)-end]),
	}
}

// ErrMoved says that a file is not as a step left it.
var ErrMoved = errors.New("edit: the file was changed elsewhere since")

// undo gives the file as it was before the step, redo as it was after.
func (s Step) undo(src []byte) ([]byte, error) { return replaced(src, s.After, s.At, s.New, s.Old) }
func (s Step) redo(src []byte) ([]byte, error) { return replaced(src, s.Before, s.At, s.Old, s.New) }

func replaced(src []byte, revision string, at int, was, is []byte) ([]byte, error) {
	if Revision(src) != revision {
		return nil, ErrMoved
	}
	return bytes.Join([][]byte{src[:at], is, src[at+len(was):]}, nil), nil
}

// History is all that was done to a file, and how much of it is undone. Its
// zero value is empty.
type History struct {
	steps []Step
	done  int // steps that are in force; those behind can be done again
}

// Did adds a step. What was undone before it can no longer be done again.
func (h *History) Did(s Step) {
	h.steps = append(h.steps[:h.done:h.done], s)
	h.done++
}

// Undo gives the file as it was before the last step, and what was undone. The
// error is ErrMoved where the file is not as the step left it.
func (h *History) Undo(src []byte) (out []byte, label string, err error) {
	if h.done == 0 {
		return nil, "", errors.New("edit: nothing is left to undo")
	}
	s := h.steps[h.done-1]
	if out, err = s.undo(src); err == nil {
		h.done--
	}
	return out, s.Label, err
}

// Redo gives the file as it was after the step that was undone last.
func (h *History) Redo(src []byte) (out []byte, label string, err error) {
	if h.done == len(h.steps) {
		return nil, "", errors.New("edit: nothing is left to do again")
	}
	s := h.steps[h.done]
	if out, err = s.redo(src); err == nil {
		h.done++
	}
	return out, s.Label, err
}

// Labels are what Undo and Redo would say; empty where there is nothing.
func (h *History) Labels() (undo, redo string) {
	if h.done > 0 {
		undo = h.steps[h.done-1].Label
	}
	if h.done < len(h.steps) {
		redo = h.steps[h.done].Label
	}
	return undo, redo
}

// head is the first line of a history as it is kept.
type head struct {
	Schema string `json:"schema"`
	Done   int    `json:"done"`
}

const historySchema = "onphrase.history/1"

// Bytes is the history as it is kept: a line of JSON for its state, and one for
// every step.
func (h *History) Bytes() ([]byte, error) {
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	if err := enc.Encode(head{historySchema, h.done}); err != nil {
		return nil, err
	}
	for _, s := range h.steps {
		if err := enc.Encode(s); err != nil {
			return nil, err
		}
	}
	return b.Bytes(), nil
}

// mostStep is the longest line of a history: a class file, twice, in base 64.
const mostStep = 32 << 20

// ReadHistory reads a history that was kept. A last line that was cut short, as
// when the power failed, is left out.
func ReadHistory(src []byte) (*History, error) {
	lines := bufio.NewScanner(bytes.NewReader(src))
	lines.Buffer(nil, mostStep)
	var top head
	if !lines.Scan() || json.Unmarshal(lines.Bytes(), &top) != nil || top.Schema != historySchema {
		return nil, fmt.Errorf("edit: not a history that this program reads")
	}
	h := &History{}
	for lines.Scan() {
		var s Step
		if json.Unmarshal(lines.Bytes(), &s) != nil {
			break
		}
		h.steps = append(h.steps, s)
	}
	h.done = min(max(0, top.Done), len(h.steps))
	return h, nil
}

// Fits tells whether a file is as the history left it: only then can it be
// undone.
func (h *History) Fits(src []byte) bool {
	now := Revision(src)
	return h.done > 0 && h.steps[h.done-1].After == now || h.done < len(h.steps) && h.steps[h.done].Before == now
}
