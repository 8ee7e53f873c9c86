package scantling_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"scantling"
	"scantling/internal/address"
	"scantling/internal/diag"
	"scantling/internal/plan"
	"scantling/internal/unit"
	"scantling/internal/world"
)

// trap is a small change of an example's text that must raise a finding or a
// diagnostic of that code.
type trap struct {
	name     string
	old, new string
	inputs   map[string]string
	code     diag.Code
}

// planExample plans an example, with texts of its document changed.
func planExample(t testing.TB, name string, inputs map[string]string, changes ...string) *scantling.Result {
	t.Helper()
	w := exampleWorld(t, name)
	file := name + ".piece.hcl"
	if len(changes) > 0 {
		data, err := w.Read(file)
		if err != nil {
			t.Fatal(err)
		}
		for i := 0; i+1 < len(changes); i += 2 {
			if strings.Count(string(data), changes[i]) != 1 {
				t.Fatalf("%q stands %d times in %s", changes[i], strings.Count(string(data), changes[i]), file)
			}
			data = []byte(strings.Replace(string(data), changes[i], changes[i+1], 1))
		}
		shop, err := w.Read("shop.hcl")
		if err != nil {
			t.Fatal(err)
		}
		m, err := world.NewMemory(map[string][]byte{file: data, "shop.hcl": shop}, world.Date{}, 0)
		if err != nil {
			t.Fatal(err)
		}
		w = m
	}
	r, err := scantling.Plan(t.Context(), w, file, scantling.Options{Inputs: inputs})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// spring runs the traps of an example: each must raise its code, and the example
// itself must not.
func spring(t *testing.T, name string, traps []trap) {
	t.Helper()
	good := codes(planExample(t, name, nil))
	for _, tr := range traps {
		var changes []string
		if tr.old != "" {
			changes = []string{tr.old, tr.new}
		}
		if got := codes(planExample(t, name, tr.inputs, changes...)); !slices.Contains(got, tr.code) {
			t.Errorf("%s: %v, want %s", tr.name, got, tr.code)
		}
		if slices.Contains(good, tr.code) {
			t.Errorf("%s: %s is told without the mistake", tr.name, tr.code)
		}
	}
}

// codes lists what is told of a plan, passes apart.
func codes(r *scantling.Result) []diag.Code {
	var out []diag.Code
	for _, d := range r.Plan.Diagnostics {
		out = append(out, d.Code)
	}
	for _, f := range r.Plan.Findings {
		if f.Status != plan.Pass {
			out = append(out, f.Code)
		}
	}
	return out
}

// mm prints lengths in millimetres to the hundredth.
func mm(list ...unit.Length) string {
	var out []string
	for _, l := range list {
		out = append(out, strings.TrimRight(strings.TrimRight(fmt.Sprintf("%.2f", l.Millimetres()), "0"), "."))
	}
	return strings.Join(out, " ")
}

// sizesOf prints length, width and thickness of a part.
func sizesOf(t *testing.T, r *scantling.Result, a address.Address) string {
	p := partIn(t, r, a)
	return mm(p.Length.Nm, p.Width.Nm, p.Thickness.Nm)
}

// settingsOf lists the figures of a word over the placements of all cards with a
// cutter, in working order, without repeats.
func settingsOf(r *scantling.Result, cutter, word string) string {
	var out []unit.Length
	for _, s := range r.Plan.Setups {
		for _, p := range s.Placements {
			for _, x := range p.Settings {
				if s.Cutter == cutter && x.Word == word && !slices.Contains(out, x.Figure.Nm) {
					out = append(out, x.Figure.Nm)
				}
			}
		}
	}
	slices.Sort(out)
	return mm(out...)
}

func want(t *testing.T, what, got, want string) {
	t.Helper()
	if got != want {
		t.Errorf("%s: %s, by hand %s", what, got, want)
	}
}

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
	want(t, "fence to the cutter's edge", settingsOf(r, cutter, "fence to cutter edge"), "12.3 50.3 88.3 126.3")
	want(t, "fence to its centre", settingsOf(r, cutter, "fence to cutter centre"), "25 63 101 139")
	want(t, "stops from its centre", settingsOf(r, cutter, "stop left"), "295 295")
	want(t, "stops from its edge", settingsOf(r, cutter, "stop right to cutter edge"), "282.3 282.3")
	var passes []unit.Length
	for _, s := range r.Plan.Setups {
		if s.Cutter == cutter {
			for _, h := range s.Settings[0].Passes {
				passes = append(passes, h.Nm)
			}
		}
	}
	want(t, "heights of the passes", mm(passes...), "3 6 8")
	var strips, widths unit.Length
	for _, w := range r.Plan.Workpieces {
		if w.Kind == plan.StripPiece {
			strips, widths = strips+1, widths+w.Width.Nm
		}
	}
	want(t, "strips", fmt.Sprint(int64(strips)), "3")
	for _, h := range r.Plan.Held {
		want(t, "sunk", mm(h.Sinks.Nm), "8")
		want(t, "proud with a corner down", mm(h.Proud.Nm), "17")
		// On a flat the handle's apothem is 12.5 cos 22.5° = 11.549 and it sinks to where its
		// flat meets the round: 25 - 8 - what a flat is lower by.
		if p := h.OnFlat.Nm; p < unit.MM(16) || p > unit.MM(17) {
			t.Errorf("on a flat it stands %s proud, by hand 16", mm(p))
		}
	}
	spring(t, "gouge-tray", []trap{
		{name: "too shallow a board", old: "thickness = 20", new: "thickness = 14", code: "floor-too-thin"},
		{name: "ends that the round needs", old: "flat   = contents.gouges.place", new: "to     = 290", code: "longer-than-channel"},
		{name: "the felt forgotten", old: "play   = 8\n", new: "play   = 8\n  lining = 1\n", code: "lining-lifts"},
	})
}

// TestRecordRack: 390 records of 4 with 5 % to leaf through them are 1638, in four bays of
// (850 - 17.6) / 2 = 416.2.
//
//	high 3 × 17.6 + 2 × 330 = 712.8; shelf 850 + 2 × 6 = 862; upright 330 + 6 + 5 = 341
//	outside 850 + 2 × 17.6 = 885.2
func TestRecordRack(t *testing.T) {
	r := planExample(t, "record-rack", nil)
	want(t, "side", sizesOf(t, r, "side.left"), "712.8 330 17.6")
	want(t, "shelf", sizesOf(t, r, "shelf[2]"), "862 330 17.6")
	want(t, "upright", sizesOf(t, r, "upright[1]"), "341 330 17.6")
	want(t, "outside", mm(r.Plan.Overall()[0]), "885.2")
	if n := len(r.Plan.Diagrams); n != 1 || r.Plan.Diagrams[0].Count != 1 {
		t.Errorf("%d diagrams: one sheet is enough", n)
	}
	keep := unit.Length(0)
	for _, l := range r.Plan.Diagrams[0].Left {
		if l.Keep {
			keep = max(keep, min(l.Rect.Length.Nm, l.Rect.Width.Nm))
		}
	}
	if keep < unit.MM(540) { // 1220 - 2 × 5 - 2 × 333 = 544
		t.Errorf("an offcut of %s is kept, by hand 544", mm(keep))
	}
	spring(t, "record-rack", []trap{
		{name: "uprights meeting back to back", old: "  into  = part.shelf[2]\n  depth = 5", new: "  into  = part.shelf[2]\n  depth = 6", code: "wood-between-too-thin"},
	})
}

// TestDrawerInsert: the smallest of what was measured counts.
//
//	444.5 - 2.5 = 442; 477 - 2 = 475; walls 62 - 4 = 58
//	442 - 2 × 8 - 3 × 8 = 402; needs 70 + 75 + 85 + 130 = 360; 42 / 4 = 10.5 each: 80.5 85.5 95.5 140.5
//	housings from the outside left 8 + 80.5 = 88.5, 88.5 + 8 + 85.5 = 182; from the right 8 + 140.5 = 148.5
//	on the cross wall 8 - 2.7 = 5.3 less: 83.2, 176.7, 143.2
//	dividers 270 + 2 × 2.7 = 275.4
func TestDrawerInsert(t *testing.T) {
	r := planExample(t, "drawer-insert", nil)
	want(t, "side", sizesOf(t, r, "insert.side.left"), "475 58 8")
	want(t, "front", sizesOf(t, r, "insert.end[1]"), "442 58 8")
	want(t, "cross wall", sizesOf(t, r, "insert.cross"), "431.4 58 8")
	want(t, "divider", sizesOf(t, r, "insert.divider[2]"), "275.4 58 8")
	want(t, "fence to the cutter's edge", settingsOf(r, "straight 8", "fence to cutter edge"), "83.2 88.5 143.2 148.5 176.7 182 189")
	for _, w := range r.Plan.Workpieces {
		if w.Kind == plan.BlankPiece && w.Mark == "A4" && len(w.Parts) != 3 {
			t.Errorf("%d dividers on one blank: under 300 they are planed in one", len(w.Parts))
		}
	}
	if !slices.Contains(codes(r), "sheet-not-measured") {
		t.Error("the base's thickness is not known, and nothing says so")
	}
	if got := codes(planExample(t, "drawer-insert", map[string]string{"diagonal_left": "652", "diagonal_right": "651"})); slices.Contains(got, "rule-broken") {
		t.Error("with both diagonals the drawer is known to be square")
	}
	if got := sizesOf(t, planExample(t, "drawer-insert", map[string]string{"width_back": "440"}), "insert.end[1]"); got != "437.5 58 8" {
		t.Errorf("a back of 440 gives %s: the smaller one counts", got)
	}
}
