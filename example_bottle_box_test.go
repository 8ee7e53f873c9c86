package scantling_test

import (
	"testing"
)

// TestBottleBox: six by four cells of 25 + 2, dividers of 5 between.
//
//	6 × 27 + 5 × 5 = 187, 4 × 27 + 3 × 5 = 123, and 0.5 all round: 188 × 124 inside
//	outside 208 × 144; 2 felt + 58 + 1 = 61 high inside
//	5 wood + 5.6 bottom + 61 + 3 kerf + 5.6 top + 5 wood = 85.2: the walls as they are glued
//	5 + 5.6 + 40 of base wall inside = 50.6 the base; 85.2 - 50.6 - 3 = 31.6 the lid; shut 82.2
//	10 of wall less 1.5 for the knife: blade at 8.5
//	134 from hinges to the lid's inner edge: √(134² - 20²) = 132.5, a cap reaches 131
//	bottom 188 + 2 × 5 = 198 × 134; less 1 for the groove's play it is bought as 197 × 133
//	slots every 32; the first 27 + 2.5 = 29.5 from the divider's own end
//	27 + 5 - 3 of kerf = 29, 61, 93 set the three cuts that serve both ends; 85.2 is the walls' rip,
//	31.6 the lid off them
//	a bottle stands 58 - 38 = 20 out of its cell
func TestBottleBox(t *testing.T) {
	r := planExample(t, "bottle-box", nil)
	want(t, "side", sizesOf(t, r, "box.side.left"), "144 85.2 10")
	want(t, "end", sizesOf(t, r, "box.end[1]"), "208 85.2 10")
	want(t, "long divider", sizesOf(t, r, "grid.long[1]"), "187 38 5")
	want(t, "short divider", sizesOf(t, r, "grid.short[1]"), "123 38 5")
	if n := len(r.Plan.Stowed); n != 1 {
		t.Fatalf("%d lists of what it holds", n)
	}
	s := r.Plan.Stowed[0]
	want(t, "bottles need", mm(s.Needs[0].Nm, s.Needs[1].Nm, s.Needs[2].Nm), "188 124 61")
	want(t, "spare", mm(s.Spare[0].Nm, s.Spare[1].Nm, s.Spare[2].Nm), "0 0 0")
	if s.Count != 24 || s.Places != 24 {
		t.Errorf("%d bottles in %d cells", s.Count, s.Places)
	}
	if n := len(r.Plan.Piece.Sawn); n != 1 {
		t.Fatalf("%d lids are sawn off", n)
	}
	lid := r.Plan.Piece.Sawn[0]
	want(t, "base, kerf, lid, whole", mm(lid.Base.Nm, lid.Takes.Nm, lid.Lid.Nm, lid.Whole.Nm), "50.6 3 31.6 85.2")
	size := r.Plan.Overall()
	want(t, "shut", mm(size[0], size[1], size[2]), "208 144 82.2")
	for _, c := range r.Plan.Setups {
		if c.Title.Key == "setups.title.lid" {
			want(t, "blade at the lid", mm(c.Settings[0].Figure.Nm), "8.5")
			want(t, "sides at one setting, the long ones first", c.Placements[0].Mark+" "+c.Placements[1].Mark, "A2 A1")
		}
	}
	want(t, "slots of the dividers, from either end", settingsOf(r, "", "blade to fence"), "29 31.6 61 85.2 93")
	spring(t, "bottle-box", []trap{
		{name: "a box that is 2 too narrow for its grid", old: "  wide = contents.bottles.wide + 2 * sizes.t", new: "  wide = 206", code: "contents-do-not-fit"},
		{name: "dividers that hide the bottles", old: "divider_high = 38", new: "divider_high = 48", code: "too-little-to-grip"},
		// √(134² - 20²) = 132.5 passes a cap that reaches 131; √(132² - 20²) = 130.5 does not.
		{name: "a lid hinged 2 too far forward", old: "  above        = 1\n", new: "  above        = 1\n  lid          = { arm = 132, rim = 40, back = 10 }\n", code: "lid-strikes"},
		// √(134² - 30²) = 130.6: with a base 30 high inside, the caps stand 30 over it.
		{name: "a base so low that its lid strikes", old: "  rim  = 40", new: "  rim  = 30", code: "lid-strikes"},
		{name: "a box that forgets what the saw takes", old: " + cut.lid.takes", new: "", code: "contents-do-not-fit"},
		{name: "a divider glued in through the line", old: `  part "top" {`, new: "  part \"wall\" {\n    of     = material.case\n    grain  = \"back\"\n    left   = 100\n    front  = part.end[1].back\n    back   = part.end[2].front\n    bottom = part.bottom.top\n    high   = 50\n  }\n\n  part \"top\" {", code: "lid-held"},
		{name: "a saw of another kerf than reckoned with", old: "  clean = 0 ", new: "  kerf  = 2\n  clean = 0 ", code: "lid-by-hand"},
		{name: "dividers planed from wood", old: `asks = "birch plywood 5"`, new: "asks      = \"black walnut board\"\n  thickness = 5", code: "workpiece-too-thin"},
	})
}
