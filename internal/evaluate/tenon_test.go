package evaluate

import (
	"fmt"
	"testing"

	"scantling/internal/piece"
	"scantling/internal/unit"
)

// legAndRail is a leg of 40 × 20 and a rail of 16 × 70 against it.
const legAndRail = `
material "leg" {
  asks      = "hard maple board"
  thickness = 20
}

material "rail" {
  asks      = "hard maple board"
  thickness = 15
}

part "leg" {
  of     = material.leg
  grain  = "up"
  left   = 0
  wide   = 40
  front  = 0
  bottom = 0
  high   = 400
}

part "rail" {
  of     = material.rail
  grain  = "right"
  left   = part.leg.right
  wide   = 300
  front  = 2
  bottom = %d
  high   = 70
}

part "board" {
  of     = material.leg
  grain  = "right"
  left   = 0
  wide   = 300
  front  = 100
  deep   = 60
  bottom = 0
}

part "strip" {
  of     = material.rail
  grain  = "right"
  left   = 0
  wide   = 300
  front  = 100
  deep   = 60
  bottom = part.board.top
}

joint "j" {
%s
}
`

// jointOf evaluates the trial with a joint and wants no diagnostics.
func jointOf(t *testing.T, bottom int, words string) piece.Joint {
	t.Helper()
	r := Piece(Sources{Document: text("trial", "scantling = 1\npiece \"Trial\" {\n  units = \"mm\"\n}\n"+fmt.Sprintf(legAndRail, bottom, words))})
	tell(t, r.Diagnostics)
	if len(r.Diagnostics) > 0 || len(r.Piece.Joints) != 1 {
		t.Fatalf("%s: %d joints", words, len(r.Piece.Joints))
	}
	verify(t, r)
	return r.Piece.Joints[0]
}

const railIntoLeg = "  of = part.rail\n  into = part.leg\n"

// TestTenonByRule: a third of 15, in the middle; two thirds of the leg's 40 in; at
// the leg's top a third of 70 with a haunch as long as the tenon is thick; below a
// tenth; 1.5 of glue room (common practice, no source).
func TestTenonByRule(t *testing.T) {
	mm := func(f piece.Figure) float64 { return f.Nm.Millimetres() }
	for _, c := range []struct {
		bottom int
		words  string
		// thickness, from, depth, low, high, haunch, clear
		want    [7]float64
		through bool
	}{
		{330, "", [7]float64{5, 5, 26.5, 7, 23.5, 5, 1.5}, false},
		{200, "", [7]float64{5, 5, 26.5, 7, 7, 0, 1.5}, false},
		{330, "tenon = { haunch = false, thickness = 6, bottom = 4, top = 12, from = 3 }\n depth = 20\n clear = { deep = 1 }", [7]float64{6, 3, 20, 4, 12, 0, 1}, false},
		{200, "tenon = { through = true, round = true }", [7]float64{5, 5, 40, 7, 7, 0, 0}, true},
		{0, "", [7]float64{5, 5, 26.5, 23.5, 7, 5, 1.5}, false},
		{200, "tenon = { haunch = 8 }", [7]float64{5, 5, 26.5, 7, 7, 8, 1.5}, false},
	} {
		j := jointOf(t, c.bottom, "  kind = \"tenon\"\n"+railIntoLeg+c.words)
		x := j.Tenon
		got := [7]float64{mm(x.Thickness), mm(x.From), mm(j.Depth), mm(x.Low), mm(x.High), mm(x.Haunch), mm(j.ClearDeep)}
		if got != c.want || x.Through != c.through || x.Round != c.through {
			t.Errorf("%d %s: is %v, want %v; %+v", c.bottom, c.words, got, c.want, *x)
		}
		if haunched := x.Haunch.Nm > 0; haunched && x.HaunchHigh != (c.bottom != 0) {
			t.Errorf("%d %s: the haunch is at the wrong end", c.bottom, c.words)
		}
	}
}

// TestLooseByRule: a third of the thinner part, as wide as four of that but half the
// joint, two thirds in and no more than five thicknesses; what is said goes before.
func TestLooseByRule(t *testing.T) {
	j := jointOf(t, 200, "  kind = \"loose tenon\"\n"+railIntoLeg+"  loose = { count = 1 }")
	if l := j.Loose; l.Thickness.Nm != unit.MM(5) || l.Width.Nm != unit.MM(20) || l.InB.Nm != unit.MM(25) || l.InA.Nm != unit.MM(25) || l.Margin.Nm != unit.MM(16) {
		t.Errorf("%+v", *l)
	}
	j = jointOf(t, 200, "  kind = \"loose tenon\"\n"+railIntoLeg+"  loose = { count = 2, thickness = 6, width = 22, margin = 18, in_of = 30, in_into = 20 }")
	if l := j.Loose; l.Count != 2 || l.Thickness.Nm != unit.MM(6) || l.Width.Nm != unit.MM(22) || l.Margin.Nm != unit.MM(18) || l.InA.Nm != unit.MM(30) || l.InB.Nm != unit.MM(20) {
		t.Errorf("%+v", *l)
	}
}

// TestScrewByRule: a screw of 4 has a root of 2.6 and a head of 8: pilot 90 % of
// the root in maple, clearance 4.5, countersink 8.5 at a right angle (Wood Handbook
// FPL-GTR-190, 2010, chapter 8, from memory; clearance and sink common practice).
func TestScrewByRule(t *testing.T) {
	um := func(f piece.Figure) int64 { return int64(f.Nm / unit.Micrometre) }
	for _, c := range []struct {
		words string
		// pilot, clearance, depth, sink, its depth, in micrometres
		want [5]int64
		flat bool
	}{
		{`screws = { kind = "screw 4 x 25", count = 2, margin = 30 }`, [5]int64{2300, 4500, 25000, 8500, 2000}, false},
		{`screws = { kind = "screw 4 x 25", count = 2, margin = 30, plug = 10 }`, [5]int64{2300, 4500, 30000, 10000, 5000}, true},
		{`screws = { kind = "screw 4 x 25", count = 2, margin = 30, plug = true, depth = 22 }`, [5]int64{2300, 4500, 22000, 8000, 5000}, true},
		{`screws = { kind = "screw 4 x 25", count = 2, margin = 30, sink = false, clearance = false, pilot = 2 }`, [5]int64{2000, 0, 25000, 0, 0}, false},
		{`screws = { kind = "coach screw", count = 2, margin = 30 }`, [5]int64{}, false},
		{`pins = { kind = "panel pin 1.25 x 20", count = 2, margin = 30 }`, [5]int64{}, false},
		{`pins = { kind = "panel pin 1.25 x 20", count = 2, margin = 30, pilot = true }`, [5]int64{1000, 0, 20000, 0, 0}, false},
		{`nails = { kind = "6d nail x 50", count = 2, margin = 30, pilot = 2.5, depth = 30 }`, [5]int64{2500, 0, 30000, 0, 0}, false},
	} {
		j := jointOf(t, 200, "  kind = \"butt\"\n  of = part.strip\n  into = part.board\n  "+c.words)
		f := j.Fasteners
		got := [5]int64{um(f.Pilot), um(f.Clearance), um(f.Depth), 0, 0}
		if f.Sink != nil {
			got[3], got[4] = um(f.Sink.Diameter), um(f.Sink.Depth)
		}
		if got != c.want || f.Sink != nil && f.Sink.Flat != c.flat {
			t.Errorf("%s: is %v, want %v", c.words, got, c.want)
		}
	}
}
