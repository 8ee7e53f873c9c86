package fitting_test

import (
	"math"
	"testing"

	"scantling/internal/fitting"
	"scantling/internal/hardware"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/unit"
)

// find returns a fitting of the catalogue.
func find(t *testing.T, name string) hardware.Fitting {
	t.Helper()
	f, err := hardware.FindFitting(name)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// cupboard is a side of 18 × 200 × 400 with a door of 18 before its front edge,
// flush at the left, and a drawer side 12.7 within; in tenths.
func cupboard() *trial.Builder {
	b := trial.New()
	b.Part("side", trial.LeftSide, 0, 180, 0, 2000, 0, 4000)
	b.Part("door", trial.BackPanel, 0, 3000, -180, 0, 0, 4000)
	b.Part("drawer", trial.SideLow, 307, 427, 100, 1900, 500, 1500)
	b.Part("rail", trial.Front, 180, 3000, 1000, 1200, 3000, 3800)
	b.Part("top", trial.GrainRight, -200, 3200, -200, 2200, 3800, 4000)
	return b
}

func job(t *testing.T, b *trial.Builder, name string, change func(j *fitting.Job)) fitting.Job {
	t.Helper()
	j := fitting.Job{Name: "f", Fitting: find(t, name), Count: 1, Ledger: b.Ledger}
	change(&j)
	return j
}

// fitted lays a job and checks its ledger.
func fitted(t *testing.T, b *trial.Builder, j fitting.Job) fitting.Result {
	t.Helper()
	out, fault := fitting.Lay(j)
	if fault != nil {
		t.Fatalf("%s: %v", fault.Code, fault.Text)
	}
	for _, d := range b.Ledger.Verify() {
		t.Error(d)
	}
	return out
}

func mm(f piece.Figure) float64 { return f.Nm.Millimetres() }

// extent is a body's limits in millimetres.
func extent(x piece.Body) [6]float64 {
	e := x.Extent
	return [6]float64{mm(e[0].Low), mm(e[0].High), mm(e[1].Low), mm(e[1].High), mm(e[2].Low), mm(e[2].High)}
}

func near(a, b [6]float64) bool {
	for i := range a {
		if math.Abs(a[i]-b[i]) > 1e-9 {
			return false
		}
	}
	return true
}

// TestHinge: a butt hinge of 50 × 36 with a knuckle of 5.5, leaves 1.6: two at 60
// from the ends. Each leaf in a recess 18 in and 2.75 deep, the knuckle's pin in
// line with the edge; screws of 16 through 1.6 of leaf, 2.75 - 1.6 below.
func TestHinge(t *testing.T) {
	b := cupboard()
	out := fitted(t, b, job(t, b, "butt hinge 50", func(j *fitting.Job) {
		m := b.Fig("m", 600)
		j.Count, j.Margin = 2, &m
		j.On, j.With, j.Side, j.Toward, j.Runs = b.Find("side"), b.Find("door"), piece.ToFront, piece.ToLeft, piece.Up
	}))
	if len(out.Bodies) != 6 || len(out.Cuts) != 2*(2+6) {
		t.Fatalf("%d bodies, %d cuts", len(out.Bodies), len(out.Cuts))
	}
	for i, want := range [][6]float64{
		{0, 18, 1.15, 2.75, 35, 85},        // the side's leaf on the floor of its recess
		{0, 18, -2.75, -1.15, 35, 85},      // the door's
		{-2.75, 2.75, -2.75, 2.75, 35, 85}, // the knuckle
		{0, 18, 1.15, 2.75, 315, 365},
	} {
		if got := extent(out.Bodies[i]); !near(got, want) {
			t.Errorf("%s %d: %v, want %v", out.Bodies[i].Word, i, got, want)
		}
	}
	c := out.Cuts[0]
	s := c.Slot
	if c.Part != "side" || c.Kind != piece.Recess || s.Open != b.Find("side").Frame.SideToward(piece.ToFront) || mm(s.From) != 35 || mm(s.To) != 85 || mm(s.Depth) != 2.75 || mm(s.Far)-mm(s.Near) != 18 {
		t.Errorf("%s: %+v", c.Address, *s)
	}
	hole := out.Cuts[1].Bore
	if hole == nil || mm(hole.Depth) != 16-1.6+2.75 || mm(hole.Diameter) != 2.1 || len(out.Cuts[1].After) != 1 || out.Cuts[1].After[0] != c.Address {
		t.Errorf("%+v %+v", out.Cuts[1], hole)
	}
}

// TestSurfaces: knob, turn-button, runner, ball catch: where they stand, what is
// bored.
func TestSurfaces(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(b *trial.Builder, j *fitting.Job)
		body   [6]float64
		round  bool
		holes  int
		// the first hole's diameter and depth
		hole [2]float64
	}{
		{"knob 25", func(b *trial.Builder, j *fitting.Job) {
			m, c := b.Fig("m", 3500), b.Fig("c", 2700)
			j.On, j.Side, j.Runs, j.Margin, j.Centre = b.Find("door"), piece.ToFront, piece.Up, &m, &c
		}, [6]float64{257.5, 282.5, -40, -18, 337.5, 362.5}, true, 1, [2]float64{4.5, 18}},
		{"bow pull 96", func(b *trial.Builder, j *fitting.Job) { // 106 x 10 about the middle
			j.On, j.Side, j.Runs = b.Find("door"), piece.ToFront, piece.Right
		}, [6]float64{97, 203, -46, -18, 195, 205}, false, 2, [2]float64{4.5, 18}},
		{"turn-button 40", func(b *trial.Builder, j *fitting.Job) {
			j.On, j.Side, j.Runs = b.Find("door"), piece.ToFront, piece.Right
		}, [6]float64{130, 170, -26, -18, 193, 207}, false, 1, [2]float64{2.1, 17}},
		{"drawer runner 300", func(b *trial.Builder, j *fitting.Job) {
			c := b.Fig("c", 1000)
			j.On, j.Side, j.Runs, j.Centre = b.Find("door"), piece.ToBack, piece.Up, &c
		}, [6]float64{91.5, 108.5, 0, 9, 50, 350}, false, 3, [2]float64{2.1, 7}},
		{"ball catch 9", func(b *trial.Builder, j *fitting.Job) {
			j.On, j.Side, j.Runs = b.Find("door"), piece.ToRight, piece.Up
		}, [6]float64{288, 300, -13.5, -4.5, 195.5, 204.5}, true, 1, [2]float64{9, 12}},
	} {
		b := cupboard()
		out := fitted(t, b, job(t, b, c.name, func(j *fitting.Job) { c.change(b, j) }))
		if len(out.Bodies) != 1 || len(out.Cuts) != c.holes {
			t.Errorf("%s: %d bodies, %d cuts", c.name, len(out.Bodies), len(out.Cuts))
			continue
		}
		if x := out.Bodies[0]; !near(extent(x), c.body) || x.Round != c.round {
			t.Errorf("%s: %v, want %v", c.name, extent(x), c.body)
		}
		if h := out.Cuts[0].Bore; mm(h.Diameter) != c.hole[0] || mm(h.Depth) != c.hole[1] {
			t.Errorf("%s: hole %v × %v", c.name, mm(h.Diameter), mm(h.Depth))
		}
	}
}

// TestPairs: slide, magnetic catch and table button, with the part that they work
// on.
func TestPairs(t *testing.T) {
	b := cupboard()
	out := fitted(t, b, job(t, b, "ball-bearing slide 300", func(j *fitting.Job) {
		j.Fitting.Length = unit.MM(150)
		m, c := b.Fig("m", 1000), b.Fig("c", 1000)
		j.On, j.With, j.Side, j.Runs, j.Margin, j.Centre = b.Find("side"), b.Find("drawer"), piece.ToRight, piece.Back, &m, &c
	}))
	if want := [6]float64{18, 30.7, 25, 175, 77.5, 122.5}; len(out.Bodies) != 1 || !near(extent(out.Bodies[0]), want) || len(out.Cuts) != 6 {
		t.Errorf("slide: %v, %d cuts", extent(out.Bodies[0]), len(out.Cuts))
	}
	out = fitted(t, b, job(t, b, "magnetic catch 45", func(j *fitting.Job) {
		j.On, j.With, j.Side, j.Runs = b.Find("side"), b.Find("door"), piece.ToRight, piece.Up
	}))
	for i, want := range [][6]float64{{18, 31, 0, 15, 177.5, 222.5}, {18.5, 30.5, -1.2, 0, 185, 215}} {
		if !near(extent(out.Bodies[i]), want) {
			t.Errorf("%s: %v, want %v", out.Bodies[i].Word, extent(out.Bodies[i]), want)
		}
	}
	out = fitted(t, b, job(t, b, "table button 45", func(j *fitting.Job) {
		j.On, j.With, j.Side, j.Runs = b.Find("top"), b.Find("rail"), piece.ToDown, piece.Right
	}))
	// On the rail's front, as the rail stands behind the middle of the top: 35 of
	// block, 10 of tongue 9 thick, 11 below the top; the slot 2 deeper, 5 longer each way.
	for i, want := range [][6]float64{{144, 174, 65, 100, 360, 380}, {144, 174, 100, 110, 360, 369}} {
		if !near(extent(out.Bodies[i]), want) {
			t.Errorf("%s: %v, want %v", out.Bodies[i].Word, extent(out.Bodies[i]), want)
		}
	}
	if s := out.Cuts[0].Slot; out.Cuts[0].Part != "rail" || mm(s.Depth) != 12 || mm(s.To)-mm(s.From) != 40 || mm(s.Far)-mm(s.Near) != 9 {
		t.Errorf("slot: %+v", *s)
	}
}

// TestFaults: one mistake each.
func TestFaults(t *testing.T) {
	for _, c := range []struct {
		key, name string
		change    func(b *trial.Builder, j *fitting.Job)
	}{
		{"fitting.runs-into-the-side", "knob 25", func(b *trial.Builder, j *fitting.Job) {
			j.On, j.Side, j.Runs = b.Find("door"), piece.ToFront, piece.Back
		}},
		{"fitting.unknown-kind", "knob 25", func(b *trial.Builder, j *fitting.Job) {
			j.Fitting.Kind = "bell"
			j.On, j.Side, j.Runs = b.Find("door"), piece.ToFront, piece.Up
		}},
		{"fitting.too-many", "knob 25", func(b *trial.Builder, j *fitting.Job) {
			j.On, j.Side, j.Runs, j.Count = b.Find("door"), piece.ToFront, piece.Up, 1<<30
		}},
		{"fitting.needs-another-part", "butt hinge 50", func(b *trial.Builder, j *fitting.Job) {
			j.On, j.Side, j.Toward, j.Runs = b.Find("side"), piece.ToFront, piece.ToLeft, piece.Up
		}},
		{"fitting.needs-another-part", "table button 45", func(b *trial.Builder, j *fitting.Job) {
			j.On, j.Side, j.Runs = b.Find("top"), piece.ToDown, piece.Right
		}},
		{"fitting.knuckle-way", "butt hinge 50", func(b *trial.Builder, j *fitting.Job) {
			j.On, j.With, j.Side, j.Runs = b.Find("side"), b.Find("door"), piece.ToFront, piece.Up
		}},
		{"fitting.gap", "butt hinge 50", func(b *trial.Builder, j *fitting.Job) {
			j.On, j.With, j.Side, j.Toward, j.Runs = b.Find("side"), b.Find("drawer"), piece.ToRight, piece.ToFront, piece.Up
		}},
		{"fitting.edges-not-flush", "butt hinge 50", func(b *trial.Builder, j *fitting.Job) {
			j.On, j.With, j.Side, j.Toward, j.Runs = b.Find("side"), b.Find("door"), piece.ToFront, piece.ToRight, piece.Up
		}},
		{"fitting.off-part", "butt hinge 50", func(b *trial.Builder, j *fitting.Job) {
			m := b.Fig("m", 100)
			j.On, j.With, j.Side, j.Toward, j.Runs, j.Margin = b.Find("side"), b.Find("door"), piece.ToFront, piece.ToLeft, piece.Up, &m
		}},
		{"fitting.comes-through", "turn-button 40", func(b *trial.Builder, j *fitting.Job) {
			j.Fitting.ScrewLength = unit.MM(26)
			j.On, j.Side, j.Runs = b.Find("door"), piece.ToFront, piece.Up
		}},
		{"fitting.hole-off-part", "knob 25", func(b *trial.Builder, j *fitting.Job) {
			m := b.Fig("m", 10)
			j.On, j.Side, j.Runs, j.Margin = b.Find("door"), piece.ToFront, piece.Up, &m
		}},
		{"fitting.slide-space", "ball-bearing slide 300", func(b *trial.Builder, j *fitting.Job) {
			j.On, j.With, j.Side, j.Runs = b.Find("drawer"), b.Find("side"), piece.ToRight, piece.Back
		}},
		{"fitting.not-beside", "magnetic catch 45", func(b *trial.Builder, j *fitting.Job) {
			j.On, j.With, j.Side, j.Runs = b.Find("side"), b.Find("rail"), piece.ToRight, piece.Up
		}},
		{"fitting.tilted", "knob 25", func(b *trial.Builder, j *fitting.Job) {
			b.Find("door").Tilt = &piece.Tilt{Degrees: 3}
			j.On, j.Side, j.Runs = b.Find("door"), piece.ToFront, piece.Up
		}},
	} {
		b := cupboard()
		_, fault := fitting.Lay(job(t, b, c.name, func(j *fitting.Job) { c.change(b, j) }))
		if fault == nil || fault.Text.Key != c.key {
			t.Errorf("%s: %+v", c.key, fault)
		}
	}
}
