package serve

import (
	"net"
	"net/http"
	"net/http/httptest"
	"testing"
	"time"
)

// What is served in the network is served at a private address, or not at all.
func TestLANAddress(t *testing.T) {
	ip, err := lanIP()
	if err == nil && !net.ParseIP(ip).IsPrivate() {
		t.Errorf("%s is not private", ip)
	}
	if err != nil && ip != "" {
		t.Errorf("%s, %v", ip, err)
	}
}

// Wrong keys slow down whoever tries them; the key that was shown stays good.
func TestKeyIsNotGuessed(t *testing.T) {
	var keys []string
	var waited []time.Duration
	v := newInvite(func(key string) { keys = append(keys, key) })
	v.sleep = func(d time.Duration) { waited = append(waited, d) }
	g := &gate{hosts: []string{"192.168.0.2:3232"}, invite: v, inside: http.NotFoundHandler()}
	try := func(key string) int {
		w := httptest.NewRecorder()
		g.ServeHTTP(w, httptest.NewRequest(http.MethodGet, "http://192.168.0.2:3232/?key="+key, nil))
		return w.Code
	}
	for range 50 {
		if code := try("wrongwrong"); code != http.StatusUnauthorized {
			t.Fatalf("a wrong key: %d", code)
		}
	}
	if len(waited) != 50 || waited[0] != wrongWait || waited[49] != longestWait {
		t.Errorf("waited %v", waited)
	}
	if len(keys) != 1 || try(keys[0]) != http.StatusSeeOther {
		t.Errorf("the key that was shown is no longer good: %q", keys)
	}
}
