package desk

import (
	"context"
	"errors"
	"strings"

	"onphrase/align"
	"onphrase/beat"
	"onphrase/plan"
	"onphrase/plan/edit"
)

type actFields struct {
	Revision string     `json:"revision"`
	Acts     []edit.Act `json:"acts"` // done together, undone together
	Label    string     `json:"label"`
	Dry      bool       `json:"dry"`
}

// conflict is an answer where somebody else has changed the same place.
type conflict struct {
	Refusal
	Conflict classView `json:"conflict"` // the class as it is now
}

func (d *Desk) classNow(context.Context, noFields) (any, error) { return d.view("") }

// view is the open class as it stands.
func (d *Desk) view(say string) (classView, error) {
	c := d.class
	if c == nil || c.plan == nil || c.m == nil {
		return classView{}, refuse("Open a class, or begin a new one.", "No class is open.")
	}
	src := c.good
	v, err := d.viewOf(src, c.m)
	if err != nil {
		return v, err
	}
	s := d.stateOfClass()
	v.State, v.Problems, v.Say = s.State, s.Problems, say
	v.Undo, v.Redo = c.history.Labels()
	return v, nil
}

// act does something to the class. Where the file was changed elsewhere
// meanwhile, it is done to the new file if what it is about is unchanged there.
func (d *Desk) act(_ context.Context, f actFields) (any, error) {
	d.lookNow()
	c := d.class
	if c == nil || c.plan == nil {
		return nil, refuse("Open a class, or begin a new one.", "No class is open.")
	}
	if len(c.problems) > 0 {
		return nil, refuse("Mend what is shown above first.", "The class cannot be changed while it cannot be read.")
	}
	out, err := edit.From(f.Revision, c.src, f.Acts...)
	switch {
	case errors.Is(err, edit.ErrGone):
		return d.conflicted()
	case err != nil:
		return nil, refuse("It can be changed as text.", "This cannot be changed here: %s.", plainEdit(err))
	}
	return d.become(out, f.Label, f.Dry)
}

func (d *Desk) conflicted() (any, error) {
	v, err := d.view("")
	if err != nil {
		return nil, err
	}
	return nil, &conflictError{conflict{Refusal{"This was changed elsewhere meanwhile; what is there now is shown.",
		"Do it once more."}, v}}
}

// conflictError is an answer that carries the class as it is now.
type conflictError struct{ conflict }

func (e *conflictError) Error() string { return e.Say }

// plainEdit is what an edit says, without its package.
func plainEdit(err error) string {
	text := err.Error()
	const own = "edit: "
	text = strings.TrimPrefix(text, own)
	if strings.HasPrefix(text, "there is no ") {
		return "it is no longer there"
	}
	return text
}

// become makes the class another file, or shows what it would be. A file that
// cannot be read is refused: the class is always one that can be taught.
func (d *Desk) become(out []byte, label string, dry bool) (any, error) {
	c := d.class
	r := d.reading(out)
	switch {
	case len(r.problems) > 0:
		return nil, refuse(r.problems[0].Hint, "That does not work: %s.", r.problems[0].Msg)
	case len(r.missing) > 0:
		return nil, refuse(r.missing[0].Hint, "%s.", r.missing[0].Msg)
	}
	if dry {
		before := c.files
		c.files = r.files
		defer func() { c.files = before }()
		return d.viewOf(out, align.Build(r.plan, d.tracksOf(r.plan)))
	}
	if err := d.keepClass(out); err != nil {
		return nil, err
	}
	c.history.Did(edit.StepOf(label, c.src, out))
	return d.came(r, label)
}

// keepClass writes the class file, and first, once a session, a copy of it as it
// was before the desk changed anything.
func (d *Desk) keepClass(out []byte) error {
	c := d.class
	if !c.copied {
		if err := d.home.SafetyCopy(c.path, c.src); err != nil {
			return refuse("Nothing was changed.", "No copy of the class could be kept beside it: %v.", err)
		}
		c.copied = true
	}
	err := d.home.ReplaceClass(c.path, c.src, out)
	var r *Refusal
	if errors.As(err, &r) {
		return err
	}
	if err != nil {
		return refuse("Nothing was changed.", "The class could not be written: %v.", err)
	}
	return nil
}

// came takes in a file that the desk has just written.
func (d *Desk) came(r reading, say string) (any, error) {
	d.read(r)
	d.keepHistory()
	d.build()
	d.changed()
	return d.view(say)
}

// keepHistory keeps the history beside the class. It is no loss of hers where
// it cannot.
func (d *Desk) keepHistory() {
	if kept, err := d.class.history.Bytes(); err == nil {
		_ = d.home.KeepHistory(d.class.path, kept)
	}
}

type revisionFields struct {
	Revision string `json:"revision"`
}

func (d *Desk) undo(_ context.Context, _ revisionFields) (any, error) {
	return d.travel("Undone: ", (*edit.History).Undo)
}

func (d *Desk) redo(_ context.Context, _ revisionFields) (any, error) {
	return d.travel("Done again: ", (*edit.History).Redo)
}

// travel goes a step back or on in the history.
func (d *Desk) travel(say string, step func(*edit.History, []byte) ([]byte, string, error)) (any, error) {
	d.lookNow()
	c := d.class
	if c == nil {
		return nil, refuse("Open a class, or begin a new one.", "No class is open.")
	}
	trial := *c.history
	out, label, err := step(&trial, c.src)
	switch {
	case errors.Is(err, edit.ErrMoved):
		return nil, refuse("What was done before that cannot be undone any more.", "The class was changed elsewhere since.")
	case err != nil:
		return nil, refuse("", "Nothing is left.")
	}
	if err := d.keepClass(out); err != nil {
		return nil, err
	}
	*c.history = trial
	return d.came(d.reading(out), say+label+".")
}

// tracksOf are the songs of a class by the names it has for them.
func (d *Desk) tracksOf(c *plan.Class) map[string]beat.Track {
	tracks := map[string]beat.Track{}
	for _, part := range c.Parts {
		for _, ref := range part.Tracks {
			tracks[ref.File] = d.trackOf(ref.File)
		}
	}
	return tracks
}

type textFields struct {
	Revision string  `json:"revision"`
	Text     *string `json:"text"`
}

type textAnswer struct {
	Revision string    `json:"revision"`
	Text     string    `json:"text"`
	Problems []problem `json:"problems"`
}

// text is the class file itself; with a text it becomes that, also one that
// cannot be read yet: it is hers.
func (d *Desk) text(_ context.Context, f textFields) (any, error) {
	d.lookNow()
	c := d.class
	if c == nil {
		return nil, refuse("Open a class, or begin a new one.", "No class is open.")
	}
	if f.Text != nil {
		if f.Revision != edit.Revision(c.src) {
			return d.conflicted()
		}
		out := []byte(*f.Text)
		before := c.src
		if err := d.keepClass(out); err != nil {
			return nil, err
		}
		c.history.Did(edit.StepOf("the text", before, out))
		d.read(d.reading(out))
		d.keepHistory()
		if len(c.problems) == 0 {
			d.build()
		}
		d.changed()
	}
	return textAnswer{edit.Revision(c.src), string(c.src), d.stateOfClass().Problems}, nil
}
