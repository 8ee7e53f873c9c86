package evaluate

import (
	"testing"

	"scantling/internal/address"
	"scantling/internal/unit"
)

const nested = `scantling = 1

piece "Nested" {
}

material "m" {
  asks      = "cherry board"
  thickness = 10
}

sizes {
  seen = outer[2].inner.block.right # as a place in the piece
}

part "base" {
  of     = material.m
  grain  = "right"
  left   = 7
  wide   = 500
  front  = 0
  deep   = 100
  bottom = 0
}

group "outer" {
  repeat = 2
  left   = 50 * nth
  bottom = part.base.top

  part "wall" {
    of     = material.m
    grain  = "up"
    left   = 0
    front  = 0
    deep   = 100
    bottom = 0
    high   = 60
  }

  group "inner" {
    left = part.wall.right + 3

    part "block" {
      of     = material.m
      grain  = "right"
      left   = part.wall.right          # of the group around, carried over
      right  = part.base.left + 200     # of the piece
      front  = 0
      deep   = 20
      bottom = outer[nth_of.outer].wall.top
    }
  }
}

part "lid" {
  of     = material.m
  grain  = "back"
  left   = outer[1].inner.block.left
  wide   = sizes.seen - outer[1].inner.block.left
  front  = 0
  deep   = 50
  bottom = outer[1].inner.block.top
}
`

// TestFramesCarry names faces across groups: each is carried into the frame that
// it is used in.
func TestFramesCarry(t *testing.T) {
	r := Piece(Sources{Document: text("x", nested)})
	tell(t, r.Diagnostics)
	if len(r.Diagnostics) > 0 {
		t.FailNow()
	}
	verify(t, r)
	for of, want := range map[address.Address][3][2]unit.Length{
		"base":                 {{7, 507}, {0, 100}, {0, 10}},
		"outer[1].wall":        {{50, 60}, {0, 100}, {10, 70}},
		"outer[2].wall":        {{100, 110}, {0, 100}, {10, 70}},
		"outer[1].inner.block": {{60, 207}, {0, 20}, {70, 80}},
		"outer[2].inner.block": {{110, 207}, {0, 20}, {70, 80}},
		"lid":                  {{60, 207}, {0, 50}, {80, 90}},
	} {
		p := partOf(t, r.Piece, of)
		for axis := range 3 {
			if low, high := p.Extent[axis].Low.Nm, p.Extent[axis].High.Nm; low != want[axis][0]*mm || high != want[axis][1]*mm {
				t.Errorf("%s lies from %d to %d along %d, not from %d to %d mm", of, low, high, axis, want[axis][0], want[axis][1])
			}
		}
	}
	for i, want := range []struct {
		of   address.Address
		left unit.Length
	}{{"outer[1]", 50}, {"outer[1].inner", 63}, {"outer[2]", 100}, {"outer[2].inner", 113}} {
		g := r.Piece.Groups[i]
		if g.Address != want.of || g.Origin[0].Nm != want.left*mm || g.Origin[2].Nm != 10*mm {
			t.Errorf("group %d is %s at %d", i+1, g.Address, g.Origin[0].Nm)
		}
	}
	if g := r.Piece.Groups[1]; g.Parent != "outer[1]" {
		t.Errorf("%s stands in %q", g.Address, g.Parent)
	}
}

// TestOrderDoesNotMatter turns the blocks of the example round: the same sizes.
func TestOrderDoesNotMatter(t *testing.T) {
	src := example(t)
	want := Piece(src)
	f := want.Document
	var b []byte
	b = append(b, "scantling = 1\n\n"...)
	for i := len(f.Blocks) - 1; i >= 0; i-- {
		b = append(b, f.Written(f.Blocks[i].Whole)...)
		b = append(b, "\n\n"...)
	}
	src.Document.Text = b
	got := Piece(src)
	tell(t, got.Diagnostics)
	if len(got.Diagnostics) > 0 || len(got.Piece.Parts) != len(want.Piece.Parts) || len(got.Piece.Cuts) != len(want.Piece.Cuts) {
		t.Fatalf("%d parts", len(got.Piece.Parts))
	}
	for _, p := range want.Piece.Parts {
		q := partOf(t, got.Piece, p.Address)
		for axis := range 3 {
			if p.Extent[axis].Low.Nm != q.Extent[axis].Low.Nm || p.Extent[axis].High.Nm != q.Extent[axis].High.Nm {
				t.Errorf("%s lies elsewhere", p.Address)
			}
		}
	}
}

// TestFaultsAreToldOnce breaks one thing that much rests on: it is told once, and
// the rest is still there.
func TestFaultsAreToldOnce(t *testing.T) {
	for name, c := range map[string]struct{ old, new string }{
		"material":  {`asks = "birch plywood 4"`, `asks = "birch plywood 44"`},
		"size":      {"end_play     = 1\n", "end_play     = nonsense\n"},
		"part":      {"    grain  = \"up\"\n    left   = 0\n    front  = 0", "    grain  = \"upp\"\n    left   = 0\n    front  = 0"},
		"share":     {"share(contents.needles, input.drawers)", "share(contents.needels, input.drawers)"},
		"fit":       {"  sides  = 0.8\n", "  sides  = \"wide\"\n"},
		"thickness": {"thickness = 15\n", "thickness = 0 - 15\n"},
		"joint":     {"meets   = 2 * (input.drawers - 1)", "meets   = 2 * (input.drawer - 1)"},
		"space":     {"back   = part.back.front\n    bottom = nth == 1", "back   = part.bakc.front\n    bottom = nth == 1"},
		"use":       {`use "needle tray" {`, `use "needel tray" {`},
	} {
		src := example(t)
		before := len(src.Document.Text)
		src.Document.Text = replaceOnce(t, src.Document.Text, c.old, c.new)
		r := Piece(src)
		if len(r.Diagnostics) != 1 {
			t.Errorf("%s (%d bytes): %d told", name, before, len(r.Diagnostics))
			tell(t, r.Diagnostics)
		}
		if len(r.Piece.Materials) != 6 || len(r.Piece.Inputs) != 8 {
			t.Errorf("%s: %d materials and %d inputs are left", name, len(r.Piece.Materials), len(r.Piece.Inputs))
		}
	}
}
