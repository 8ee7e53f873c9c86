package naming

import (
	"slices"
	"testing"

	"scantling/internal/address"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
	"scantling/internal/words"
)

func sample() *plan.Plan {
	part := func(a, group, name, hand string) piece.Part {
		return piece.Part{Address: address.Address(a), Group: address.Address(group), Name: name, Hand: hand}
	}
	p := &piece.Piece{
		Groups: []piece.Group{{Address: "case", Name: "case", Label: "Case"}, {Address: "drawer[1]", Label: "Drawer 1", Nth: 1, Of: 2}, {Address: "drawer[2]", Label: "Drawer 2", Nth: 2, Of: 2},
			{Address: "drawer[2].tray[1]", Name: "tray"}, {Address: "drawer[2].tray[2]", Name: "tray"}},
		Spaces: []piece.Space{{Address: "case.opening[1]", Label: "Opening for drawer 1"}},
		Parts: []piece.Part{part("case.side.left", "case", "side", "left"), part("case.side.right", "case", "side", "right"), part("drawer[2].front", "drawer[2]", "front", ""),
			part("drawer[2].tray[1].tray", "drawer[2].tray[1]", "tray", ""), part("drawer[2].tray[2].tray", "drawer[2].tray[2]", "tray", ""), part("loose_tenon[3]", "", "loose_tenon", "")},
	}
	row := func(mark, name, hand string, members ...address.Address) plan.PartRow {
		return plan.PartRow{Mark: mark, Name: name, Hand: hand, Members: members}
	}
	return &plan.Plan{Piece: p, Parts: []plan.PartRow{
		row("1", "loose_tenon", "", "loose_tenon[3]"),
		row("A1L", "side", "left", "case.side.left"), row("A1R", "side", "right", "case.side.right"), row("B1", "front", "", "drawer[2].front"),
		row("C1.2.1", "tray", "", "drawer[2].tray[1].tray"), row("C1.2.2", "tray", "", "drawer[2].tray[2].tray"),
	}}
}

func english() *words.Words {
	return words.New(words.English, words.British, unit.Show{System: unit.Metric}, "")
}

func TestAddress(t *testing.T) {
	n := Of(sample(), english())
	for a, want := range map[address.Address]string{
		"case.opening[1]":        "Opening for drawer 1",
		"drawer[2]":              "Drawer 2",
		"drawer[2].front":        "Drawer 2, front",
		"drawer[2].tray[2].tray": "Drawer 2, tray 2",
		"drawer[2].tray[1]":      "Drawer 2, tray 1",
		"case.side.left":         "Case, left side",
		"loose_tenon[3]":         "Loose tenon 3",
		"not an address[":        "not an address[",
	} {
		if got := n.Address(a); got != want {
			t.Errorf("%s is called %q, want %q", a, got, want)
		}
	}
}

func TestRowsGroupsAndMarks(t *testing.T) {
	p := sample()
	n := Of(p, english())
	for i, want := range [][2]string{{"loose tenon", "Parts"}, {"left side", "Case"}, {"right side", "Case"}, {"front", "Drawer × 2"}, {"tray", "Tray × 2"}, {"tray", "Tray × 2"}} {
		_, group := n.Group(p.Parts[i])
		if name := n.Row(p.Parts[i]); name != want[0] || group != want[1] {
			t.Errorf("%s is %q in %q, want %v", p.Parts[i].Mark, name, group, want)
		}
	}
	for _, c := range []struct{ in, want []string }{
		{[]string{"B1", "C1.2.1", "C1.2.2"}, []string{"B1", "C1"}},
		{[]string{"C1.2.2", "B1"}, []string{"C1.2.2", "B1"}},
		{[]string{"A1L", "A1R"}, []string{"A1L", "A1R"}},
		{nil, nil},
	} {
		if got := n.Marks(c.in); !slices.Equal(got, c.want) {
			t.Errorf("%v shortens to %v, want %v", c.in, got, c.want)
		}
	}
}

// A side is named as it lies in the piece, and outside and inside by the face
// that shows; every name has its words.
func TestSide(t *testing.T) {
	side := piece.Part{Frame: piece.Frame{Length: piece.ToUp, Width: piece.ToBack, Thickness: piece.ToRight}, Show: piece.ToLeft}
	shelf := piece.Part{Frame: piece.Frame{Length: piece.ToRight, Width: piece.ToBack, Thickness: piece.ToUp}}
	w := english()
	for _, c := range []struct {
		p    piece.Part
		s    piece.Side
		want string
	}{
		{side, piece.EndLow, "lower end"}, {side, piece.EdgeHigh, "back edge"}, {side, piece.FaceLow, "outside face"}, {side, piece.FaceHigh, "inside face"},
		{shelf, piece.EndLow, "left end"}, {shelf, piece.EdgeLow, "front edge"}, {shelf, piece.FaceHigh, "top face"},
	} {
		if got := w.Label(Side(c.p, c.s)); got != c.want {
			t.Errorf("%s is the %q, want %q", c.s, got, c.want)
		}
	}
}
