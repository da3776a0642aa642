package main

import (
	"context"
	"fmt"
	"net"

	"github.com/spf13/cobra"
	"golang.org/x/sync/errgroup"

	"onphrase/cmd/internal/serve"
)

type pageOptions struct {
	classFlags
	path string
	port int
	lan  bool
}

// usualPort is tried first, so that the address stays the same from day to day.
const usualPort = 3232

const pageLong = `Serves the page of a class on this computer and prints its address. When the
class file, a song or a correction changes, the page shows it; while music plays
it waits until you stop. Ctrl-C ends it.

--lan serves it to one more device at a time in the network that this computer
is in, such as your phone: open the address that is printed there. Its key works
once; then the next one is printed. Nothing is encrypted: use it in a network
that you trust. A phone keeps its screen on only if its own settings say so.

Nothing but the page and the songs of the class can be read.`

func newPageCmd(s *streams) *cobra.Command {
	o := &pageOptions{}
	cmd := &cobra.Command{
		Use:   "page CLASS",
		Short: "Serve the page of a class, and follow its changes",
		Long:  pageLong,
		Example: `  onphrase page class.yaml
  onphrase page class.yaml --lan`,
		Args: takes(1, 1, "a class file"),
		RunE: func(cmd *cobra.Command, args []string) error {
			o.path = args[0]
			if o.port < 0 || o.port > 65535 {
				return usage("from 1 to 65535, or 0 for any that is free", "--port: %d is no port", o.port)
			}
			return runPage(cmd.Context(), s, o, cmd.Flags().Changed("port"))
		},
	}
	o.register(cmd)
	cmd.Flags().IntVar(&o.port, "port", usualPort, "the `port` to serve at; 0 for any that is free")
	cmd.Flags().BoolVar(&o.lan, "lan", false, "let other devices in the network in, with a key")
	cmd.ValidArgsFunction = classFiles
	return cmd
}

func runPage(ctx context.Context, s *streams, o *pageOptions, portMatters bool) error {
	l, err := o.align(ctx, s, o.path)
	if err != nil {
		return err
	}
	v := &serve.Site{}
	if err := v.Show(l); err != nil {
		return err
	}
	doors, err := o.open(s, v, portMatters)
	if err != nil {
		return err
	}
	group, ctx := errgroup.WithContext(ctx)
	for _, d := range doors {
		group.Go(func() error { return d.Serve(ctx) })
	}
	group.Go(func() error { o.watch(ctx, s, v, l); return nil })
	if err := group.Wait(); err != nil {
		return err
	}
	s.say("stopped")
	return said(exitClean) // Ctrl-C is how it is meant to end
}

// open takes the addresses and prints them.
func (o *pageOptions) open(s *streams, v *serve.Site, portMatters bool) ([]serve.Door, error) {
	here, err := serve.Listen(o.port, portMatters)
	if err != nil {
		return nil, err
	}
	doors := []serve.Door{serve.NewDoor(here, v, false)}
	port := here.Addr().(*net.TCPAddr).Port
	fmt.Fprintf(s.out, "http://127.0.0.1:%d/\n", port)
	if o.lan {
		d, err := serve.OpenLAN(v, port, invitations(s))
		if err != nil {
			here.Close()
			return nil, err
		}
		doors = append(doors, d)
	}
	s.say("serving until Ctrl-C")
	return doors, nil
}

// invitations prints the address for the first device, and speaks of those for
// the others.
func invitations(s *streams) func(address string) {
	first := true
	return func(address string) {
		if first {
			fmt.Fprintln(s.out, address)
		} else {
			s.say("for the next device: %s", address)
		}
		first = false
	}
}
