package carve_test

import (
	"os"
	"testing"

	"scantling/internal/address"
	"scantling/internal/document"
	"scantling/internal/evaluate"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// cutsOf evaluates the box with more in it and returns its cuts by address.
func cutsOf(t *testing.T, more string) (evaluate.Result, map[address.Address]piece.Cut) {
	t.Helper()
	box, err := os.ReadFile("../evaluate/testdata/box.piece.hcl")
	if err != nil {
		t.Fatal(err)
	}
	r := evaluate.Piece(evaluate.Sources{Document: document.Source{Name: "x", Text: append(box, more...)}})
	for _, d := range r.Diagnostics {
		t.Fatalf("line %d: %s", d.Where.Line, d.Code)
	}
	for _, d := range r.Ledger.Verify() {
		t.Error(d)
	}
	out := map[address.Address]piece.Cut{}
	for _, c := range r.Piece.Cuts {
		out[c.Address] = c
	}
	return r, out
}

// region is a box in the piece's axes, in nanometres.
type region [3][2]unit.Length

// regionOf is where a slot lies in the piece.
func regionOf(p piece.Part, s *piece.Slot) region {
	var local [3][2]unit.Length
	open, high := s.Open.Axis()
	sizes := p.Sizes()
	local[s.Run] = [2]unit.Length{s.From.Nm, s.To.Nm}
	local[s.Across()] = [2]unit.Length{s.Near.Nm, s.Far.Nm}
	local[open] = [2]unit.Length{0, s.Depth.Nm}
	if high {
		local[open] = [2]unit.Length{sizes[open].Nm - s.Depth.Nm, sizes[open].Nm}
	}
	var out region
	for l, d := range p.Frame.Directions() {
		axis, sign := d.Axis()
		if sign > 0 {
			out[axis] = [2]unit.Length{p.Extent[axis].Low.Nm + local[l][0], p.Extent[axis].Low.Nm + local[l][1]}
		} else {
			out[axis] = [2]unit.Length{p.Extent[axis].High.Nm - local[l][1], p.Extent[axis].High.Nm - local[l][0]}
		}
	}
	return out
}

const (
	um = unit.Micrometre
	mm = unit.Millimetre
)

func partOf(t *testing.T, p *piece.Piece, of address.Address) piece.Part {
	t.Helper()
	for _, x := range p.Parts {
		if x.Address == of {
			return x
		}
	}
	t.Fatalf("no part %s", of)
	return piece.Part{}
}

// TestMirroredCuts puts cuts on both of a pair: the right one's are the mirror
// image of the left one's.
func TestMirroredCuts(t *testing.T) {
	r, cuts := cutsOf(t, `
cut "line" {
  kind  = "groove"
  on    = part.side
  side  = "inside"
  runs  = "back"
  near  = part.shelf.top
  width = 6
  depth = 5
  from  = 20
}

cut "edge" {
  kind  = "rebate"
  on    = part.side
  side  = "back"
  runs  = "up"
  near  = 0
  width = 4
  depth = 7
}

cut "hole" {
  kind     = "hole"
  on       = part.side
  side     = "outside"
  at       = { front = 30, top = 10 }
  diameter = 5
  depth    = 8
}

cut "grip" {
  kind   = "scoop"
  on     = part.side
  edge   = "top"
  centre = 60
  chord  = 50
  depth  = 12
}
`)
	left, right := partOf(t, r.Piece, "side.left"), partOf(t, r.Piece, "side.right")
	for name, want := range map[string]region{
		"line": {{9 * mm, 14 * mm}, {20 * mm, 200 * mm}, {64 * mm, 70 * mm}},
		"edge": {{0, 4 * mm}, {193 * mm, 200 * mm}, {0, 120 * mm}},
	} {
		l := regionOf(left, cuts[left.Address.Child(name)].Slot)
		if l != want {
			t.Errorf("%s lies at %v, not %v", name, l, want)
		}
		mirrored := want
		mirrored[0] = [2]unit.Length{300*mm - want[0][1], 300*mm - want[0][0]}
		if got := regionOf(right, cuts[right.Address.Child(name)].Slot); got != mirrored {
			t.Errorf("the twin's %s lies at %v, not %v", name, got, mirrored)
		}
	}
	if c := cuts["side.left.line"].Slot; c.StartOpen == c.EndOpen {
		t.Errorf("the groove is stopped at one end: %+v", c)
	}
	for _, p := range []piece.Part{left, right} {
		hole, grip := cuts[p.Address.Child("hole")], cuts[p.Address.Child("grip")]
		if x := pointOf(p, hole.Bore.Open, hole.Bore.At); x[1] != 30*mm || x[2] != 110*mm {
			t.Errorf("%s: the hole is at %v", p.Address, x)
		}
		if hole.Bore.Open != p.Frame.SideToward(p.Show) {
			t.Errorf("%s: the hole is in %s", p.Address, hole.Bore.Open)
		}
		// along the back axis 60 from the front, whichever way the part's width runs
		_, sign := p.Frame.LocalOf(piece.Back)
		want := 60 * mm
		if sign < 0 {
			want = 140 * mm
		}
		if grip.Dip.Centre.Nm != want || grip.Dip.Open != p.Frame.SideToward(piece.ToUp) {
			t.Errorf("%s: the scoop is at %v of %s", p.Address, grip.Dip.Centre.Nm, grip.Dip.Open)
		}
	}
}

// pointOf is a point of two local coordinates in the piece, nought along the
// third.
func pointOf(p piece.Part, open piece.Side, at [2]piece.Figure) [3]unit.Length {
	axis, _ := open.Axis()
	out := p.Origin()
	i := 0
	for l, d := range p.Frame.Directions() {
		if piece.Local(l) == axis {
			continue
		}
		a, sign := d.Axis()
		out[a] += unit.Length(sign) * at[i].Nm
		i++
	}
	return out
}

// TestSeriesOfGrooves closes a row of equal grooves from a margin.
func TestSeriesOfGrooves(t *testing.T) {
	r, cuts := cutsOf(t, `
series "line" {
  kind   = "groove"
  on     = part.shelf
  side   = "top"
  runs   = "back"
  count  = 4
  pitch  = 30
  width  = 6.35
  depth  = 3
  margin = 20
}
`)
	s := r.Piece.Series[0]
	sum := unit.Length(0)
	for _, x := range s.Terms {
		sum += x.Figure.Nm
	}
	if sum != s.Whole.Nm {
		t.Errorf("the row adds up to %d, not %d", sum, s.Whole.Nm)
	}
	if len(s.Terms) != 9 || s.Terms[0].Figure.Nm != 20*mm || s.Terms[1].Figure.Nm != 6350*um || s.Terms[2].Figure.Nm != 23650*um {
		t.Errorf("terms %+v", s.Terms)
	}
	if c := cuts["shelf.line[3]"]; c.Nth != 3 || c.Slot == nil || c.Slot.Near.Nm != 80*mm {
		t.Errorf("the third is %+v", c)
	}
}
