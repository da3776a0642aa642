package decode

import (
	"bufio"
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"hash"
	"io"
	"os"
	"os/exec"
)

// Identity names the sound of a file, whatever its tags, its pictures and its
// name: "sha256:" and the hash of the sound as it is encoded. The same music
// encoded otherwise is another sound. It does not depend on who decodes it.
func Identity(path string) (string, error) {
	f, size, err := openFile(path)
	if err != nil {
		return "", err
	}
	defer f.Close()
	found, err := sniff(f, size)
	if err != nil {
		return "", err
	}
	h := sha256.New()
	switch found.place {
	case "mp3":
		err = hashMP3(h, f, size)
	case "flac":
		err = hashFLAC(h, f, size)
	case "wav":
		err = hashWAV(h, f, size)
	default:
		return foreignIdentity(f, found.name)
	}
	if err != nil {
		return "", &Error{Place: found.place, Msg: err.Error()}
	}
	return "sha256:" + hex.EncodeToString(h.Sum(nil)), nil
}

// hashMP3 takes the frames of sound. The info frame is left out: programs that
// write tags may write it anew.
func hashMP3(h hash.Hash, r io.ReaderAt, size int64) error {
	start := skipTags(r, size)
	scan := newMP3Scanner(r, start, trimTags(r, start, size))
	for n := 0; ; n++ {
		f, err := scan.next()
		switch {
		case err != nil && n == 0:
			return errNoFrames
		case err != nil:
			return nil // the end, or what is no sound any more
		}
		if n == 0 {
			if _, tagged := readMP3Info(f.header, f.data); tagged {
				continue
			}
		}
		h.Write(f.data)
	}
}

// hashFLAC takes all that follows the metadata blocks.
//
// Ref: RFC 9639, section 8.
func hashFLAC(h hash.Hash, r io.ReaderAt, size int64) error {
	const signature, header, last = 4, 4, 0x80
	at := skipTags(r, size) + signature
	for {
		b := readAt(r, at, header)
		if len(b) < header {
			return errors.New("the file ends within its metadata")
		}
		at += header + int64(b[1])<<16 + int64(b[2])<<8 + int64(b[3])
		if b[0]&last != 0 {
			break
		}
	}
	if at > size {
		return errors.New("the file ends within its metadata")
	}
	return hashPart(h, r, at, trimTags(r, at, size))
}

// hashWAV takes the samples, and how they are to be read.
func hashWAV(h hash.Hash, f *os.File, size int64) error {
	start := skipTags(f, size)
	in := io.NewSectionReader(f, start, size-start)
	header, err := readWAVHeader(in)
	if err != nil {
		return err
	}
	at, err := in.Seek(0, io.SeekCurrent)
	if err != nil {
		return err
	}
	end := size
	if header.size >= 0 {
		end = min(end, start+at+header.size)
	}
	fmt.Fprintf(h, "%d %d %d %d\x00", header.tag, header.channels, header.rate, header.bits)
	return hashPart(h, f, start+at, end)
}

func hashPart(h hash.Hash, r io.ReaderAt, from, to int64) error {
	_, err := io.Copy(h, io.NewSectionReader(r, from, to-from))
	return err
}

// foreignIdentity lets ffmpeg take the packets out of a file whose encoding is
// named for messages, without decoding them.
func foreignIdentity(f *os.File, encoding string) (string, error) {
	program, err := exec.LookPath("ffmpeg")
	if err != nil {
		return "", &Error{Msg: encoding + " needs ffmpeg, which is not there", Hint: installFFmpeg}
	}
	var said tail
	child := exec.Command(program, "-nostdin", "-v", "error",
		"-protocol_whitelist", "file,pipe", "-i", "file:"+f.Name(),
		"-map", "0:a:0", "-c:a", "copy", "-f", "hash", "-hash", "sha256", "pipe:1")
	child.Stderr = &said
	out, err := child.Output()
	if err != nil {
		return "", &Error{Place: "ffmpeg", Msg: encoding + " could not be read: " + said.last()}
	}
	line, _ := bufio.NewReader(bytes.NewReader(out)).ReadString('\n')
	_, sum, ok := bytes.Cut([]byte(line), []byte("="))
	if sum = bytes.TrimSpace(sum); !ok || len(sum) != hex.EncodedLen(sha256.Size) {
		return "", &Error{Place: "ffmpeg", Msg: encoding + ": no hash of its sound"}
	}
	return "sha256:" + string(bytes.ToLower(sum)), nil
}
