package desk

import "time"

// pace reckons from what has been heard so far how long the rest will take.
type pace struct {
	now        func() time.Time
	began      time.Time
	heardBytes int64
}

func newPace(now func() time.Time) *pace { return &pace{now: now, began: now()} }

func (p *pace) heard(bytes int64) { p.heardBytes += bytes }

// left is the time for some more bytes [s], 0 while nothing is known.
func (p *pace) left(bytes int64) float64 {
	if p.heardBytes == 0 {
		return 0
	}
	return p.now().Sub(p.began).Seconds() * float64(bytes) / float64(p.heardBytes)
}
