package say

import "testing"

func TestClock(t *testing.T) {
	for seconds, want := range map[float64]string{
		0: "0:00", 0.4: "0:00", -0.4: "0:00", 59.5: "1:00", 61: "1:01", -61: "-1:01", 3599.4: "59:59",
		3599.5: "1:00:00", 3600: "1:00:00", 3725: "1:02:05", -3725: "-1:02:05", 36000: "10:00:00",
	} {
		if got := Clock(seconds); got != want {
			t.Errorf("%g s is %s, want %s", seconds, got, want)
		}
	}
}

func TestMoment(t *testing.T) {
	for seconds, want := range map[float64]string{
		0: "0:00.0", 0.04: "0:00.0", 62.5: "1:02.5", 59.96: "1:00.0", 3599.96: "1:00:00.0", 3725.3: "1:02:05.3",
		-1.5: "-0:01.5",
	} {
		if got := Moment(seconds); got != want {
			t.Errorf("%g s is %s, want %s", seconds, got, want)
		}
	}
}

func TestNum(t *testing.T) {
	for _, c := range []struct {
		v        float64
		decimals int
		want     string
	}{{0, 1, "0"}, {-0.04, 1, "0"}, {128, 1, "128"}, {127.96, 1, "128"}, {129.25, 2, "129.25"}, {100, 0, "100"},
		{-2.50, 2, "-2.5"}} {
		if got := Num(c.v, c.decimals); got != c.want {
			t.Errorf("%g with %d decimals is %s, want %s", c.v, c.decimals, got, c.want)
		}
	}
}

func TestMany(t *testing.T) {
	for _, c := range []struct {
		n          int
		noun, want string
	}{{0, "count", "0 counts"}, {1, "count", "1 count"}, {2, "count", "2 counts"}, {2, "pass", "2 passes"},
		{1, "stretch", "1 stretch"}, {3, "stretch", "3 stretches"}} {
		if got := Many(c.n, c.noun); got != c.want {
			t.Errorf("%d %s is %q, want %q", c.n, c.noun, got, c.want)
		}
	}
}
