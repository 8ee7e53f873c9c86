package problem

import (
	"errors"
	"strings"
	"testing"

	"scantling/internal/unit"
)

// TestTooLong checks that the message says which part, by how much, and what
// would do.
func TestTooLong(t *testing.T) {
	p := Problem{
		Stock: []Stock{
			{ID: "short", Size: Size{Length: unit.MM(900)}, Cost: 1},
			{ID: "oak 25", Size: Size{Length: unit.MM(2400)}, Cost: 1, Trim: Trim{Start: unit.MM(15), End: unit.MM(15)}},
		},
		Parts: []Part{{ID: "rail", Size: Size{Length: unit.MM(2400) + 500*unit.Micrometre}, Quantity: 1}},
	}
	var f *Fault
	if err := p.Check(); !errors.As(err, &f) || f.Reason != TooLong || f.Part != 0 || f.Stock != 1 || f.Limit != unit.MM(2370) {
		t.Fatalf("%+v", err)
	}
	for _, want := range []string{"rail", "2400.5 mm long", "oak 25", "2370 mm", "30.5 mm too little"} {
		if !strings.Contains(f.Text, want) {
			t.Errorf("%q does not say %q", f.Text, want)
		}
	}
}

func TestClear(t *testing.T) {
	box := func(at, l int64) Box {
		return Box{Point: Point{Along: unit.MM(at)}, Size: Size{Length: unit.MM(l)}}
	}
	s := Stock{Size: Size{Length: unit.MM(1000)}, Trim: Trim{Start: unit.MM(10), End: unit.MM(20)}}
	s.Defects = []Box{box(500, 50), box(-5, 20), box(540, 30), box(970, 100)}
	got := s.Clear()
	want := []Box{box(15, 485), box(570, 400)}
	if len(got) != 2 || got[0] != want[0] || got[1] != want[1] {
		t.Errorf("%v, want %v", got, want)
	}
}

// TestRooms: a part that lies clear beside a defect passes, one that lies clear
// nowhere is refused.
func TestRooms(t *testing.T) {
	mm := unit.MM
	p := Problem{Form: Sheets,
		Stock: []Stock{{Size: Size{mm(1000), mm(600)}, Cost: 1, Defects: []Box{{Point{mm(400), mm(200)}, Size{mm(50), mm(50)}}}}},
		Parts: []Part{{Size: Size{mm(1000), mm(350)}, Quantity: 1}},
	}
	if err := p.Check(); err != nil {
		t.Error(err)
	}
	p.Parts[0].Width = mm(351)
	if err := p.Check(); err == nil {
		t.Error("no clear room is that wide")
	}
	p.Parts[0].Length = mm(550)
	if err := p.Check(); err != nil {
		t.Error(err)
	}
}
