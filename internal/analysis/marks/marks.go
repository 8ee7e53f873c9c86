package marks

import (
	"strconv"
	"strings"

	"scantling/internal/address"
	"scantling/internal/analysis"
	"scantling/internal/diag"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/shape"
)

// Analysis declares the part list as an analysis.
var Analysis = analysis.Declare(analysis.Info{
	Name: "marks",
	Doc:  "Which parts are equal, and what is written on each?",
	Kind: analysis.Derive,
}, func(c *analysis.Context) ([]plan.PartRow, diag.List) {
	return Rows(c.Piece, c.Cuts, c.Ledger), nil
})

// family is the parts of one declaration: all members of a repeat, in all
// repeats of its group, both hands.
type family struct {
	letter  string
	number  int
	members []member
}

type member struct {
	part    *piece.Part
	numbers []string
	class   int // equal members have equal classes, numbered from 0 by first member
}

// Rows returns the part list of a piece: groups in the order of the document,
// within a group its parts, each family's equal members together. joints are the
// cuts that joints make.
func Rows(p *piece.Piece, joints []piece.Cut, l *ledger.Ledger) []plan.PartRow {
	cuts := map[address.Address][]*piece.Cut{}
	for _, list := range [2][]piece.Cut{p.Cuts, joints} {
		for i := range list {
			cuts[list[i].Part] = append(cuts[list[i].Part], &list[i])
		}
	}
	materials := map[string]*piece.Material{}
	for i := range p.Materials {
		materials[p.Materials[i].Name] = &p.Materials[i]
	}
	var rows []plan.PartRow
	for _, f := range families(p) {
		f.sort(cuts)
		rows = append(rows, f.rows(materials, l)...)
	}
	for i := range rows {
		rows[i].Order = i + 1
	}
	return rows
}

// families gathers the parts by declaration, in the order of groups and parts.
func families(p *piece.Piece) []*family {
	letters, order := groupLetters(p)
	byGroup := map[string][]*family{}
	byName := map[string]*family{}
	for i := range p.Parts {
		part := &p.Parts[i]
		group, _ := bare(part.Group, "")
		name, numbers := bare(part.Address, part.Hand)
		key := group + "\n" + name
		f := byName[key]
		if f == nil {
			f = &family{letter: letters[group], number: len(byGroup[group]) + 1}
			byName[key] = f
			byGroup[group] = append(byGroup[group], f)
		}
		f.members = append(f.members, member{part: part, numbers: numbers})
	}
	var out []*family
	for _, g := range order {
		out = append(out, byGroup[g]...)
	}
	return out
}

// groupLetters gives each declared group that has parts, or comes before one that
// has, its letter; repeats of a group share it. Parts outside any group come first.
func groupLetters(p *piece.Piece) (letters map[string]string, order []string) {
	letters = map[string]string{"": ""}
	order = []string{""}
	add := func(a address.Address) {
		g, _ := bare(a, "")
		if _, ok := letters[g]; !ok {
			letters[g] = letter(len(letters) - 1)
			order = append(order, g)
		}
	}
	for i := range p.Groups {
		add(p.Groups[i].Address)
	}
	for i := range p.Parts {
		add(p.Parts[i].Group)
	}
	return letters, order
}

// letter returns A, B, ... Z, AA, AB, ... for 0, 1, ...
func letter(n int) string {
	s := ""
	for n++; n > 0; n = (n - 1) / 26 {
		s = string(rune('A'+(n-1)%26)) + s
	}
	return s
}

// bare returns an address without its numbers, and the numbers; a last step that
// names the hand is left out.
func bare(a address.Address, hand string) (string, []string) {
	steps, err := a.Steps()
	if err != nil {
		return string(a), nil
	}
	if n := len(steps); hand != "" && n > 1 && steps[n-1].Name == hand {
		steps = steps[:n-1]
	}
	var numbers []string
	for i := range steps {
		if steps[i].Index > 0 {
			numbers = append(numbers, strconv.Itoa(steps[i].Index))
			steps[i].Index = 0
		}
	}
	return string(address.Join(steps...)), numbers
}

// sort finds which members are equal.
func (f *family) sort(cuts map[address.Address][]*piece.Cut) {
	classes := map[string]int{}
	for i := range f.members {
		m := &f.members[i]
		key := m.part.Material + "\n" + string(shape.ContentOf(m.part, cuts[m.part.Address]))
		c, ok := classes[key]
		if !ok {
			c = len(classes)
			classes[key] = c
		}
		m.class = c
	}
}

// rows makes a row for each class of equal members.
func (f *family) rows(materials map[string]*piece.Material, l *ledger.Ledger) []plan.PartRow {
	numbered, handed := f.apart()
	var rows []plan.PartRow
	for _, m := range f.members {
		if m.class < len(rows) {
			row := &rows[m.class]
			row.Members = append(row.Members, m.part.Address)
			if row.Basis == plan.AsCut && !m.part.Cut {
				row.Basis = basis(m.part, l)
			}
			if row.Hand != m.part.Hand {
				row.Hand = ""
			}
			continue
		}
		rows = append(rows, rowOf(m.part, materials[m.part.Material], l))
	}
	done := 0
	for _, m := range f.members {
		if m.class < done {
			continue
		}
		done++
		row := &rows[m.class]
		if !handed {
			row.Hand = ""
		}
		row.Mark = f.letter + strconv.Itoa(f.number)
		if numbered && len(m.numbers) > 0 {
			row.Mark += "." + strings.Join(m.numbers, ".")
		}
		if row.Hand != "" {
			row.Mark += strings.ToUpper(row.Hand[:1])
		}
	}
	return rows
}

// apart says what tells the members of a family from each other: their numbers,
// where members of one hand differ, and their hands, where left and right do.
func (f *family) apart() (numbered, handed bool) {
	first := map[string]int{}
	hands := map[int]string{}
	for _, m := range f.members {
		hand := m.part.Hand
		if c, ok := first[hand]; !ok {
			first[hand] = m.class
		} else if c != m.class {
			numbered = true
		}
		hands[m.class] = hand
	}
	if len(first) < 2 {
		return numbered, false
	}
	for _, m := range f.members {
		if hands[m.class] != m.part.Hand {
			hands[m.class] = "both"
		}
	}
	for _, h := range hands {
		handed = handed || h != "both"
	}
	return numbered, handed
}

func rowOf(p *piece.Part, m *piece.Material, l *ledger.Ledger) plan.PartRow {
	row := plan.PartRow{
		Name: p.Name, Label: p.Label, Members: []address.Address{p.Address}, Material: p.Material,
		Length: p.Length, Width: p.Width, Thickness: p.Thickness, Hand: p.Hand, Basis: basis(p, l),
	}
	if m != nil {
		row.Species, row.Sheet = m.Species, m.Sheet
	}
	return row
}

// basis says what the sizes of a part rest on: the strongest of the four.
func basis(p *piece.Part, l *ledger.Ledger) plan.Basis {
	out := plan.Planned
	if p.Cut {
		return plan.AsCut
	}
	for _, f := range p.Sizes() {
		switch e, _ := l.Entry(f.Entry); e.Origin {
		case ledger.Measured:
			return plan.AsMeasured
		case ledger.FromMeasured:
			out = plan.FromMeasured
		}
	}
	return out
}
