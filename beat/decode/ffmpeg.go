package decode

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os/exec"
	"strings"
	"time"
)

// installFFmpeg is the way out where ffmpeg is missing.
const installFFmpeg = "install ffmpeg and put it on the PATH: apt install ffmpeg, brew install ffmpeg, winget install ffmpeg"

// stallLimit is how long the child may take over its next sound before it
// counts as hung.
var stallLimit = 30 * time.Second

// ffmpegStream reads what an ffmpeg child process decodes. The child writes
// WAV to a pipe, which tells rate and channels as well.
type ffmpegStream struct {
	*wavStream
	child *exec.Cmd
	out   io.ReadCloser
	said  tail

	watch   *time.Timer // kills a child that hangs; runs only while we wait
	stalled bool        // it did
	over    bool        // the child has been waited for
}

// newFFmpeg starts ffmpeg on a file whose encoding is named for messages.
func newFFmpeg(path string, encoding unsupportedError) (decoder, error) {
	program, err := exec.LookPath("ffmpeg")
	if err != nil {
		return nil, &Error{Msg: string(encoding) + " needs ffmpeg, which is not there", Hint: installFFmpeg}
	}
	// "file:" keeps a name from being taken for an option or an address, and
	// the whitelist keeps a playlist in disguise from opening one.
	f := &ffmpegStream{child: exec.Command(program, "-nostdin", "-v", "error",
		"-protocol_whitelist", "file,pipe", "-i", "file:"+path,
		"-map", "0:a:0", "-vn", "-sn", "-dn", "-c:a", "pcm_f32le", "-flush_packets", "0", "-f", "wav", "pipe:1")}
	f.child.Stderr = &f.said
	f.child.WaitDelay = time.Second
	if f.out, err = f.child.StdoutPipe(); err != nil {
		return nil, fmt.Errorf("ffmpeg: %w", err)
	}
	if err := f.child.Start(); err != nil {
		return nil, fmt.Errorf("ffmpeg: %w", err)
	}
	f.watch = time.AfterFunc(stallLimit, f.kill)
	f.wavStream, err = newWAV(f.out)
	f.stalled = !f.watch.Stop()
	if err == nil {
		return f, nil
	}
	f.Close()
	return nil, &Error{Place: "ffmpeg", Msg: f.problem(string(encoding) + " could not be decoded")}
}

func (f *ffmpegStream) read(dst []float32) (int, error) {
	f.watch.Reset(stallLimit)
	n, err := f.wavStream.read(dst)
	var status error
	if n == 0 {
		status = f.wait()
	}
	f.stalled = !f.watch.Stop() || f.stalled
	switch {
	case n > 0:
		return n, nil
	case f.stalled || status != nil || !errors.Is(err, io.EOF):
		return 0, &Error{Place: "ffmpeg", Msg: f.problem("it stopped before the end")}
	}
	return 0, io.EOF
}

// problem says what went wrong in the child's own last words, if it had any.
func (f *ffmpegStream) problem(otherwise string) string {
	if f.stalled {
		return fmt.Sprintf("no sound for %s, given up", stallLimit)
	}
	if line := f.said.last(); line != "" {
		return line
	}
	return otherwise
}

// kill ends the child and closes its pipe, which something that it started may
// still hold.
func (f *ffmpegStream) kill() {
	f.child.Process.Kill()
	f.out.Close()
}

// wait lets the child end and returns how it did, once. Something that the
// child left running and that keeps its pipes open is not waited for.
func (f *ffmpegStream) wait() error {
	if f.over {
		return nil
	}
	f.over = true
	if err := f.child.Wait(); !errors.Is(err, exec.ErrWaitDelay) {
		return err
	}
	return nil
}

// Close ends the child, whether it has finished or not.
func (f *ffmpegStream) Close() error {
	if !f.over {
		f.watch.Stop()
		f.kill()
		f.wait()
	}
	return nil
}

func (f *ffmpegStream) notes() []string {
	notes := f.wavStream.notes()
	if f.over {
		if line := f.said.last(); line != "" {
			notes = append(notes, "ffmpeg: "+line)
		}
	}
	return notes
}

// tail keeps the end of what a program says.
type tail struct{ b []byte }

func (t *tail) Write(p []byte) (int, error) {
	const keep = 4 << 10 // [bytes]
	t.b = append(t.b, p...)
	if len(t.b) > keep {
		t.b = append(t.b[:0], t.b[len(t.b)-keep:]...)
	}
	return len(p), nil
}

// last is the last line that says something.
func (t *tail) last() string {
	lines := bytes.Split(bytes.TrimSpace(t.b), []byte("\n"))
	return strings.TrimSpace(string(lines[len(lines)-1]))
}
