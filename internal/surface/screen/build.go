package screen

import (
	"maps"
	"slices"
	"strings"

	"scantling/internal/message"
	"scantling/internal/output/drawing"
	"scantling/internal/output/naming"
	"scantling/internal/output/table"
	"scantling/internal/output/tape"
	"scantling/internal/plan"
	"scantling/internal/unit"
	"scantling/internal/words"
)

// Source is what a state is made from.
type Source struct {
	Plan   *plan.Plan
	Solids drawing.Solids
	Words  *words.Words
	// Second are the words of the second system of an edition in both, or nil.
	Second *words.Words
	// Document is the text of the design document, which inputs are read out of.
	Document []byte
	// Revision and File name it.
	Revision, File string
	// Found are readings of the record by address and by what was read, for those
	// that the plan itself does not repeat.
	Found map[[2]string]unit.Length
}

// Build makes the state of a plan.
func Build(src Source) *State {
	b := builder{Source: src, say: src.Words, names: naming.Of(src.Plan, src.Words), tape: tape.Of(src.Plan, src.Plan.Units())}
	p := src.Plan
	s := &State{
		Revision: src.Revision, File: src.File, Words: Labels(src.Words),
		Diagnostics: Diagnostics(p.Diagnostics, src.Words), Unplaced: list(p.Unplaced),
		Piece:  b.piece(),
		Inputs: b.inputs(), Findings: b.findings(), Rows: b.rows(),
		Cost: b.cost(), Diagrams: b.diagrams(), Parts: b.parts(), Objects: b.objects(),
		Setups: b.setups(), Steps: b.steps(), Measures: b.measures(),
	}
	s.Tally = b.tally(s.Findings)
	s.Tables = Tables{
		Stages: b.stages(), Signs: table.Signs(p, b.say), Buying: show(table.Buying(p, b.say)),
		Tools: show(table.Tools(p, b.say)), Joints: show(table.Joints(p, b.say)),
		Held: show(table.Held(p, bare{b.say})), Seasons: show(table.Seasons(p, bare{b.say})),
		Stowed: show(table.Stowed(p, bare{b.say}, b.say.Show())), Second: b.second(),
	}
	s.Views.Isometric = b.whole(drawing.LookIsometric)
	return s
}

type builder struct {
	Source
	say   *words.Words
	names *naming.Names
	tape  *tape.Tape
}

func (b *builder) length(f plan.Figure) string { return b.say.Length(f.Nm) }

// bare speaks as the words do, but shows lengths without their unit: for tables
// and drawings, which name it once.
type bare struct{ *words.Words }

func (b bare) Length(l unit.Length) string { return b.Figure(l) }

// messages says each of them.
func (b *builder) messages(ms ...message.Message) []string {
	out := []string{}
	for _, m := range ms {
		if !m.IsZero() {
			out = append(out, b.names.Phrase(m))
		}
	}
	return out
}

// known says a word that the plan names under a prefix of the catalogue; one that
// is not there is shown as it is.
func (b *builder) known(prefix, word string) string {
	if b.say.Has(prefix + word) {
		return b.say.Label(prefix + word)
	}
	return b.say.Own(strings.ReplaceAll(word, "_", " "))
}

func (b *builder) piece() Piece {
	p, size := b.Plan.Piece, b.Plan.Overall()
	return Piece{
		Name: p.Name, About: p.About, Shop: b.Plan.Shop.Name, Units: b.say.Label("units." + string(b.Plan.Units())),
		Overall: []Fact{
			{b.say.Label("screen.wide"), b.say.Length(size[0])},
			{b.say.Label("screen.deep"), b.say.Length(size[1])},
			{b.say.Label("screen.high"), b.say.Length(size[2])},
		},
	}
}

func (b *builder) cost() []Fact {
	c := b.Plan.Cost
	money := func(n int64) string { return b.say.Money(n) }
	out := []Fact{
		{b.say.Label("screen.cost-timber"), money(c.Timber)}, {b.say.Label("screen.cost-sheet"), money(c.Sheet)},
		{b.say.Label("screen.cost-hardware"), money(c.Hardware)}, {b.say.Label("screen.cost-total"), money(c.Total)},
	}
	if c.FromRack > 0 {
		out = append(out, Fact{b.say.Label("screen.cost-rack"), money(c.FromRack)})
	}
	if len(c.Unpriced) > 0 {
		out = append(out, Fact{b.say.Label("screen.cost-unpriced"), strings.Join(c.Unpriced, ", ")})
	}
	return out
}

// list makes an empty list of none, so that it is one in JSON too.
func list[T any](in []T) []T {
	if in == nil {
		return []T{}
	}
	return in
}

// show takes over a table.
func show(t table.Table) Table {
	out := Table{Title: t.Title, Columns: []Column{}, Rows: list(t.Rows), Groups: []Heading{}}
	for _, at := range slices.Sorted(maps.Keys(t.Groups)) {
		out.Groups = append(out.Groups, Heading{at, t.Groups[at]})
	}
	for _, c := range t.Columns {
		out.Columns = append(out.Columns, Column{c.Heading, c.Number})
	}
	return out
}
