package browser

import (
	"context"
	"encoding/json"
	"fmt"
	"sync"

	"github.com/coder/websocket"
)

// largest is the longest answer taken, a picture of a large screen [bytes].
const largest = 64 << 20

// bidi is a line to a browser: commands with numbers, answers with the same.
type bidi struct {
	socket *websocket.Conn

	mu      sync.Mutex
	last    int
	waiting map[int]chan answer
	broken  error
}

type answer struct {
	ID      int             `json:"id"`
	Result  json.RawMessage `json:"result"`
	Error   string          `json:"error"`
	Message string          `json:"message"`
}

func dial(address string) (*bidi, error) {
	ctx, cancel := context.WithTimeout(context.Background(), patience)
	defer cancel()
	socket, _, err := websocket.Dial(ctx, address, nil)
	if err != nil {
		return nil, err
	}
	socket.SetReadLimit(largest)
	b := &bidi{socket: socket, waiting: map[int]chan answer{}}
	go b.read()
	return b, nil
}

// read hands answers out until the line ends. Events have no number and are
// left out.
func (b *bidi) read() {
	for {
		_, data, err := b.socket.Read(context.Background())
		var a answer
		if err == nil {
			err = json.Unmarshal(data, &a)
		}
		b.mu.Lock()
		if err != nil {
			b.broken = err
			for _, c := range b.waiting {
				close(c)
			}
			b.waiting = nil
			b.mu.Unlock()
			return
		}
		if c, ok := b.waiting[a.ID]; ok && a.ID > 0 {
			delete(b.waiting, a.ID)
			c <- a
		}
		b.mu.Unlock()
	}
}

// call sends a command and waits for its answer; out may be nil.
func (b *bidi) call(ctx context.Context, method string, params, out any) error {
	b.mu.Lock()
	if b.broken != nil {
		defer b.mu.Unlock()
		return b.broken
	}
	b.last++
	id, c := b.last, make(chan answer, 1)
	b.waiting[id] = c
	b.mu.Unlock()
	data, err := json.Marshal(map[string]any{"id": id, "method": method, "params": params})
	if err != nil {
		return err
	}
	if err := b.socket.Write(ctx, websocket.MessageText, data); err != nil {
		return err
	}
	select {
	case <-ctx.Done():
		return fmt.Errorf("%s: %w", method, ctx.Err())
	case a, ok := <-c:
		switch {
		case !ok:
			return fmt.Errorf("%s: %w", method, b.broken)
		case a.Error != "":
			return fmt.Errorf("%s: %s: %s", method, a.Error, a.Message)
		case out == nil:
			return nil
		}
		return json.Unmarshal(a.Result, out)
	}
}

func (b *bidi) close() { b.socket.CloseNow() }
