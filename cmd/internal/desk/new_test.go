package desk_test

import "testing"

// A class begun on the songs of the folder can be read, and has its minutes.
func TestNewClass(t *testing.T) {
	d, _, _ := opened(t)
	for _, bad := range []string{`{"do":"new","name":"","minutes":45}`, `{"do":"new","name":"A","minutes":500}`} {
		if r := ask(t, d, bad); r["ok"] != false {
			t.Errorf("%s: %v", bad, r)
		}
	}
	r := must(t, d, `{"do":"new","name":"Tuesday","minutes":30}`)
	if at(t, r, "class", "name") != "Tuesday" || at(t, r, "class", "state") != "fine" {
		t.Fatalf("%v", at(t, r, "class"))
	}
	v := must(t, d, `{"do":"class"}`)
	if n := len(at(t, v, "parts").([]any)); n < 3 {
		t.Errorf("%d parts", n)
	}
}
