package scantling_test

import (
	"math"
	"slices"
	"testing"

	"scantling"
	"scantling/internal/diag"
	"scantling/internal/message"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// TestGougeTray: seven octagonal handles of 25 across corners, a cutter of 25.4, 8
// deep.
//
//	mouth 2 √(12.7² - 4.7²) = 23.6; pitch 25 + 13 for the finger = 38; land 38 - 23.6 = 14.4
//	width 6 × 38 + 2 × 25 = 278; centres 25 63 101 139 and the same from the other edge
//	flat 262 + 8 = 270, so the cutter travels 270; mouth 270 + 23.6 = 293.6; walls (320 - 293.6) / 2 = 13.2
//	stops (320 + 270) / 2 = 295 from the cutter's centre, 12.7 less from its edge
//	8 = 3 + 3 + 2
//	strips meet in the middle of lands: 82 | 114 | 82
func TestGougeTray(t *testing.T) {
	r := planExample(t, "gouge-tray", nil)
	want(t, "tray", sizesOf(t, r, "tray"), "320 278 20")
	const cutter = "core box 25.4"
	want(t, "guide to the cutter's edge", settingsOf(r, cutter, "guide to cutter edge"), "12.3 50.3 88.3 126.3")
	want(t, "guide to its centre", settingsOf(r, cutter, "guide to cutter centre"), "25 63 101 139")
	// Each figure twice: the walls of the round ends differ by two thousandths.
	want(t, "its centre at the right stop", settingsOf(r, cutter, "left end to cutter at right stop"), "295 295")
	want(t, "its centre at the left stop", settingsOf(r, cutter, "right end to cutter at left stop"), "295 295")
	want(t, "the stops' faces, with half a base of 75", settingsOf(r, cutter, "left end to right stop"), "370 370")
	var passes []unit.Length
	for _, s := range r.Plan.Setups {
		if s.Cutter != cutter {
			continue
		}
		// 16 000 to begin with, of the 22 000 that the maker of the cutter allows.
		if s.Speed <= 0 || s.Speed > 16000 {
			t.Errorf("the cutter turns at %d", s.Speed)
		}
		if s.Machine != "plunge router" {
			t.Errorf("channels that are closed at both ends at the %s", s.Machine)
		}
		// Three settings from both edges, the middle one once: 3 × 2 + 1 = 7 channels.
		cuts, turned := 0, 0
		for _, p := range s.Placements {
			if cuts += len(p.Cuts); p.Turn {
				turned++
			}
		}
		if n := len(s.Placements); n != 4 || turned != 3 || cuts != 7 {
			t.Errorf("%d settings, %d of them from both edges, for %d channels", n, turned, cuts)
		}
		for _, h := range s.Settings[0].Passes {
			passes = append(passes, h.Nm)
		}
	}
	want(t, "heights of the passes", mm(passes...), "3 6 8")
	want(t, "joints of the panel, finished", jointsOf(r), "82 196")
	for _, h := range r.Plan.Held {
		want(t, "sunk", mm(h.Sinks.Nm), "8")
		want(t, "proud with a corner down", mm(h.Proud.Nm), "17")
		// On a flat the handle's apothem is 12.5 cos 22.5° = 11.549 and it sinks to where its
		// flat meets the round: 25 - 8 - what a flat is lower by.
		if p := h.OnFlat.Nm; p < unit.MM(16) || p > unit.MM(17) {
			t.Errorf("on a flat it stands %s proud, by hand 16", mm(p))
		}
	}
}

// TestGougeTrayStops: the stops are worked out for the tray as it is when they are set. On
// the plan that is the tray cut to its length; and whatever is cut on a longer blank has
// no stop on the end that is trimmed later.
func TestGougeTrayStops(t *testing.T) {
	r := planExample(t, "gouge-tray", nil)
	length := map[string]unit.Length{}
	for _, row := range r.Plan.Parts {
		length[row.Mark] = row.Length.Nm
	}
	set := 0
	for _, op := range r.Plan.Operations {
		i := slices.IndexFunc(r.Plan.Setups, func(s plan.Setup) bool { return s.ID == op.Setup })
		if i < 0 || op.Kind != plan.MakeCut {
			continue
		}
		for _, p := range r.Plan.Setups[i].Placements {
			for _, s := range p.Sums {
				for _, term := range s.Terms {
					if term.Word != "length of the work" || p.Mark != op.Mark {
						continue
					}
					if set++; term.Figure.Nm != op.Before[0].Nm || op.Before[0].Nm != length[op.Mark] {
						t.Errorf("%s: stops for %s, the work is %s long and the part %s", op.ID, mm(term.Figure.Nm), mm(op.Before[0].Nm), mm(length[op.Mark]))
					}
				}
			}
		}
	}
	if set != 4 {
		t.Errorf("%d sums of stops: four settings", set)
	}
	at := map[plan.OperationKind]int{}
	for i, id := range r.Plan.Setups {
		for _, op := range r.Plan.Operations {
			if op.Setup == id.ID {
				at[op.Kind] = i
			}
		}
	}
	if at[plan.CutToLength] > at[plan.MakeCut] {
		t.Error("the channels are cut before the tray is cut to its length")
	}
}

// jointsOf lists where the strips of glued-up panels meet, in finished sizes.
func jointsOf(r *scantling.Result) string {
	var out []unit.Length
	for _, w := range r.Plan.Workpieces {
		for _, j := range w.Joints {
			out = append(out, j.Nm)
		}
	}
	return mm(out...)
}

// TestGougeTrayStrips: three lengths come out of 1100 of a board that is 150 wide, the
// outer two alike, and what is ripped off them is left as test pieces:
// 150 - 2 - 82 - 1 - 3 = 62 by hand, less what the allowances take.
func TestGougeTrayStrips(t *testing.T) {
	r := planExample(t, "gouge-tray", nil)
	var widths, longs []unit.Length
	for _, w := range r.Plan.Workpieces {
		if w.Kind == plan.StripPiece {
			widths, longs = append(widths, w.Width.Nm), append(longs, w.Length.Nm)
		}
	}
	if len(widths) != 3 || widths[0] != widths[2] || widths[1] < unit.MM(114) || widths[0] < unit.MM(82) {
		t.Fatalf("strips of %s", mm(widths...))
	}
	sum := unit.MM(2 * 3)
	for _, l := range longs {
		if sum += l; l < unit.MM(320+2) {
			t.Errorf("a strip of %s leaves nothing to trim off 320", mm(l))
		}
	}
	if sum > unit.MM(1100) {
		t.Errorf("strips and kerfs come to %s of 1100", mm(sum))
	}
	var kept []unit.Length
	for _, d := range r.Plan.Diagrams {
		for _, l := range d.Left {
			if l.Keep && l.Rect.Length.Nm >= unit.MM(320) {
				kept = append(kept, l.Rect.Width.Nm)
			}
		}
	}
	if len(kept) != 2 || slices.Min(kept) < unit.MM(50) {
		t.Errorf("left as test pieces: %s wide", mm(kept...))
	}
}

// TestGougeTrayFelt: with 1 of felt the channel is a round of 11.7 whose bottom lies 7
// deep, its mouth 2 √(11.7² - 4.7²) = 21.43 wide.
//
// A round rod of 25 is thicker than 23.4 and hangs on the edges of the felt. Those are
// 4.7 over the middle of the round, 11.7 from it and 10.714 to either side; the rod's
// middle is √(12.5² - 10.714²) = 6.438 over them: 12.5 - 6.438 = 6.06 sunk, which is
// often given as 6.1. That is the round rod's figure alone. An octagon of 25 across
// corners is narrower than its circle between the corners: corner down it goes to
// 6.63, on a flat to 5.93. So the 6.1 does not hold for the handles of this tray.
//
// The cutter that takes it inside the felt: 25 + 2 × 1 + 0.4 = 27.4.
func TestGougeTrayFelt(t *testing.T) {
	const old, lined = "play   = 8\n", "play   = 8\n  lining = 1\n"
	r := planExample(t, "gouge-tray", nil, old, lined)
	for _, h := range r.Plan.Held {
		near(t, "corner down, sunk", h.Sinks.Nm, 6.63, 0.02)
		near(t, "on a flat, proud", h.OnFlat.Nm, octagon*25-5.93, 0.02)
	}
	told := 0
	for _, f := range r.Plan.Findings {
		if f.Code == "lining-lifts" && f.Status == plan.Fail {
			told++
			want(t, "within the felt, 25.4 - 2", mm(f.Limit.Nm), "23.4")
			want(t, "the cutter that it asks for", argument(t, f.Text, "cutter"), "27.4")
		}
	}
	if told == 0 {
		t.Error("nobody says which cutter the felt asks for")
	}
	r = planExample(t, "gouge-tray", nil, old, lined, "  sides  = 8\n", "")
	for _, h := range r.Plan.Held {
		near(t, "a round rod, sunk", h.Sinks.Nm, 12.5-math.Sqrt(12.5*12.5-(11.7*11.7-4.7*4.7)), 0.01)
	}
}

// argument is a length in what a finding says.
func argument(t *testing.T, m message.Message, name string) string {
	t.Helper()
	a, ok := m.Arg(name)
	if !ok {
		t.Fatalf("%s says no %s", m.Key, name)
	}
	return mm(a.Nm)
}

// TestGougeTrayThicknesser: the panel of 278, and what the allowances leave on its edges, goes
// through a thicknesser of 300; one of 254 planes it in two widths; and where nobody has said how
// wide it planes, that is asked, and nothing else is.
func TestGougeTrayThicknesser(t *testing.T) {
	const stated = "  most_width      = 300\n"
	for wide, want := range map[string]diag.Code{"": "machine-width-unknown", "  most_width = 254\n": "", stated: ""} {
		got := codes(planBoth(t, "gouge-tray", nil, []string{stated, wide}))
		if want == "" && len(got) > 0 || want != "" && (len(got) != 1 || got[0] != want) {
			t.Errorf("%q: %v, want %s", wide, got, want)
		}
	}
}

// TestGougeTrayEdges: the step in which the gouges are laid in says that their edges are
// sheathed or point away from the hand, and does not where the contents have none.
func TestGougeTrayEdges(t *testing.T) {
	for cautions, changes := range [][]string{{"  sharp  = true\n", ""}, nil} {
		steps := planExample(t, "gouge-tray", nil, changes...).Plan.Steps
		last := steps[len(steps)-1]
		if last.ID != "hand over" || len(last.Cautions) != cautions || cautions == 1 && last.Cautions[0].Key != "caution.edges" {
			t.Errorf("%s: %v, the gouges' edges: %d", last.ID, last.Cautions, cautions)
		}
	}
}

// octagon is what an octagon measures over flats, as a part of what it does over
// corners: cos 22.5°.
const octagon = 0.9238795325112867

func near(t *testing.T, what string, got unit.Length, byHand, within float64) {
	t.Helper()
	if math.Abs(got.Millimetres()-byHand) > within {
		t.Errorf("%s: %s, by hand %.2f", what, mm(got), byHand)
	}
}

const planted = `part "strip" {
  of     = material.tray
  repeat = 2
  grain  = "right"
  left   = 0
  right  = part.tray.right
  front  = nth == 1 ? 0 - 20 : 320
  bottom = 0
  high   = 20
}

joint "strip" {
  kind  = "butt"
  of    = part.strip
  into  = part.tray
  glue  = "pva"
  meets = 2
}

cut "soft" {`

func TestGougeTrayTraps(t *testing.T) {
	spring(t, "gouge-tray", []trap{
		// 278 × 0.00248 × 5 = 3.4 of movement against strips that do not move.
		{name: "end strips planted across it", old: `cut "soft" {`, new: planted, code: "glued-across-the-grain"},
		{name: "too shallow a board", old: "thickness = 20", new: "thickness = 14", code: "floor-too-thin"},
		{name: "ends that the round needs", old: "flat   = contents.gouges.place", new: "to     = 290", code: "longer-than-channel"},
		{name: "the felt forgotten", old: "play   = 8\n", new: "play   = 8\n  lining = 1\n", code: "lining-lifts"},
		{name: "an inch cutter taken for 25", old: `cutter = "core box 25.4"`, new: `cutter = "core box 25"`, code: "no-such-cutter"},
		{name: "no wall left at the ends", old: "deep   = 320", new: "deep   = 300", code: "rule-broken"},
	})
}
