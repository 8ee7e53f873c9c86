package table

import (
	"scantling/internal/message"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// Speech puts messages and lengths into the reader's words and units.
type Speech interface {
	Say(message.Message) string
	// Length is a length with its unit, Figure without: a table of lengths names
	// its unit once, in [Table.Note] or on the page that it stands on.
	Length(unit.Length) string
	Figure(unit.Length) string
	// Own marks what is no prose of ours: a mark, a name.
	Own(text string) string
}

// Table is a list with a title.
type Table struct {
	Title string
	// Note says what holds for all of it: the unit.
	Note    string
	Columns []Column
	Rows    [][]string
	// Groups are headings that stand above the row of that number; a group may
	// begin at len(Rows) only if it is empty.
	Groups map[int]string
}

// Column is a heading and how its cells stand.
type Column struct {
	Heading string
	Number  bool // figures stand at the right
	// Length says that its cells are lengths in the unit of the table.
	Length bool
	// Weight shares out the width; 1 is usual.
	Weight float64
}

type builder struct {
	speech Speech
	table  Table
}

func newTable(p *plan.Plan, s Speech, title string) *builder {
	return newTableIn(p.Units(), s, title)
}

func newTableIn(system unit.System, s Speech, title string) *builder {
	return &builder{speech: s, table: Table{
		Title: s.Say(message.New(title)), Note: s.Say(message.New("table.units", message.Word("units", "units."+string(system)))),
		Groups: map[int]string{},
	}}
}

// kind says what the cells of a column are.
type kind int

const (
	text kind = iota
	number
	length
)

func (b *builder) column(key string, k kind, weight float64) *builder {
	b.table.Columns = append(b.table.Columns, Column{b.speech.Say(message.New(key)), k != text, k == length, weight})
	return b
}

func (b *builder) row(cells ...string) { b.table.Rows = append(b.table.Rows, cells) }

// group begins a group of rows.
func (b *builder) group(title string) { b.table.Groups[len(b.table.Rows)] = title }

func (b *builder) length(f plan.Figure) string { return b.speech.Figure(f.Nm) }

func (b *builder) say(key string, args ...message.Arg) string {
	return b.speech.Say(message.New(key, args...))
}

func (b *builder) count(n int) string { return b.say("number.whole", message.Count("n", n)) }

func (b *builder) money(hundredths int64) string {
	if hundredths == 0 {
		return "–"
	}
	return b.say("money.plain", message.Money("amount", hundredths))
}
