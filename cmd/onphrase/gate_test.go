package main

import (
	"bytes"
	"context"
	"net/http"
	"net/url"
	"regexp"
	"strings"
	"testing"

	"onphrase/cmd/internal/serve"
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
	v := &serve.Site{}
	if err := v.Show(l); err != nil {
		t.Fatal(err)
	}
	d, err := serve.DoorAt("127.0.0.2", 0, v, invitations(s)) // as good as an address in a network
	if err != nil {
		t.Skipf("NOT CHECKED: %v", err)
	}
	ended := make(chan error, 1)
	go func() { ended <- d.Serve(ctx) }()
	u, err := url.Parse(strings.TrimSpace(out.String()))
	if err != nil {
		t.Fatal(err)
	}
	key := u.Query().Get("key")
	base := "http://" + u.Host
	for _, path := range []string{"/", "/events", "/music/1/one.wav", "/?key=", "/?key=aaaaaaaaaa", "/music/1/one.wav?key=" + key, "/?key=" + key[:9]} {
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
