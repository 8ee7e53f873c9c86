package evaluate

import (
	"fmt"
	"os"
	"strconv"
	"testing"

	"scantling/internal/address"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

func partOf(t testing.TB, p *piece.Piece, of address.Address) piece.Part {
	t.Helper()
	for _, x := range p.Parts {
		if x.Address == of {
			return x
		}
	}
	t.Fatalf("no part %s", of)
	return piece.Part{}
}

func spaceOf(t testing.TB, p *piece.Piece, of address.Address) piece.Space {
	t.Helper()
	for _, x := range p.Spaces {
		if x.Address == of {
			return x
		}
	}
	t.Fatalf("no space %s", of)
	return piece.Space{}
}

// grid calls visit for a grid of the demonstration piece's inputs.
func grid(visit func(inputs map[string]string)) {
	for drawers := 2; drawers <= 5; drawers++ {
		for _, length := range []string{"250", "300", "350", "400"} {
			for _, side := range []string{"12", "14", "16", "18"} {
				for _, head := range []string{"8", "12", "16"} {
					for i, wood := range []string{`"black cherry"`, `"black walnut"`, `"hard maple"`} {
						width := []string{"160", "220", "420"}[(i+drawers)%3]
						visit(map[string]string{"drawers": strconv.Itoa(drawers), "needle_length": length, "side_thickness": side, "head_diameter": head, "timber": wood, "least_width": width})
					}
				}
			}
		}
	}
}

// TestGrid evaluates the demonstration piece over its inputs: no diagnostics, all
// needles held once, every row closes, everything inside fits.
func TestGrid(t *testing.T) {
	src := example(t)
	n := 0
	grid(func(inputs map[string]string) {
		if n++; n%13 != 0 && os.Getenv("LONG") == "" {
			return // the long tier walks them all
		}
		src.Inputs = inputs
		r := Piece(src)
		name := fmt.Sprint(inputs)
		for _, d := range r.Diagnostics {
			t.Errorf("%s: %s:%d %s %+v", name, d.Where.File, d.Where.Line, d.Code, d.Text.Args)
		}
		checkHeld(t, name, r.Piece)
		checkRows(t, name, r.Piece)
		checkInside(t, name, r.Piece)
		for _, q := range r.Piece.Requires {
			if !q.Holds {
				t.Errorf("%s: %s", name, q.Text)
			}
		}
	})
	t.Logf("%d points", n)
}

func checkHeld(t *testing.T, name string, p *piece.Piece) {
	t.Helper()
	held := map[string]bool{}
	for _, c := range p.Contents {
		if len(c.Things) != 24 {
			t.Errorf("%s: %d needles", name, len(c.Things))
		}
		for _, x := range c.Things {
			if x.Cut == "" || held[string(x.Cut)] {
				t.Errorf("%s: needle %q lies in %q", name, x.Key, x.Cut)
			}
			held[string(x.Cut)] = true
		}
	}
}

func checkRows(t *testing.T, name string, p *piece.Piece) {
	t.Helper()
	for _, s := range p.Series {
		sum := unit.Length(0)
		for i, x := range s.Terms {
			sum += x.Figure.Nm
			if x.Air == (i%2 == 0) || x.Figure.Nm <= 0 {
				t.Errorf("%s: %s term %d is %v air %v", name, s.Address, i, x.Figure.Nm, x.Air)
			}
		}
		if sum != s.Whole.Nm {
			t.Errorf("%s: %s adds up to %d, not %d", name, s.Address, sum, s.Whole.Nm)
		}
	}
}

// checkInside holds each drawer against its opening and each tray against its
// drawer's sides.
func checkInside(t *testing.T, name string, p *piece.Piece) {
	t.Helper()
	for i, f := range p.Fits {
		space := spaceOf(t, p, f.Inside)
		front := partOf(t, p, f.Moves.Child("front"))
		for axis, clearance := range map[int]unit.Length{0: f.Sides.Nm, 2: f.Above.Nm} {
			if got := space.Clear[axis].Nm - front.Extent[axis].Size(); got != clearance {
				t.Errorf("%s: drawer %d has %v along %d, not %v", name, i+1, got, axis, clearance)
			}
		}
		left, right := partOf(t, p, f.Moves.Child("side").Child("left")), partOf(t, p, f.Moves.Child("side").Child("right"))
		at := left.Extent[0].High.Nm
		for _, x := range p.Parts {
			if x.Name != "tray" || !f.Moves.Has(x.Address) {
				continue
			}
			if x.Extent[0].Low.Nm < at {
				t.Errorf("%s: %s overlaps by %d", name, x.Address, at-x.Extent[0].Low.Nm)
			}
			at = x.Extent[0].High.Nm
			back := partOf(t, p, f.Moves.Child("back"))
			if x.Extent[1].Low.Nm <= front.Extent[1].High.Nm || x.Extent[1].High.Nm >= back.Extent[1].Low.Nm {
				t.Errorf("%s: %s does not lie between front and back", name, x.Address)
			}
		}
		if at > right.Extent[0].Low.Nm {
			t.Errorf("%s: trays of drawer %d are too wide by %d", name, i+1, at-right.Extent[0].Low.Nm)
		}
	}
}
