package serve

import (
	"context"
	"errors"
	"fmt"
	"net"
	"net/http"
	"strconv"
	"time"

	"onphrase/cmd/internal/told"
)

// Door is an address that the site is served at.
type Door struct {
	listener net.Listener
	handler  http.Handler
}

// NewDoor serves what is inside to this computer alone, at an address that
// Listen took. Writes says that what is inside takes changes, and looks itself
// whose they are.
func NewDoor(at net.Listener, inside http.Handler, writes bool) Door {
	return Door{at, &gate{hosts: hostsOf(at), inside: inside, writes: writes}}
}

// Listen takes a port of this computer, another one where that is taken and
// nobody has asked for it.
func Listen(port int, portMatters bool) (net.Listener, error) {
	here, err := net.Listen("tcp", net.JoinHostPort("127.0.0.1", strconv.Itoa(port)))
	if err != nil && !portMatters {
		here, err = net.Listen("tcp", "127.0.0.1:0")
	}
	if err != nil {
		return nil, told.Failed("choose another with --port, or 0 for any that is free", "cannot serve at port %d: %s", port,
			told.Reason(err))
	}
	return here, nil
}

// hostsOf is how browsers name the address: at port 80 without the port.
func hostsOf(l net.Listener) []string {
	port := strconv.Itoa(l.Addr().(*net.TCPAddr).Port)
	hosts := []string{"127.0.0.1:" + port, "localhost:" + port}
	if port == "80" {
		hosts = append(hosts, "127.0.0.1", "localhost")
	}
	return hosts
}

// OpenLAN serves what is inside in the network that this computer is in, at the
// same port if that is free. Each device needs a key; invited is told the
// address with the key for the next.
func OpenLAN(inside http.Handler, port int, invited func(address string)) (Door, error) {
	ip, err := lanIP()
	if err != nil {
		return Door{}, told.Failed("connect to a network, or leave --lan out", "--lan: %s", err)
	}
	return DoorAt(ip, port, inside, invited)
}

// DoorAt is a door with a key at an address of this computer.
func DoorAt(ip string, port int, inside http.Handler, invited func(address string)) (Door, error) {
	out, err := net.Listen("tcp", net.JoinHostPort(ip, strconv.Itoa(port)))
	if err != nil {
		out, err = net.Listen("tcp", net.JoinHostPort(ip, "0"))
	}
	if err != nil {
		return Door{}, told.Failed("", "--lan: cannot serve at %s: %s", ip, told.Reason(err))
	}
	at := out.Addr().String()
	key := newInvite(func(key string) { invited(fmt.Sprintf("http://%s/?%s=%s", at, keyName, key)) })
	return Door{out, &gate{hosts: []string{at}, invite: key, inside: inside}}, nil
}

// lanIP is this computer's own address in a private network.
//
// Ref: RFC 1918, private IPv4 addresses; RFC 5737, 192.0.2.0/24.
func lanIP() (string, error) {
	// Nothing is sent: asking for the way to an address that nobody has tells
	// which of ours would be used.
	if c, err := net.Dial("udp4", "192.0.2.1:9"); err == nil {
		defer c.Close()
		if ip := c.LocalAddr().(*net.UDPAddr).IP; ip.IsPrivate() {
			return ip.String(), nil
		}
	}
	all, err := net.InterfaceAddrs()
	if err != nil {
		return "", err
	}
	for _, a := range all {
		if n, ok := a.(*net.IPNet); ok && n.IP.IsPrivate() && n.IP.To4() != nil {
			return n.IP.String(), nil
		}
	}
	return "", errors.New("this computer has no address in a private network")
}

// Times that a server gives others.
const (
	headerTime = 10 * time.Second // to say what they want
	idleTime   = 2 * time.Minute  // between two requests
	endTime    = 3 * time.Second  // to finish when we stop
)

// Serve answers until the context ends, and then lets what is under way end.
func (d Door) Serve(ctx context.Context) error {
	srv := &http.Server{
		Handler: d.handler, ReadHeaderTimeout: headerTime, IdleTimeout: idleTime, MaxHeaderBytes: 16 << 10,
		BaseContext: func(net.Listener) context.Context { return ctx }, // ends the streams of events
	}
	ended := make(chan struct{})
	stop := context.AfterFunc(ctx, func() {
		defer close(ended)
		end, cancel := context.WithTimeout(context.Background(), endTime)
		defer cancel()
		if srv.Shutdown(end) != nil {
			srv.Close()
		}
	})
	if err := srv.Serve(d.listener); !errors.Is(err, http.ErrServerClosed) {
		stop()
		return told.Failed("", "cannot serve at %s: %s", d.listener.Addr(), err)
	}
	<-ended
	return nil
}
