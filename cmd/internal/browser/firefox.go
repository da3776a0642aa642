package browser

import (
	"bufio"
	"context"
	"encoding/base64"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"regexp"
	"time"
)

// firefox is driven through WebDriver BiDi, which it speaks itself.
//
// Ref: W3C WebDriver BiDi, editor's draft.
type firefox struct {
	program *exec.Cmd
	profile string
	line    *bidi
}

// Firefox starts it with a profile of its own. The error says that none is
// installed.
func Firefox() (Browser, error) {
	path, err := firstOf("firefox-esr", "firefox")
	if err != nil {
		return nil, err
	}
	profile, err := os.MkdirTemp("", "profile")
	if err != nil {
		return nil, err
	}
	quiet := `user_pref("media.autoplay.default", 0);` + "\n" + `user_pref("media.autoplay.blocking_policy", 0);` + "\n" +
		`user_pref("datareporting.policy.dataSubmissionEnabled", false);` + "\n" +
		`user_pref("network.captive-portal-service.enabled", false);` + "\n" +
		`user_pref("network.connectivity-service.enabled", false);` + "\n" +
		`user_pref("app.update.disabledForTesting", true);` + "\n" +
		`user_pref("browser.shell.checkDefaultBrowser", false);` + "\n"
	if err := os.WriteFile(profile+"/user.js", []byte(quiet), 0o600); err != nil {
		return nil, err
	}
	program := exec.Command(path, "--headless", "--no-remote", "--profile", profile, "--remote-debugging-port", "0")
	f := &firefox{program: program, profile: profile}
	f.program.Env = append(os.Environ(), "HOME="+profile, "MOZ_REMOTE_ALLOW_SYSTEM_ACCESS=0")
	says, err := f.program.StderrPipe()
	if err != nil {
		return nil, err
	}
	if err := f.program.Start(); err != nil {
		return nil, err
	}
	address, err := listening(says)
	if err == nil {
		f.line, err = dial(address + "/session")
	}
	if err == nil {
		err = f.line.call(context.Background(), "session.new", map[string]any{"capabilities": map[string]any{}}, nil)
	}
	if err != nil {
		f.Close()
		return nil, err
	}
	return f, nil
}

var listensOn = regexp.MustCompile(`WebDriver BiDi listening on (ws://\S+)`)

// listening waits until the program says at which address it listens, and reads
// on for as long as it talks.
func listening(says io.Reader) (string, error) {
	found := make(chan string, 1)
	go func() {
		for lines := bufio.NewScanner(says); lines.Scan(); {
			if m := listensOn.FindStringSubmatch(lines.Text()); m != nil {
				found <- m[1]
			}
		}
	}()
	select {
	case address := <-found:
		return address, nil
	case <-time.After(patience):
		return "", errors.New("firefox: no address within a minute")
	}
}

func (f *firefox) Name() string { return "firefox" }

func (f *firefox) Close() {
	if f.line != nil {
		f.line.close()
	}
	f.program.Process.Kill()
	f.program.Wait() // it was killed: how it ended says nothing
	os.RemoveAll(f.profile)
}

func (f *firefox) Open(ctx context.Context) (Tab, error) {
	var made struct{ Context string }
	if err := f.line.call(ctx, "browsingContext.create", map[string]any{"type": "tab"}, &made); err != nil {
		return nil, err
	}
	return &firefoxTab{f.line, made.Context}, nil
}

type firefoxTab struct {
	line *bidi
	id   string
}

func (t *firefoxTab) Go(ctx context.Context, url string) error {
	return t.line.call(ctx, "browsingContext.navigate", map[string]any{"context": t.id, "url": url, "wait": "complete"},
		nil)
}

func (t *firefoxTab) Run(ctx context.Context, expression string, out any) error {
	var got struct {
		Type             string
		Result           struct{ Value string }
		ExceptionDetails struct{ Text string }
	}
	err := t.line.call(ctx, "script.evaluate", map[string]any{
		"expression": asText(expression), "target": map[string]any{"context": t.id}, "awaitPromise": true,
		"userActivation": true}, &got)
	switch {
	case err != nil:
		return err
	case got.Type == "exception":
		return fmt.Errorf("%s: %s", expression, got.ExceptionDetails.Text)
	case out == nil || got.Result.Value == "":
		return nil
	}
	return json.Unmarshal([]byte(got.Result.Value), out)
}

func (t *firefoxTab) perform(ctx context.Context, kind, id string, actions []map[string]any) error {
	return t.line.call(ctx, "input.performActions", map[string]any{"context": t.id,
		"actions": []map[string]any{{"type": kind, "id": id, "actions": actions}}}, nil)
}

func (t *firefoxTab) ClickAt(ctx context.Context, x, y float64) error {
	return t.perform(ctx, "pointer", "mouse", []map[string]any{
		{"type": "pointerMove", "x": int(x), "y": int(y)},
		{"type": "pointerDown", "button": 0}, {"type": "pointerUp", "button": 0},
	})
}

func (t *firefoxTab) Press(ctx context.Context, keys ...string) error {
	for _, k := range keys {
		held, key := split(k)
		all := append(held, key)
		var actions []map[string]any
		for _, name := range all {
			actions = append(actions, map[string]any{"type": "keyDown", "value": wire(name)})
		}
		for i := len(all) - 1; i >= 0; i-- {
			actions = append(actions, map[string]any{"type": "keyUp", "value": wire(all[i])})
		}
		if err := t.perform(ctx, "key", "keyboard", actions); err != nil {
			return err
		}
	}
	return nil
}

func (t *firefoxTab) Resize(ctx context.Context, width, height int) error {
	return t.line.call(ctx, "browsingContext.setViewport", map[string]any{"context": t.id,
		"viewport": map[string]any{"width": width, "height": height}}, nil)
}

func (t *firefoxTab) Picture(ctx context.Context) ([]byte, error) {
	var got struct{ Data string }
	if err := t.line.call(ctx, "browsingContext.captureScreenshot", map[string]any{"context": t.id}, &got); err != nil {
		return nil, err
	}
	return base64.StdEncoding.DecodeString(got.Data)
}

func (t *firefoxTab) Close() error {
	return t.line.call(context.Background(), "browsingContext.close", map[string]any{"context": t.id}, nil)
}
