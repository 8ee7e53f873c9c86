package journal

import (
	"errors"
	"slices"
	"strings"
	"testing"
)

type entry struct {
	N    int    `json:"n"`
	Text string `json:"text,omitempty"`
}

func readAll(data string) (ns []int, good int, err error) {
	good, err = Read([]byte(data), func(_ int, e entry) error {
		ns = append(ns, e.N)
		if e.N < 0 {
			return errors.New("refused")
		}
		return nil
	})
	return ns, good, err
}

func TestRead(t *testing.T) {
	for _, c := range []struct {
		data string
		want []int
		good int
		line int // of the fault
	}{
		{"", nil, 0, 0},
		{"{\"n\":1}\n\n  {\"n\":2}  \r\n", []int{1, 2}, 22, 0},
		{"{\"n\":1}\n{\"n\":2}", []int{1, 2}, 15, 0},
		{"{\"n\":1}\n{\"n\":", []int{1}, 8, 0},
		{"{\"n\":1}\n{\"n\":\n{\"n\":3}\n", []int{1}, 8, 2},
		{"{\"n\":1}\n{\"m\":2}\n", []int{1}, 8, 2},
		{"{\"n\":1} {\"n\":2}\n", nil, 0, 1},
		{"{\"n\":-1}\n", []int{-1}, 0, 1},
		{"null\n", nil, 0, 1},
		{"{\"text\":\"\xff\"}\n", nil, 0, 1},
		{"{\"text\":\"" + strings.Repeat("x", MaxLine) + "\"}\n", nil, 0, 1},
	} {
		ns, good, err := readAll(c.data)
		var fault *Fault
		line := 0
		if errors.As(err, &fault) {
			line = fault.Line
		}
		if !slices.Equal(ns, c.want) || good != c.good || line != c.line || (err == nil) != (c.line == 0) {
			t.Errorf("%.60q: %v, %d, %v; want %v, %d, a fault in line %d", c.data, ns, good, err, c.want, c.good, c.line)
		}
	}
	if _, _, err := readAll(strings.Repeat("\n", MaxBytes+1)); err == nil {
		t.Error("a journal beyond the limit was read")
	}
	if _, _, err := readAll(strings.Repeat("\n", MaxLines) + "{}\n"); err == nil {
		t.Error("a line beyond the limit was read")
	}
}

// Law: the good bytes read alike again, and lines written are read back.
func FuzzRead(f *testing.F) {
	f.Add("{\"n\":1}\n{\"n\":2}\n")
	f.Add("{\"n\":1}\n{\"n\"")
	f.Fuzz(func(t *testing.T, data string) {
		ns, good, err := readAll(data)
		if good < 0 || good > len(data) || err == nil && good < len(data) && strings.HasSuffix(data, "\n") {
			t.Fatalf("%q: %d good bytes, %v", data, good, err)
		}
		again, g, err := readAll(data[:good])
		if err != nil || g != good || len(again) > len(ns) {
			t.Fatalf("%q: the good bytes read as %v, %d, %v", data, again, g, err)
		}
		line, err := Line(entry{N: len(data), Text: "x"})
		if err != nil {
			t.Fatal(err)
		}
		if grown, _, err := readAll(string(Appended([]byte(data), good, line))); err != nil || len(grown) != len(again)+1 {
			t.Fatalf("%q with a line appended reads as %v, %v", data, grown, err)
		}
		if back, _, err := readAll(string(line)); err != nil || !slices.Equal(back, []int{len(data)}) {
			t.Fatalf("%q reads as %v, %v", line, back, err)
		}
	})
}
