package main

import (
	"bytes"
	"context"
	"net"
	"net/http"
	"net/http/httptest"
	"net/url"
	"regexp"
	"strings"
	"testing"
)

// In the network nothing is served without the key, which works once.
func TestPageInTheNetwork(t *testing.T) {
	o := &pageOptions{classFlags: classFlags{listenFlags: listenFlags{decoder: "auto"}}, path: servedFolder(t)}
	var out, talk bytes.Buffer
	ctx, cancel := context.WithCancel(context.Background())
	defer cancel()
	s := &streams{in: &bytes.Buffer{}, out: &out, err: &talk, width: defaultWidth}
	l, err := o.align(ctx, s, o.path)
	if err != nil {
		t.Fatal(err)
	}
	v := &site{}
	if err := v.show(l); err != nil {
		t.Fatal(err)
	}
	d, err := openLAN(s, v, "127.0.0.2", "0") // as good as an address in a network
	if err != nil {
		t.Skipf("NOT CHECKED: %v", err)
	}
	ended := make(chan error, 1)
	go func() { ended <- d.serve(ctx) }()
	u, err := url.Parse(strings.TrimSpace(out.String()))
	if err != nil {
		t.Fatal(err)
	}
	key := u.Query().Get(keyName)
	base := "http://" + u.Host
	for _, path := range []string{"/", "/events", "/music/1/one.wav", "/?key=", "/?key=aaaaaaaaaa", "/music/1/one.wav?key=" + key, "/?" + keyName + "=" + key[:9]} {
		if status, body, _ := get(t, base, path, nil); status != http.StatusUnauthorized || strings.Contains(body, "Served") {
			t.Errorf("%s: %d", path, status)
		}
	}
	status, _, header := get(t, base, "/?key="+key, nil)
	if status != http.StatusSeeOther || header.Get("Location") != "/" {
		t.Fatalf("the key: %d %v", status, header)
	}
	cookie := header.Get("Set-Cookie")
	if !strings.Contains(cookie, "HttpOnly") || !strings.Contains(cookie, "SameSite=Lax") {
		t.Errorf("cookie %s", cookie)
	}
	guest := func(r *http.Request) { r.Header.Set("Cookie", strings.Split(cookie, ";")[0]) }
	for _, path := range []string{"/", "/music/1/one.wav"} {
		if status, _, _ := get(t, base, path, guest); status != http.StatusOK {
			t.Errorf("a guest's %s: %d", path, status)
		}
	}
	if status, _, _ := get(t, base, "/?key="+key, nil); status != http.StatusUnauthorized {
		t.Errorf("the key once more: %d", status)
	}
	if status, _, _ := get(t, base, "/", func(r *http.Request) { guest(r); r.Header.Set("Origin", "http://evil.example") }); status != http.StatusForbidden {
		t.Errorf("a foreign page with a guest's cookie: %d", status)
	}
	cancel()
	if err := <-ended; err != nil {
		t.Error(err)
	}
	next := regexp.MustCompile(`for the next device: http://\S+\?key=([a-z2-7]{10})`).FindStringSubmatch(talk.String())
	if next == nil || next[1] == key {
		t.Errorf("no other key in %s", talk.String())
	}
}

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
