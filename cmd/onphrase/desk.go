package main

import (
	"context"
	"fmt"
	"os/exec"
	"runtime"
	"time"

	"github.com/spf13/cobra"
	"golang.org/x/sync/errgroup"

	"onphrase/align/export/web"
	"onphrase/cmd/internal/desk"
	"onphrase/cmd/internal/home"
	"onphrase/cmd/internal/library"
	"onphrase/cmd/internal/serve"
	"onphrase/plan"
)

type deskOptions struct {
	listenFlags
	port   int
	noOpen bool
	open   func(address string) error // in a browser
}

const deskLong = `Opens the desk in your browser: your songs, heard, seen and put right by ear, and
your classes on them. It is served on this computer alone, by this program, and
its address is printed. It ends by itself some time after its last page was
closed, or with Ctrl-C. Whatever you do there is kept at once, in the class file
and beside your songs.`

func newDeskCmd(s *streams) *cobra.Command {
	o := &deskOptions{open: openBrowser}
	cmd := &cobra.Command{
		Use:     "desk [CLASS|FOLDER]",
		Short:   "The whole job in your browser",
		Long:    deskLong,
		Example: "  onphrase desk\n  onphrase desk music",
		Args:    takes(0, 1, "a class file or a folder of songs"),
		RunE: func(cmd *cobra.Command, args []string) error {
			if o.port < 0 || o.port > 65535 {
				return usage("from 1 to 65535, or 0 for any that is free", "--port: %d is no port", o.port)
			}
			first := ""
			if len(args) > 0 {
				first = args[0]
			}
			return runDesk(cmd.Context(), s, o, first, cmd.Flags().Changed("port"))
		},
	}
	o.register(cmd)
	cmd.Flags().IntVar(&o.port, "port", usualPort, "the `port` to serve at; 0 for any that is free")
	cmd.Flags().BoolVar(&o.noOpen, "no-open", false, "print the address, and open no browser")
	return cmd
}

// endAfter is how long the desk waits for a page once there is none.
const endAfter = 10 * time.Minute

func runDesk(ctx context.Context, s *streams, o *deskOptions, first string, portMatters bool) error {
	listener, err := o.analyst(s)
	if err != nil {
		return err
	}
	folders := home.New(home.Parts{
		Analyst:   listener.Analyst,
		Listening: func() library.Listening { return newProgress(s, 1) },
		Moves:     func() (*plan.Catalog, error) { return catalog(s, "") },
	})
	d := desk.New(folders, time.Now)
	if first != "" {
		if err := folders.OpenFirst(d, first); err != nil {
			return err
		}
	}
	at, err := serve.Listen(o.port, portMatters)
	if err != nil {
		return err
	}
	inside := serve.NewDesk(d, folders, web.BaseStyle, serve.ClassPage{Desk: d})
	address := "http://" + at.Addr().String() + "/"
	fmt.Fprintln(s.out, address)
	if !o.noOpen {
		if err := o.open(address); err != nil {
			s.say("open this address in a browser")
		}
	}
	s.say("the desk ends some time after its last page was closed, or with Ctrl-C")
	group, ctx := errgroup.WithContext(ctx)
	ctx, end := context.WithCancel(ctx)
	group.Go(func() error { return serve.NewDoor(at, inside, true).Serve(ctx) })
	group.Go(func() error { d.Hear(ctx); return nil })
	group.Go(func() error { d.Watch(ctx); return nil })
	group.Go(func() error { endWhenLeft(ctx, d, endAfter); end(); return nil })
	if err := group.Wait(); err != nil {
		return err
	}
	s.say("stopped")
	return said(exitClean)
}

// endWhenLeft waits until no page has been open for some time.
func endWhenLeft(ctx context.Context, d *desk.Desk, patience time.Duration) {
	tick := time.NewTicker(patience / 60)
	defer tick.Stop()
	last := time.Now()
	for time.Since(last) < patience {
		if d.Tabs() > 0 {
			last = time.Now()
		}
		select {
		case <-ctx.Done():
			return
		case <-tick.C:
		}
	}
}

// openBrowser opens an address in the browser that is usual here.
func openBrowser(address string) error {
	switch runtime.GOOS {
	case "darwin":
		return exec.Command("open", address).Start()
	case "windows":
		return exec.Command("rundll32", "url.dll,FileProtocolHandler", address).Start()
	}
	return exec.Command("xdg-open", address).Start()
}
