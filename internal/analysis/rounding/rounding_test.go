package rounding_test

import (
	"testing"

	"scantling/internal/address"
	"scantling/internal/analysis/check/checktest"
	"scantling/internal/analysis/rounding"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// rows gives every part a row of its own, in the order of the piece.
func rows(b *trial.Builder) []plan.PartRow {
	var out []plan.PartRow
	for i := range b.Piece.Parts {
		p := &b.Piece.Parts[i]
		out = append(out, plan.PartRow{Mark: string(p.Address), Members: []address.Address{p.Address}, Length: p.Length, Width: p.Width, Thickness: p.Thickness})
	}
	return out
}

// TestWhatSizesDo: the chest of two drawers, by hand. A divider stands in housings at
// both ends and its 14 in a slot cut to them; the drawer's front is as wide and as high
// as the drawer; its bottom stands in grooves all round and is a sheet, whose groove
// is cut to it; the sides of the case are held to nothing along their depth.
func TestWhatSizesDo(t *testing.T) {
	b := checktest.Chest()
	got := map[string][3]plan.Goes{}
	for _, r := range rounding.Rows(&b.Piece, rows(b)) {
		for n, g := range r.Goes {
			w := got[r.Mark]
			w[n] = g.What
			got[r.Mark] = w
			if (g.What == plan.Matches) != (g.By == "") {
				t.Errorf("%s: %q by %q", r.Mark, g.What, g.By)
			}
		}
	}
	const in, takes, same = plan.GoesIn, plan.Takes, plan.Matches
	for mark, want := range map[string][3]plan.Goes{
		"case.divider":     {in, same, in},
		"case.top":         {in, same, same}, // rebated into both sides
		"case.left":        {same, same, same},
		"case.panel":       {in, in, same},
		"drawer[1].front":  {in, in, same},
		"drawer[2].left":   {same, in, same}, // as high as the drawer
		"drawer[1].bottom": {in, in, same},
	} {
		if got[mark] != want {
			t.Errorf("%s: %q, want %q", mark, got[mark], want)
		}
	}
	// A part that holds an opening apart: as long as it is clear, beside it.
	b.Space("case.slot", 140, 2148, 0, 1000, 3000, 3400)
	b.Piece.Spaces[len(b.Piece.Spaces)-1].Bounds = [6]string{"a", "b", "", "", "c", "d"}
	b.Group("box", "case.slot")
	b.Part("case.post", trial.LeftSide, 100, 140, 0, 100, 3000, 3400)
	for _, r := range rounding.Rows(&b.Piece, rows(b)) {
		if r.Mark == "case.post" && (r.Goes[0].What != takes || r.Goes[0].By != "case.slot") {
			t.Errorf("a post beside an opening: %+v", r.Goes)
		}
	}
}

// TestRowGoesWithItsMembers: a row of several parts goes in where one of them does, and
// the rows given are not changed.
func TestRowGoesWithItsMembers(t *testing.T) {
	b := checktest.Chest()
	one := plan.PartRow{Mark: "A1", Members: []address.Address{"case.left", "case.divider"}}
	in := []plan.PartRow{one}
	if got := rounding.Rows(&b.Piece, in)[0].Goes[0].What; got != plan.GoesIn {
		t.Errorf("%q", got)
	}
	if in[0].Goes[0].What != plan.Matches {
		t.Error("the list given was changed")
	}
}

// TestWhatSettingsDo: a stop at a part's own length does what the length does, one at
// its blank nothing; the two paths of a housing take what goes in, the fence of a cut
// as wide as its cutter and its height nothing; a groove's depth takes. The title
// follows in inches only.
func TestWhatSettingsDo(t *testing.T) {
	p := &plan.Plan{Piece: &piece.Piece{Edition: "in", Cuts: []piece.Cut{
		{Address: "a.housing", Kind: piece.Housing, With: "b"}, {Address: "a.groove", Kind: piece.Groove, With: "b"}, {Address: "a.channel", Kind: piece.Channel},
	}}}
	size := func(nm unit.Length) plan.Figure { return plan.Figure{Nm: nm} }
	p.Parts = []plan.PartRow{{Mark: "A1", Length: size(100), Width: size(50), Thickness: size(9), Goes: [3]plan.Going{{What: plan.GoesIn}, {What: plan.Takes}, {}}}}
	set := func(word string, nm unit.Length, passes ...unit.Length) plan.Setting {
		s := plan.Setting{Word: word, Figure: size(nm)}
		for _, x := range passes {
			s.Passes = append(s.Passes, size(x))
		}
		return s
	}
	at := func(cut address.Address, s ...plan.Setting) plan.Placement {
		out := plan.Placement{Mark: "A1", Settings: s}
		if cut != "" {
			out.Cuts = []address.Address{cut}
		}
		return out
	}
	title := message.New("setups.title.saw", message.Length("height", 6))
	p.Setups = []plan.Setup{
		{Placements: []plan.Placement{at("", set("stop to blade", 100)), at("", set("stop to blade", 103)), at("", set("blade to fence", 50))}},
		{Title: title, Settings: []plan.Setting{set("height", 6)}, Placements: []plan.Placement{at("a.housing", set("fence to cutter edge", 20, 15, 20)), at("a.groove", set("blade to fence", 20))}},
		{Title: title, Settings: []plan.Setting{set("height", 6)}, Placements: []plan.Placement{at("a.housing"), at("a.channel", set("fence to cutter edge", 20, 15, 20))}},
	}
	got := rounding.Setups(p)
	for _, c := range []struct {
		what string
		got  plan.Goes
		want plan.Goes
	}{
		{"to length", got[0].Placements[0].Settings[0].Goes, plan.GoesIn},
		{"a blank to length", got[0].Placements[1].Settings[0].Goes, plan.Matches},
		{"to width", got[0].Placements[2].Settings[0].Goes, plan.Takes},
		{"two paths of a housing", got[1].Placements[0].Settings[0].Goes, plan.Takes},
		{"one path of a groove", got[1].Placements[1].Settings[0].Goes, plan.Matches},
		{"height of a card with a groove", got[1].Settings[0].Goes, plan.Takes},
		{"height of a housing", got[2].Settings[0].Goes, plan.Matches},
		{"two paths of a channel", got[2].Placements[1].Settings[0].Goes, plan.Matches},
	} {
		if c.got != c.want {
			t.Errorf("%s: %q, want %q", c.what, c.got, c.want)
		}
	}
	if a, _ := got[1].Title.Arg("height"); a.Round != unit.Up {
		t.Errorf("title: %+v", a)
	}
	p.Piece.Edition = "mm"
	if a, _ := rounding.Setups(p)[1].Title.Arg("height"); a.Round != unit.Nearest {
		t.Errorf("title in millimetres: %+v", a)
	}
	if p.Setups[1].Settings[0].Goes != plan.Matches {
		t.Error("the plan given was changed")
	}
}
