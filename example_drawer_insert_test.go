package scantling_test

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"scantling"
	"scantling/internal/address"
	"scantling/internal/diag"
	"scantling/internal/output/tape"
	"scantling/internal/page"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
	"scantling/internal/words"
)

// TestDrawerInsert: the smallest of what was measured counts.
//
//	444.5 - 2.5 = 442; 477 - 2 = 475; walls 62 - 4 = 58
//	442 - 2 × 8 - 3 × 8 = 402; needs 70 + 75 + 85 + 130 = 360; 42 / 4 = 10.5 each: 80.5 85.5 95.5 140.5
//	8 + 270 + 8 + 181 + 8 = 475: the teaspoons of 140 have 181
//	housings from the outside left 8 + 80.5 = 88.5, 88.5 + 8 + 85.5 = 182, 182 + 8 + 95.5 = 285.5;
//	the last from the right: 442 - 285.5 - 8 = 148.5
//	on the cross wall 8 - 2.7 = 5.3 less: 83.2, 176.7, 280.2, from the right 143.2
//	cross wall 442 - 16 + 2 × 2.7 = 431.4; dividers 270 + 2 × 2.7 = 275.4
//	sides: the cross wall's housing is 475 - 278 - 8 = 189 from the back
func TestDrawerInsert(t *testing.T) {
	r := planExample(t, "drawer-insert", nil)
	want(t, "side", sizesOf(t, r, "insert.side.left"), "475 58 8")
	want(t, "front", sizesOf(t, r, "insert.end[1]"), "442 58 8")
	want(t, "cross wall", sizesOf(t, r, "insert.cross"), "431.4 58 8")
	want(t, "divider", sizesOf(t, r, "insert.divider[2]"), "275.4 58 8")
	all := r.Plan.Overall()
	want(t, "in all", mm(all[:]...), "442 475 62")
	want(t, "fence to the cutter's edge", settingsOf(r, "straight 8", "fence to cutter edge"), "83.2 88.5 143.2 148.5 176.7 182 189")
	for _, s := range r.Plan.Setups {
		if s.Cutter == "straight 8" {
			want(t, "height", mm(s.Settings[0].Figure.Nm), "2.7")
		}
		if s.Cutter == "straight 6.35" {
			t.Error("the cutter of 6.35 is narrower than the wall, one of 8 is there")
		}
	}
}

// pathsOf lists the paths of every housing that a cutter takes, where the fence is moved
// between two, and how far apart they are.
func pathsOf(r *scantling.Result, cutter string) (housings int, apart string) {
	var out []unit.Length
	for _, s := range r.Plan.Setups {
		for _, p := range s.Placements {
			if s.Cutter != cutter || len(p.Settings) == 0 {
				continue
			}
			housings += len(p.Cuts)
			if f := p.Settings[0].Passes; len(f) == 2 && !slices.Contains(out, f[1].Nm-f[0].Nm) {
				out = append(out, f[1].Nm-f[0].Nm)
			}
		}
	}
	return housings, mm(out...)
}

// TestDrawerInsertMeasuredWalls: walls that came out at 7.8 want housings of 7.8, which the
// cutter of 8 cannot cut and that of 6.35 cuts in two paths, 7.8 - 6.35 = 1.45 apart. So it is
// where 7.8 is planned, and where 8 was planned and the walls read 7.8 when they were planed.
//
//	planned: 444.5 - 2.5 - 5 × 7.8 - 360 = 43, / 4 = 10.75 each: 80.75 85.75 95.75 140.75
//	housings from the outside left 7.8 + 80.75 = 88.55
//	on the cross wall 7.8 - 2.7 = 5.1 less, no longer 5.3: that spacer follows the wall
func TestDrawerInsertMeasuredWalls(t *testing.T) {
	planned := planExample(t, "drawer-insert", nil, "  thickness = 8\n", "  thickness = 7.8\n")
	w := exampleWorld(t, "drawer-insert")
	const file = "drawer-insert.piece.hcl"
	for _, of := range []string{"insert.divider[1]", "insert.divider[2]", "insert.divider[3]", "insert.cross"} {
		if _, err := scantling.Record(t.Context(), w, file, scantling.Note{Of: of, What: "thickness", Value: "7.8"}); err != nil {
			t.Fatal(of, err)
		}
	}
	read, err := scantling.Plan(t.Context(), w, file, scantling.Options{})
	if err != nil {
		t.Fatal(err)
	}
	for name, r := range map[string]*scantling.Result{"planned": planned, "read": read} {
		housings, apart := pathsOf(r, "straight 6.35")
		if want(t, name+": paths", apart, "1.45"); housings != 7 {
			t.Errorf("%s: %d cards of housings with the cutter of 6.35, 3 of each end, 3 of the cross wall and 1 of the sides", name, housings)
		}
		if n, _ := pathsOf(r, "straight 8"); n != 0 {
			t.Errorf("%s: %d housings for walls of 7.8 with a cutter of 8", name, n)
		}
	}
	first := func(of address.Address) unit.Length {
		for _, s := range planned.Plan.Setups {
			for _, p := range s.Placements {
				if slices.Contains(p.Cuts, of) && len(p.Settings) > 0 && len(p.Settings[0].Passes) > 0 {
					return p.Settings[0].Passes[0].Nm
				}
			}
		}
		return 0
	}
	end, cross := first("insert.joint.divider[1].housing"), first("insert.joint.divider[2].housing")
	want(t, "in the end, on the cross wall, the spacer", mm(end, cross, end-cross), "88.55 83.45 5.1")
}

// TestDrawerInsertBlanks: a divider of 275.4 is under the 300 of the jointer and the 305 of
// the thicknesser, so three are planed in one length of 3 × 275.4 + 2 × 3 and what the
// allowance takes, and docked later.
func TestDrawerInsertBlanks(t *testing.T) {
	r := planExample(t, "drawer-insert", nil)
	found := false
	for _, w := range r.Plan.Workpieces {
		if w.Kind == plan.BlankPiece && w.Mark == "A4" {
			found = true
			if len(w.Parts) != 3 || w.Length.Nm.Millimetres() < 3*275.4+2*3 {
				t.Errorf("%d dividers on one blank of %s", len(w.Parts), mm(w.Length.Nm))
			}
		}
	}
	if !found {
		t.Error("no blank of the dividers")
	}
}

// TestDrawerInsertUnknown: neither the diagonals nor the ply were measured. Both are asked
// for, and neither is an error: the frame can be drawn, not yet cut.
func TestDrawerInsertUnknown(t *testing.T) {
	r := planExample(t, "drawer-insert", nil)
	if got := codes(r); !slices.Contains(got, "sheet-not-measured") || !slices.Contains(got, "rule-broken") {
		t.Errorf("%v: diagonals and base were not measured", got)
	}
	for _, f := range r.Plan.Findings {
		if f.Status != plan.Pass && f.Severity == diag.Error {
			t.Errorf("%s is an error", f.Code)
		}
	}
	square := map[string]string{"diagonal_left": "652", "diagonal_right": "651"}
	if got := codes(planExample(t, "drawer-insert", square)); slices.Contains(got, "rule-broken") {
		t.Error("with both diagonals the drawer is known to be square")
	}
	if got := codes(planExample(t, "drawer-insert", map[string]string{"diagonal_left": "652", "diagonal_right": "646"})); !slices.Contains(got, "rule-broken") {
		t.Error("6 out of square is more than the insert has room for")
	}
	if got := codes(planExample(t, "drawer-insert", map[string]string{"diagonal_left": "652"})); !slices.Contains(got, "rule-broken") {
		t.Error("one diagonal tells nothing")
	}
}

// TestDrawerInsertSmallest: whichever end of the drawer is the smaller counts, and a low
// back lowers the walls: 60 - 3 - 4 = 53 with the base under them.
func TestDrawerInsertSmallest(t *testing.T) {
	for _, x := range []struct {
		input, value string
		part         address.Address
		sizes        string
	}{
		{"width_back", "440", "insert.end[1]", "437.5 58 8"},
		{"width_front", "441", "insert.end[1]", "438.5 58 8"},
		{"depth_left", "470", "insert.side.left", "468 58 8"},
		{"back_high", "60", "insert.side.left", "475 53 8"},
	} {
		r := planExample(t, "drawer-insert", map[string]string{x.input: x.value})
		want(t, x.input, sizesOf(t, r, x.part), x.sizes)
	}
}

// staggered puts teaspoon dividers behind the cross wall, each behind a long one.
const staggered = `  part "short" {
    of     = material.wall
    repeat = 3
    grain  = "back"
    front  = part.cross.back
    back   = part.end[2].front
    left   = part.divider[nth].left
    bottom = material.base.thickness
    high   = sizes.walls
  }

  joint "short" {
    kind  = "housing"
    of    = part.short
    into  = [part.cross, part.end[2]]
    depth = 2.7
    meets = 6
  }

  part "base" {`

// fileNamed is the text of one output.
func fileNamed(t *testing.T, r *scantling.Result, name string) string {
	t.Helper()
	files, err := r.Files()
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		if f.Name == name {
			return string(f.Data)
		}
	}
	t.Fatalf("no %s", name)
	return ""
}

// TestDrawerInsertInches: what goes in is rounded down to the owner's 1/32, by arithmetic:
//
//	442 / 25.4 = 17.402 in = 556.85 / 32, down 556 / 32 = 17 3/8; up, 17 13/32 is 0.12 over
//	475 / 25.4 = 18.701 in = 598.43 / 32, down 598 / 32 = 18 11/16
//	58 = 73.07 / 32, down 2 9/32; 431.4 = 543.5 / 32, down 16 31/32; 275.4 = 346.96 / 32, down 10 13/16
//	the base 4 that is not measured = 5.04 / 32, 5/32
//
// The sheet stands by itself: the plan is worked in millimetres and no line has both. A
// rule of a 1/16 gives 17 3/8 and 18 11/16 too, one of 1/8 gives 17 3/8 and 18 5/8.
func TestDrawerInsertInches(t *testing.T) {
	r := planExample(t, "drawer-insert", nil)
	got := fileNamed(t, r, "parts-in.csv")
	for _, line := range []string{
		"A1,side,2,18 11/16,2 9/32,5/16,", "A2.1,end,1,17 3/8,2 9/32,5/16,", "A3,cross,1,16 31/32,2 9/32,5/16,",
		"A4,divider,3,10 13/16,2 9/32,5/16,", "A5,base,1,17 3/8,18 11/16,5/32,",
		"17.402 × 2.283 × 0.315", "16.984 × 2.283 × 0.315",
	} {
		if !strings.Contains(got, line) {
			t.Errorf("no %q in\n%s", line, got)
		}
	}
	if strings.Contains(got, "17 13/32") {
		t.Errorf("17 13/32 does not go in:\n%s", got)
	}
	if metric := fileNamed(t, r, "parts.csv"); strings.Contains(metric, "/") || !strings.Contains(metric, "A2.1,end,1,442,58,8,") {
		t.Errorf("the list in millimetres has inches in it:\n%s", metric)
	}
	for denominator, want := range map[int]string{16: "17 3/8 × 18 11/16", 8: "17 3/8 × 18 5/8"} {
		show := r.Plan.Show(unit.Inches)
		show.Denominator = denominator
		show.Rounding = unit.Down
		if got := show.Format(unit.MM(442)) + " × " + show.Format(unit.MM(475)); got != want {
			t.Errorf("to 1/%d: %s, want %s", denominator, got, want)
		}
	}
	// The row across closes as it is printed, with the walls as the list has them.
	for _, row := range r.Plan.Rows {
		if row.Axis != piece.Right {
			continue
		}
		shown, total, takes := tape.Of(r.Plan, unit.Inches).Row(row)
		inches := r.Plan.Show(unit.Inches)
		text := ""
		for _, l := range shown {
			text += inches.Format(l) + " "
		}
		want(t, "across in inches", text+"= "+inches.Format(total), "5/16 3 5/32 5/16 3 3/8 5/16 3 3/4 5/16 5 17/32 5/16 = 17 3/8")
		if takes >= 0 {
			t.Errorf("term %d takes the difference: the bays can share it", takes)
		}
	}
}

// TestDrawerInsertNoMixedLine: in the booklet's pages no text has millimetres with inches in
// brackets behind them, or the other way.
func TestDrawerInsertNoMixedLine(t *testing.T) {
	r := planExample(t, "drawer-insert", nil)
	doc, _ := r.Pages(page.A4, words.English)
	mixed, second := regexp.MustCompile(`mm \(.*\bin\)|\d \([0-9 ⅛-⅞¼-¾⁰-₉⁄]+\)`), false
	for _, p := range doc.Pages {
		var line strings.Builder
		for _, it := range p.Items {
			if x, ok := it.Shape.(page.Text); ok {
				line.WriteString(x.String + "\n")
			}
		}
		for text := range strings.SplitSeq(line.String(), "\n") {
			if mixed.MatchString(text) {
				t.Errorf("a line has both: %q", text)
			}
			second = second || strings.Contains(text, "17⅜") || strings.Contains(text, "17 3/8")
		}
	}
	if !second {
		t.Error("the booklet has no sheet in inches")
	}
}

// rulesBroken lists the designer's own rules that are told as broken, apart from that of the
// diagonals, which nobody has given.
func rulesBroken(r *scantling.Result) string {
	var out []string
	for _, f := range r.Plan.Findings {
		if f.Code == "rule-broken" && f.Status == plan.Fail && !strings.Contains(string(f.Address), "squareness") {
			out = append(out, string(f.Address))
		}
	}
	return strings.Join(out, " ")
}

// TestDrawerInsertRules: a width taken at the front is told, since 447 goes into no back of
// 444.5; and wishes that the drawer does not hold are told with both figures.
//
//	8 + 270 + 8 + 150 + 8 + 2 = 446 from front to back
//	a back of 36: 36 - 3 - 4 = 29 of wall, 1 less than 30
func TestDrawerInsertRules(t *testing.T) {
	for _, x := range []struct {
		name, old, new string
		inputs         map[string]string
		told           string
	}{
		{name: "as it is"},
		{name: "the front's width", old: "min(input.width_front, input.width_back)\n  front  = 0\n", new: "input.width_front\n  front  = 0\n", told: "require.the-smallest-reading"},
		{name: "the left's depth", old: "min(input.depth_left, input.depth_right)\n  bottom", new: "input.depth_left\n  bottom", told: "require.the-smallest-reading"},
		{name: "446 deep", inputs: map[string]string{"depth_left": "446"}},
		{name: "445 deep", inputs: map[string]string{"depth_left": "445"}, told: "require.depth"},
		{name: "a back of 37", inputs: map[string]string{"back_high": "37"}},
		{name: "a back of 36", inputs: map[string]string{"back_high": "36"}, told: "require.walls"},
		{name: "no room at a server's end", old: "long    = 270 ", new: "long    = 265 ", told: "require.room-for-fingers"},
	} {
		var changes []string
		if x.old != "" {
			changes = []string{x.old, x.new}
		}
		want(t, x.name, rulesBroken(planExample(t, "drawer-insert", x.inputs, changes...)), x.told)
	}
	steps := planExample(t, "drawer-insert", nil).Plan.Steps
	if i := slices.IndexFunc(steps, func(s plan.Step) bool { return strings.Contains(s.Author, "10 longer than the longest") }); i < 0 {
		t.Error("no step says what room there is for a finger")
	}
}

func TestDrawerInsertTraps(t *testing.T) {
	spring(t, "drawer-insert", []trap{
		// 8 - 2 × 2.7 = 2.6 of wood between.
		{name: "dividers back to back at the cross wall", old: `  part "base" {`, new: staggered, code: "wood-between-too-thin"},
	})
}

// TestDrawerInsertDividersAreRead: dividers are cut to the measured distance of the housing
// bottoms, planned 270 + 2 × 2.7 = 275.4: sides, ends and cross wall stand together dry,
// without base and dividers, before these are cut, and glue comes after.
func TestDrawerInsertDividersAreRead(t *testing.T) {
	r := planExample(t, "drawer-insert", nil)
	at := map[string]int{}
	for _, s := range r.Plan.Steps {
		at[s.ID] = s.N
		for _, id := range s.Operations {
			at[id] = s.N
		}
	}
	chain := []string{"A3: cut to length", "try: measure.dividers", "measure: measure.dividers", "A4: cut to length", "dry-fit: insert", "assemble: insert"}
	for i, id := range chain {
		if at[id] == 0 || i > 0 && at[chain[i-1]] >= at[id] {
			t.Errorf("%q is step %d, %q before it step %d", id, at[id], chain[max(0, i-1)], at[chain[max(0, i-1)]])
		}
	}
	if try := r.Plan.Steps[at["try: measure.dividers"]-1]; !slices.Equal(try.Marks, []string{"A1", "A2.1", "A2.2", "A3"}) {
		t.Errorf("together dry: %v", try.Marks)
	}
}

// TestDrawerInsertDividersFollow types in what was read between the housings, all three
// dividers at 275.1 where 275.4 is planned: the list, the blank (3 × 275.1 + 2 × 3 of kerf,
// 0.9 less than planned), the diagrams' piece, the stop of the card and the part's solid
// have 275.1, the form keeps what was planned, and sides, ends and cross wall stay.
func TestDrawerInsertDividersFollow(t *testing.T) {
	before := planExample(t, "drawer-insert", nil)
	read := insertRead(t, []string{"275.1", "275.1", "275.1"}, nil)
	if got := read.Evaluated.Diagnostics; len(got) > 0 {
		t.Errorf("told: %v", got)
	}
	if got := read.Plan.Unsound(); len(got) > 0 {
		t.Error(got)
	}
	want(t, "divider", sizesOf(t, read, "insert.divider[2]"), "275.1 58 8")
	for _, of := range []address.Address{"insert.side.left", "insert.end[1]", "insert.cross"} {
		want(t, string(of), sizesOf(t, read, of), sizesOf(t, before, of))
	}
	if got := fileNamed(t, read, "parts.csv"); !strings.Contains(got, "A4,divider,3,275.1,58,8,") || strings.Contains(got, "275.4") {
		t.Errorf("the list:\n%s", got)
	}
	blank := func(r *scantling.Result) unit.Length {
		i := slices.IndexFunc(r.Plan.Workpieces, func(w plan.Workpiece) bool { return w.Kind == plan.BlankPiece && w.Mark == "A4" })
		return r.Plan.Workpieces[i].Length.Nm
	}
	want(t, "the blank is shorter", mm(blank(before)-blank(read)), "0.9")
	if a, b := cutsOf(read, "insert.divider[2]"), cutsOf(before, "insert.divider[2]"); a != b {
		t.Errorf("%d cuts of the divider, %d before", a, b)
	}
	want(t, "stop, planned", stopsOf(before, "A4"), "275.4")
	want(t, "stop, read", stopsOf(read, "A4"), "275.1")
	want(t, "fences of the housings", settingsOf(read, "straight 8", "fence to cutter edge"), settingsOf(before, "straight 8", "fence to cutter edge"))
	if got := codes(read); slices.Contains(got, "parts-collide") || slices.Contains(got, "collision-unknown") {
		t.Error(got)
	}
	for _, m := range read.Plan.Measures {
		for _, x := range m.Readings {
			if m.Address == "measure.dividers" && (x.Found == nil || mm(x.Found.Nm, x.Planned.Nm) != "275.1 275.4") {
				t.Errorf("the form has %v found, %s planned", x.Found, mm(x.Planned.Nm))
			}
		}
	}
}

// insertRead plans the insert with readings of its dividers, "" for none, after those that
// are listed were cut as planned.
func insertRead(t *testing.T, lengths, cut []string) *scantling.Result {
	t.Helper()
	w := exampleWorld(t, "drawer-insert")
	const file = "drawer-insert.piece.hcl"
	var notes []scantling.Note
	for _, of := range cut {
		notes = append(notes, scantling.Note{Of: of, Cut: true})
	}
	for i, l := range lengths {
		if l != "" {
			notes = append(notes, scantling.Note{Of: fmt.Sprintf("insert.divider[%d]", i+1), What: "length", Value: l})
		}
	}
	for _, n := range notes {
		if _, err := scantling.Record(t.Context(), w, file, n); err != nil {
			t.Fatal(err)
		}
	}
	r, err := scantling.Plan(t.Context(), w, file, scantling.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func cutsOf(r *scantling.Result, of address.Address) (n int) {
	for _, c := range r.Plan.Piece.Cuts {
		if c.Part == of {
			n++
		}
	}
	return n
}

// stopsOf lists the settings of the card at which a mark is cut to length.
func stopsOf(r *scantling.Result, mark string) string {
	var out []unit.Length
	for _, s := range r.Plan.Setups {
		for _, p := range s.Placements {
			if p.Mark == mark && slices.Contains(s.Operations, mark+": cut to length") {
				for _, x := range p.Settings {
					out = append(out, x.Figure.Nm)
				}
				for _, x := range s.Settings {
					out = append(out, x.Figure.Nm)
				}
			}
		}
	}
	return mm(out...)
}

// TestDrawerInsertReadOneByOne: three readings that differ make three rows, each as long as
// its own; one above what is planned is in nobody's way; one that is 10 off is a slip of the
// pen, and told.
func TestDrawerInsertReadOneByOne(t *testing.T) {
	r := insertRead(t, []string{"275.1", "275.8", ""}, nil)
	if got := r.Plan.Unsound(); len(got) > 0 {
		t.Error(got)
	}
	for of, l := range map[address.Address]string{"insert.divider[1]": "275.1 58 8", "insert.divider[2]": "275.8 58 8", "insert.divider[3]": "275.4 58 8"} {
		want(t, string(of), sizesOf(t, r, of), l)
	}
	if got := codes(r); slices.Contains(got, "parts-collide") || slices.Contains(got, "reading-far-from-plan") {
		t.Error(got)
	}
	if got := codes(insertRead(t, []string{"285.4", "", ""}, nil)); !slices.Contains(got, "reading-far-from-plan") {
		t.Errorf("a reading 10 off is believed: %v", got)
	}
}

// TestDrawerInsertCutBefore: a divider that was cut to 275.4 as planned, where 275.1 is read
// then, is 0.3 too long: trimmed; where 276 is read it is 0.6 too short. The rest is planned on.
func TestDrawerInsertCutBefore(t *testing.T) {
	for read, off := range map[string]string{"275.1": "275.4 275.1 275.4 0.3 beside.too-large", "276": "275.4 276 275.4 0.6 beside.too-small"} {
		r := insertRead(t, []string{read, "", ""}, []string{"insert.divider[1]"})
		var told []string
		for _, d := range r.Plan.Diagnostics {
			if d.Code == "cut-beside-reading" {
				var l []unit.Length
				for _, name := range []string{"got", "read", "planned", "off"} {
					a, _ := d.Text.Arg(name)
					l = append(l, a.Nm)
				}
				way, _ := d.Text.Arg("way")
				told = append(told, mm(l...)+" "+way.S)
			}
		}
		want(t, read, strings.Join(told, ", "), off)
		want(t, "as cut", sizesOf(t, r, "insert.divider[1]"), "275.4 58 8")
		if len(r.Plan.Setups) == 0 || len(r.Plan.Steps) == 0 {
			t.Error("no plan")
		}
	}
}
