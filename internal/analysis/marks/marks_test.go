package marks_test

import (
	"fmt"
	"slices"
	"testing"

	"scantling/internal/address"
	"scantling/internal/analysis"
	"scantling/internal/analysis/marks"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// maker puts parts together: group, address, hand, and what to cut.
type maker struct {
	p piece.Piece
	l *ledger.Ledger
}

func newMaker() *maker { return &maker{l: ledger.New(nil)} }

func (m *maker) fig(mm int64) piece.Figure {
	return m.l.Leaf("size", unit.MM(mm), ledger.Document, "")
}

func (m *maker) group(names ...string) {
	for _, n := range names {
		m.p.Groups = append(m.p.Groups, piece.Group{Address: address.Address(n), Name: n})
	}
}

// part adds a board of l × 100 × 20 mm with holes at the given places along its
// length, 20 from its low edge.
func (m *maker) part(group, name, hand string, l int64, holes ...int64) {
	a := address.Address(name)
	if group != "" {
		a = address.Address(group) + "." + a
	}
	m.p.Parts = append(m.p.Parts, piece.Part{
		Address: a, Name: name, Group: address.Address(group), Form: piece.Board, Material: "oak", Hand: hand,
		Length: m.fig(l), Width: m.fig(100), Thickness: m.fig(20),
		Frame: piece.Frame{Length: piece.ToRight, Width: piece.ToBack, Thickness: piece.ToUp},
	})
	for _, at := range holes {
		m.p.Cuts = append(m.p.Cuts, piece.Cut{Part: a, Kind: piece.Hole, Bore: &piece.Bore{
			Open: piece.FaceHigh, At: [2]piece.Figure{m.fig(at), m.fig(20)}, Diameter: m.fig(5), Depth: m.fig(10),
		}})
	}
}

// list prints rows as "mark: members".
func list(rows []plan.PartRow) []string {
	var out []string
	for _, r := range rows {
		out = append(out, fmt.Sprintf("%s: %v", r.Mark, r.Members))
	}
	return out
}

func TestMarks(t *testing.T) {
	cases := []struct {
		name string
		make func(m *maker)
		want []string
	}{
		{"two groups", func(m *maker) {
			m.group("case", "drawer[1]", "drawer[2]")
			m.part("case", "top", "", 300)
			m.part("case", "bottom", "", 300)
			m.part("drawer[1]", "front", "", 200)
			m.part("drawer[2]", "front", "", 200)
		}, []string{"A1: [case.top]", "A2: [case.bottom]", "B1: [drawer[1].front drawer[2].front]"}},
		{"a member of a repeat that differs", func(m *maker) {
			m.group("drawer[1]", "drawer[2]", "drawer[3]")
			m.part("drawer[1]", "front", "", 200)
			m.part("drawer[2]", "front", "", 201)
			m.part("drawer[3]", "front", "", 200)
		}, []string{"A1.1: [drawer[1].front drawer[3].front]", "A1.2: [drawer[2].front]"}},
		{"a pair that is one part turned round", func(m *maker) {
			m.group("case")
			m.part("case", "side.left", "left", 300, 30)
			m.part("case", "side.right", "right", 300)
			m.p.Cuts = append(m.p.Cuts, piece.Cut{Part: "case.side.right", Bore: &piece.Bore{
				Open: piece.FaceHigh, At: [2]piece.Figure{m.fig(270), m.fig(80)}, Diameter: m.fig(5), Depth: m.fig(10)}})
		}, []string{"A1: [case.side.left case.side.right]"}},
		{"a pair with hands", func(m *maker) {
			m.group("case")
			m.part("case", "side.left", "left", 300, 30)
			m.part("case", "side.right", "right", 300, 270)
		}, []string{"A1L: [case.side.left]", "A1R: [case.side.right]"}},
		{"pairs with hands in drawers, one of another size", func(m *maker) {
			m.group("drawer[1]", "drawer[2]")
			for i, l := range []int64{300, 301} {
				m.part(fmt.Sprintf("drawer[%d]", i+1), "side.left", "left", l, 30)
				m.part(fmt.Sprintf("drawer[%d]", i+1), "side.right", "right", l, l-30)
			}
		}, []string{"A1.1L: [drawer[1].side.left]", "A1.1R: [drawer[1].side.right]", "A1.2L: [drawer[2].side.left]", "A1.2R: [drawer[2].side.right]"}},
		{"two numbers", func(m *maker) {
			m.group("drawer[1]", "drawer[2]")
			m.part("drawer[1]", "tray[1]", "", 300)
			m.part("drawer[1]", "tray[2]", "", 300)
			m.part("drawer[2]", "tray[1]", "", 300, 40)
			m.part("drawer[2]", "tray[2]", "", 300)
		}, []string{"A1.1.1: [drawer[1].tray[1] drawer[1].tray[2] drawer[2].tray[2]]", "A1.2.1: [drawer[2].tray[1]]"}},
		{"outside any group", func(m *maker) {
			m.group("case")
			m.part("case", "top", "", 300)
			m.part("", "lid", "", 300)
		}, []string{"1: [lid]", "A1: [case.top]"}},
		{"another material", func(m *maker) {
			m.group("case")
			m.part("case", "shelf[1]", "", 300)
			m.part("case", "shelf[2]", "", 300)
			m.p.Parts[1].Material = "ash"
		}, []string{"A1.1: [case.shelf[1]]", "A1.2: [case.shelf[2]]"}},
	}
	for _, c := range cases {
		m := newMaker()
		c.make(m)
		rows := marks.Rows(&m.p, nil, m.l)
		if got := list(rows); !slices.Equal(got, c.want) {
			t.Errorf("%s:\n got %q\nwant %q", c.name, got, c.want)
		}
		for i, r := range rows {
			if r.Order != i+1 || r.Quantity() == 0 {
				t.Errorf("%s: row %d: %+v", c.name, i, r)
			}
		}
	}
}

// TestMarksStay: adding drawers, parts behind and groups behind moves no mark.
func TestMarksStay(t *testing.T) {
	build := func(drawers int, more bool) map[address.Address]string {
		m := newMaker()
		m.group("case")
		for i := range drawers {
			m.group(fmt.Sprintf("drawer[%d]", i+1))
		}
		m.part("case", "side.left", "left", 300, 30)
		m.part("case", "side.right", "right", 300, 270)
		for i := range drawers - 1 {
			m.part("case", fmt.Sprintf("divider[%d]", i+1), "", 250)
		}
		m.part("case", "top", "", 300)
		for i := range drawers {
			m.part(fmt.Sprintf("drawer[%d]", i+1), "front", "", 200)
			m.part(fmt.Sprintf("drawer[%d]", i+1), "tray", "", 200, int64(20+i))
		}
		if more {
			m.group("stand")
			m.part("case", "plinth", "", 280)
			m.part("stand", "leg[1]", "", 80)
		}
		out := map[address.Address]string{}
		for _, r := range marks.Rows(&m.p, nil, m.l) {
			for _, a := range r.Members {
				out[a] = r.Mark
			}
		}
		return out
	}
	three, four := build(3, false), build(4, true)
	for a, m := range three {
		if four[a] != m {
			t.Errorf("%s was %s and is %s", a, m, four[a])
		}
	}
}

// TestBasis: a row says whether its sizes were measured or follow from what was.
func TestBasis(t *testing.T) {
	m := newMaker()
	m.group("case")
	m.part("case", "top", "", 300)
	m.part("case", "bottom", "", 300)
	m.part("case", "shelf", "", 300)
	m.p.Parts[1].Thickness = m.l.Leaf("thickness", unit.MM(20), ledger.Measured, "")
	m.p.Parts[2].Length = m.l.Less("length", m.fig(320), m.p.Parts[1].Thickness)
	var bases []plan.Basis
	for _, r := range marks.Rows(&m.p, nil, m.l) {
		bases = append(bases, r.Basis)
	}
	if !slices.Equal(bases, []plan.Basis{plan.Planned, plan.AsMeasured, plan.FromMeasured}) {
		t.Errorf("%v", bases)
	}
}

// TestManyGroups: after Z come AA, AB.
func TestManyGroups(t *testing.T) {
	m := newMaker()
	for i := range 30 {
		g := fmt.Sprintf("group%d", i)
		m.group(g)
		m.part(g, "board", "", 300)
	}
	rows := marks.Rows(&m.p, nil, m.l)
	if rows[25].Mark != "Z1" || rows[26].Mark != "AA1" || rows[29].Mark != "AD1" {
		t.Errorf("%v", list(rows))
	}
}

// TestDeclared runs the declared analysis.
func TestDeclared(t *testing.T) {
	m := newMaker()
	m.part("", "lid", "", 300)
	c := analysis.Context{Piece: &m.p, Ledger: m.l}
	if _, err := analysis.Run(&c, []analysis.Analysis{marks.Analysis}); err != nil || len(marks.Analysis.Get(&c)) != 1 {
		t.Errorf("%v %v", err, marks.Analysis.Get(&c))
	}
}
