package typeset

import "scantling/internal/page"

// Block is one of the block types of this package.
type Block interface{ block() }

// Span is a stretch of text in one manner.
type Span struct {
	Text string
	Bold bool
	// Colour is the role of the text; the zero value is ink.
	Colour page.Colour
	// Link leads to an anchor, or outside if it has a colon; empty for none.
	Link string
	// Address names what the span speaks of.
	Address string
}

// Plain returns text in the ordinary manner. Lines break at spaces; "\n" breaks
// a line; a no-break space does not.
func Plain(text string) []Span { return []Span{{Text: text}} }

// Strong returns bold text.
func Strong(text string) []Span { return []Span{{Text: text, Bold: true}} }

// Heading opens a part of the document. It stays with what follows and stands
// in the outline.
type Heading struct {
	Level int // 1 to 3
	Text  string
	// Anchor is a name that links can lead to; Address what the part is about.
	Anchor, Address string
	// NewPage starts a page with it.
	NewPage bool
	// Unlisted keeps it out of the contents; it stands in the outline all the same.
	Unlisted bool
}

// Manner is the size of a paragraph's type.
type Manner uint8

// The manners.
const (
	Body Manner = iota
	Small
	Lead // larger, for the one line that matters
)

// Paragraph is running text.
type Paragraph struct {
	Spans  []Span
	Manner Manner
	Align  page.Align
}

// List is a list of entries, each with a label: a number, a bullet, a box to tick.
type List struct {
	Entries []Entry
	// Indent is the width kept for labels; 0 takes what the widest needs.
	Indent float64
}

// Entry is one entry of a list. Its body may hold any blocks.
type Entry struct {
	Label  string
	Blocks []Block
	// Address names what the entry is about; Anchor is a name for links.
	Address, Anchor string
	// Together keeps the entry on one page if it fits.
	Together bool
}

// Steps numbers entries from first on.
func Steps(label func(n int) string, first int, bodies ...[]Block) List {
	var l List
	for i, b := range bodies {
		l.Entries = append(l.Entries, Entry{Label: label(first + i), Blocks: b, Together: true})
	}
	return l
}

// Table is a table with a header row that stands again on each page.
type Table struct {
	Caption []Span
	Columns []Column
	// Header holds one cell for each column; nil for a table without header.
	Header []Cell
	Rows   []Row
	// Full spreads the table over the whole width even if it needs less.
	Full    bool
	Address string
	Anchor  string
	Manner  Manner
}

// Column says how wide a column is and how its cells lie. With neither Width
// nor Share it is as wide as its widest cell.
type Column struct {
	Width float64 // in millimetres
	Share float64 // part of what the other columns leave over
	Align page.Align
}

// Row is one row of a table.
type Row struct {
	Cells []Cell
	// Group makes the row a heading for those below: tinted, and kept with the next.
	Group   bool
	Address string
	Anchor  string
}

// Cell is one cell.
type Cell struct {
	Spans []Span
	// Columns is how many columns it spans; 0 is one.
	Columns int
	// Header makes it the header of its row for those who hear the table.
	Header bool
	// Fill is a tint behind the cell; the zero value (ink) is none.
	Fill page.Colour
}

// Cells makes a row of plain cells.
func Cells(texts ...string) []Cell {
	cells := make([]Cell, len(texts))
	for i, t := range texts {
		cells[i] = Cell{Spans: Plain(t)}
	}
	return cells
}

// Figure is a drawing with a caption below. Its Alt must say what it shows.
type Figure struct {
	Drawing page.Drawing
	Caption []Span
	Address string
	Anchor  string
	Align   page.Align
}

// Box sets its blocks apart and keeps them on one page if they fit: a caution
// (sign, word and colour in the title, a bar at the side) or a card (a frame).
type Box struct {
	// Title stands first, bold, in the colour of the bar.
	Title  string
	Blocks []Block
	// Bar is the role of the bar at the left; ink with Frame means none.
	Bar page.Colour
	// Frame draws a thin frame; Tint fills the box.
	Frame, Tint bool
	Address     string
}

// Beside sets two lists of blocks side by side, kept together if they fit.
type Beside struct {
	Left, Right []Block
	// Share is the left side's part of the width, between 0.1 and 0.9; 0 is half.
	Share float64
}

// Together keeps its blocks on one page if they fit.
type Together struct{ Blocks []Block }

// Contents lists the headings with their pages.
type Contents struct {
	// Levels is the deepest level listed; 0 is 2.
	Levels int
}

// Space is empty space in millimetres; none at the top of a page.
type Space struct{ Height float64 }

// NewPage starts a page, unless one has just been started.
type NewPage struct{}

func (Heading) block()   {}
func (Paragraph) block() {}
func (List) block()      {}
func (Table) block()     {}
func (Figure) block()    {}
func (Box) block()       {}
func (Beside) block()    {}
func (Together) block()  {}
func (Contents) block()  {}
func (Space) block()     {}
func (NewPage) block()   {}
