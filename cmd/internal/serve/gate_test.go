package serve

import (
	"net"
	"net/http"
	"net/http/httptest"
	"testing"
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

// Keys that are tried out change the key.
func TestKeyIsNotGuessed(t *testing.T) {
	var keys []string
	v := newInvite(func(key string) { keys = append(keys, key) })
	g := &gate{hosts: []string{"192.168.0.2:3232"}, invite: v, inside: http.NotFoundHandler()}
	try := func(key string) int {
		w := httptest.NewRecorder()
		g.ServeHTTP(w, httptest.NewRequest(http.MethodGet, "http://192.168.0.2:3232/?key="+key, nil))
		return w.Code
	}
	for range mostWrong {
		if code := try("wrongwrong"); code != http.StatusUnauthorized {
			t.Fatalf("a wrong key: %d", code)
		}
	}
	if len(keys) != 2 || try(keys[0]) != http.StatusUnauthorized || try(keys[1]) != http.StatusSeeOther {
		t.Errorf("keys %q", keys)
	}
}
