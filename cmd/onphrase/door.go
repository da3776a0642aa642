package main

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

// door is an address that the site is served at.
type door struct {
	listener net.Listener
	handler  http.Handler
}

// open takes the addresses and prints them.
func (o *pageOptions) open(s *streams, v *site, portMatters bool) ([]door, error) {
	here, err := net.Listen("tcp", net.JoinHostPort("127.0.0.1", strconv.Itoa(o.port)))
	if err != nil && !portMatters {
		here, err = net.Listen("tcp", "127.0.0.1:0")
	}
	if err != nil {
		return nil, told.Failed("choose another with --port, or 0 for any that is free", "cannot serve at port %d: %s", o.port, told.Reason(err))
	}
	port := strconv.Itoa(here.Addr().(*net.TCPAddr).Port)
	doors := []door{{here, &gate{hosts: []string{"127.0.0.1:" + port, "localhost:" + port}, inside: v}}}
	fmt.Fprintf(s.out, "http://127.0.0.1:%s/\n", port)
	if o.lan {
		ip, err := lanIP()
		if err != nil {
			here.Close()
			return nil, told.Failed("connect to a network, or leave --lan out", "--lan: %s", err)
		}
		d, err := openLAN(s, v, ip, port)
		if err != nil {
			here.Close()
			return nil, err
		}
		doors = append(doors, d)
	}
	s.say("serving until Ctrl-C")
	return doors, nil
}

// openLAN takes an address of the computer in its network, at the same port if
// that is free.
func openLAN(s *streams, v *site, ip, port string) (door, error) {
	out, err := net.Listen("tcp", net.JoinHostPort(ip, port))
	if err != nil {
		out, err = net.Listen("tcp", net.JoinHostPort(ip, "0"))
	}
	if err != nil {
		return door{}, told.Failed("", "--lan: cannot serve at %s: %s", ip, told.Reason(err))
	}
	at := out.Addr().String()
	first := true
	key := newInvite(func(key string) {
		if first {
			fmt.Fprintf(s.out, "http://%s/?%s=%s\n", at, keyName, key)
		} else {
			s.say("for the next device: http://%s/?%s=%s", at, keyName, key)
		}
		first = false
	})
	return door{out, &gate{hosts: []string{at}, invite: key, inside: v}}, nil
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

// serve answers until the context ends, and then lets what is under way end.
func (d door) serve(ctx context.Context) error {
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
