package serve

import (
	"crypto/rand"
	"crypto/subtle"
	"net/http"
	"slices"
	"strings"
	"sync"
	"time"
)

// gate lets those in who are meant: requests that name the address we serve
// at, made by our own page or typed by a person, and from other devices with a
// key that was shown here.
type gate struct {
	hosts  []string // as a browser names us, with port
	invite *invite  // nil where no key is needed
	writes bool     // what is inside takes changes, and looks itself whose they are
	inside http.Handler
}

// ServeHTTP turns away whoever is not meant.
//
// A page from elsewhere that has its name point at us (DNS rebinding) names
// itself as host; one that embeds us is told by Origin or Sec-Fetch-Site.
//
// Ref: RFC 9110, 7.2 (Host) and 15.5.20 (421); RFC 6454, 7 (Origin); W3C Fetch
// Metadata Request Headers.
func (g *gate) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	h := w.Header()
	h.Set("X-Content-Type-Options", "nosniff")
	h.Set("Referrer-Policy", "no-referrer")
	h.Set("Cross-Origin-Resource-Policy", "same-origin")
	h.Set("Content-Security-Policy", "frame-ancestors 'none'")
	switch {
	case !slices.Contains(g.hosts, strings.ToLower(r.Host)):
		http.Error(w, "no such page here", http.StatusMisdirectedRequest)
	case r.Method != http.MethodGet && r.Method != http.MethodHead && !(g.writes && r.Method == http.MethodPost):
		h.Set("Allow", "GET, HEAD")
		http.Error(w, "there is nothing to change here", http.StatusMethodNotAllowed)
	case foreign(r):
		http.Error(w, "not for pages from elsewhere", http.StatusForbidden)
	case g.invite == nil || g.invite.knows(r):
		g.inside.ServeHTTP(w, r)
	case r.Method == http.MethodGet && r.URL.Path == pageAddress && g.invite.admit(w, r):
		h.Set("Cache-Control", "no-store")
		http.Redirect(w, r, pageAddress, http.StatusSeeOther)
	default:
		http.Error(w, "This page needs the whole address, with its key, as the computer that serves it shows it. "+
			"A key works once.", http.StatusUnauthorized)
	}
}

// foreign tells whether another site's page makes the request.
func foreign(r *http.Request) bool {
	if origin := r.Header.Get("Origin"); origin != "" && !strings.EqualFold(origin, "http://"+r.Host) {
		return true
	}
	site := r.Header.Get("Sec-Fetch-Site")
	return (site == "cross-site" || site == "same-site") && r.Header.Get("Sec-Fetch-Mode") != "navigate"
}

// invite lets other devices in: each by a key that works once, and from then on
// by a cookie.
type invite struct {
	mu     sync.Mutex
	key    string
	wrong  int
	guests map[string]bool  // by cookie
	tell   func(key string) // shows a new key
	sleep  func(time.Duration)
}

// keyLen is the length of a key [letters of base 32]: 50 bits, to be typed on a
// phone.
const keyLen = 10

// A wrong key makes the next answer wait, a wrong one more by as much again, up
// to the longest: at that pace 50 bits outlast every class. The key that was
// shown stays good all the same: a neighbour must not lock her phone out.
const (
	wrongWait   = 100 * time.Millisecond
	longestWait = 3 * time.Second
)

// keyName is how an address names the key, and the cookie its guest.
const keyName, guestName = "key", "onphrase-guest"

func newInvite(tell func(key string)) *invite {
	v := &invite{guests: map[string]bool{}, tell: tell, sleep: time.Sleep}
	v.renew()
	return v
}

func (v *invite) renew() {
	v.key, v.wrong = strings.ToLower(rand.Text()[:keyLen]), 0
	v.tell(v.key)
}

// knows tells whether the request comes from a device that was let in.
func (v *invite) knows(r *http.Request) bool {
	c, err := r.Cookie(guestName)
	v.mu.Lock()
	defer v.mu.Unlock()
	return err == nil && v.guests[c.Value]
}

// admit lets a device in that brings the key, and makes another for the next.
func (v *invite) admit(w http.ResponseWriter, r *http.Request) bool {
	given := strings.ToLower(r.URL.Query().Get(keyName))
	if given == "" {
		return false
	}
	v.mu.Lock()
	defer v.mu.Unlock()
	if subtle.ConstantTimeCompare([]byte(given), []byte(v.key)) != 1 {
		v.wrong++
		wait := min(longestWait, time.Duration(v.wrong)*wrongWait)
		v.mu.Unlock() // who has the right key does not wait
		v.sleep(wait)
		v.mu.Lock()
		return false
	}
	guest := rand.Text()
	v.guests[guest] = true
	http.SetCookie(w, &http.Cookie{
		Name: guestName, Value: guest, Path: "/", HttpOnly: true, SameSite: http.SameSiteLaxMode,
	})
	v.renew()
	return true
}
