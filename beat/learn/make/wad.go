package main

import (
	"bytes"
	"encoding/binary"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
)

// wad writes the MIDI music of Doom WAD files to a folder. A WAD is a list of
// named lumps; its directory has 16 bytes for each: offset, size, name.
func wad(args []string) error {
	f := flag.NewFlagSet("wad", flag.ExitOnError)
	out := f.String("o", "", "folder for the MIDI files")
	f.Parse(args)
	if err := os.MkdirAll(*out, 0o755); err != nil {
		return err
	}
	for _, path := range f.Args() {
		data, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		if len(data) < 12 || string(data[1:4]) != "WAD" {
			return fmt.Errorf("%s: not a WAD", path)
		}
		prefix := strings.TrimSuffix(filepath.Base(path), ".wad")
		count, dir := binary.LittleEndian.Uint32(data[4:]), binary.LittleEndian.Uint32(data[8:])
		for i := range count {
			e := data[dir+16*i:]
			off, size := binary.LittleEndian.Uint32(e), binary.LittleEndian.Uint32(e[4:])
			lump := data[off : off+size]
			if !bytes.HasPrefix(lump, []byte("MThd")) {
				continue
			}
			name := strings.TrimPrefix(string(bytes.TrimRight(e[8:16], "\x00")), "D_")
			if err := os.WriteFile(filepath.Join(*out, prefix+"_"+name+".mid"), lump, 0o644); err != nil {
				return err
			}
		}
	}
	return nil
}
