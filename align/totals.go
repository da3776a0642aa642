package align

import (
	"strings"
	"unicode"

	"onphrase/plan"
)

// count gives every set its movement pattern, its seconds under load, and
// how many of the class's repetitions of that pattern are done by its end.
func (l *placedClass) count() {
	all := map[string]int{}
	l.each(func(_ *placedPart, _ int, r *placedRow) {
		if r.reps == nil {
			return
		}
		set, _ := r.item.Work.(plan.Set)
		m, _ := l.move(set.Move)
		r.Pattern, r.Load, r.LoadClass = m.Pattern, ms(r.underLoad()), l.loadClass(r.item, set.Weight)
		if r.Pattern != "" {
			all[r.Pattern] += r.Reps
			r.SoFar = all[r.Pattern]
		}
	})
	l.each(func(_ *placedPart, _ int, r *placedRow) {
		if r.reps != nil && r.Pattern != "" {
			r.OfAll = all[r.Pattern]
		}
	})
}

// loadWords are words for classes of load, and what else instructors write for
// them.
var loadWords = map[string]string{
	"light": "light", "lighter": "light", "medium": "medium", "moderate": "medium", "middle": "medium",
	"heavy": "heavy", "heavier": "heavy",
}

// What a set without a weight is done with: nothing, or something whose weight
// is not said.
const bodyWeight, notNamed = "body weight", "not named"

// loadClass is the class of load that a weight as written names. What a weight
// in kilograms is to the people of a class nobody can tell from here: it stands
// for itself.
func (l *placedClass) loadClass(it *plan.Item, weight string) string {
	if weight == "" {
		if n, _ := l.needs(it); len(n.carried()) > 0 {
			return notNamed
		}
		return bodyWeight
	}
	for _, w := range strings.FieldsFunc(strings.ToLower(weight), func(r rune) bool { return !unicode.IsLetter(r) }) {
		if class, ok := loadWords[w]; ok {
			return class
		}
	}
	return weight
}

// underLoad is how long the muscles work in a set [s]: all of it but the rest
// at the end of each repetition.
func (r *placedRow) underLoad() float64 {
	counts := r.reps.Rhythm.Counts()
	return r.Seconds * float64(counts-r.reps.Rhythm.Rest) / float64(counts)
}

// mirror names the side of an instructor who faces the class.
func (l *placedClass) mirror() {
	if l.class.Facing != plan.FacingClass {
		return
	}
	l.each(func(_ *placedPart, _ int, r *placedRow) {
		r.Mirror = string(plan.Sides(r.Side).Mirrored())
	})
}
