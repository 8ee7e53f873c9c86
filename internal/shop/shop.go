package shop

import (
	"slices"
	"strings"

	"scantling/internal/diag"
	"scantling/internal/figure"
	"scantling/internal/hardware"
	"scantling/internal/stock"
	"scantling/internal/sundries"
	"scantling/internal/timber"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// Shop is one maker's workshop.
type Shop struct {
	Name string
	// Region chooses the trade's words: "en-GB" or "en-US".
	Region string
	// Currency is its ISO 4217 code.
	Currency string
	// Units is what the maker works in, and what bare numbers of the shop document
	// count in.
	Units unit.System
	// Resolution is what metric figures are shown to; Denominator the finest
	// fraction of an inch in use.
	Resolution  unit.Length
	Denominator int

	Climate Climate
	// TrimEnds comes off both ends of a board, TrimEdges off both edges of a sheet.
	TrimEnds, TrimEdges unit.Length

	Boards   []Board
	Sheets   []Sheet
	Machines []Machine
	Cutters  []Cutter
	Fittings []Fitting
	Rules    []Rule
	// Glues and Finishes are the shop's own; Grits the abrasives that it has. What it
	// does not name is the trade's.
	Glues    []sundries.Glue
	Finishes []sundries.Finish
	Grits    []int
	// Timbers are woods that the shop states, beside the catalogue's.
	Timbers []timber.Species
	Where   diag.Place

	woods timber.Catalogue // the catalogue with them
}

// Climate is the air at the bench and where the piece will live.
type Climate struct {
	Now, Dry, Wet timber.Air
	// Season is the moisture content that wood takes up there.
	Season timber.Season
}

// Board is boards of one kind in the rack.
type Board struct {
	// ID is the shop's name for it.
	ID    string
	Stock stock.Board
	// Species is the catalogue's name of the wood.
	Species string
	// Sawn says how the growth rings lie.
	Sawn timber.Sawn
	// Have is how many there are; 0 can be bought.
	Have int
	// Moisture is the reading of its core, in percent; 0 is none.
	Moisture timber.Moisture
	Where    diag.Place
}

// Sheet is sheets of one kind in the rack.
type Sheet struct {
	ID    string
	Stock stock.Sheet
	Have  int
	Where diag.Place
}

// Machine is a machine with what only some kinds have.
type Machine struct {
	ID   string
	Tool tool.Machine
	// Fence is how far the fence goes from the cutter at most, Throat the distance
	// from a drill press's column to its drill; 0 is not known.
	Fence, Throat unit.Length
	Where         diag.Place
}

// Cutter is a cutter by the shop's name.
type Cutter struct {
	ID   string
	Tool tool.Cutter
	// Lowers says that the house rule lets work be lowered on to it while it turns.
	Lowers bool
	Where  diag.Place
}

// Fitting is a fitting or fastener with its price.
type Fitting struct {
	ID    string
	Price stock.Price
	Have  int
	// Sizes are those of the one in hand, nil where the shop states none.
	Sizes *hardware.Fitting
	Where diag.Place
}

// Rule is a habit of the house.
type Rule struct {
	// Name is the rule's, as "depth per pass".
	Name string
	// Value is a length, a number, yes or no, or a text.
	Value unit.Value
	// Why is the maker's own reason.
	Why   string
	Where diag.Place
	// At is the place of the value alone.
	At diag.Place
}

// Show is how the shop shows lengths in a system, with the master named.
func (s *Shop) Show(system unit.System) unit.Show {
	return unit.Show{System: system, Master: s.Units, Resolution: s.Resolution, Denominator: s.Denominator}
}

// Step is the least change that the shop sets a machine to by rule: half a
// millimetre or 1/32 in.
func (s *Shop) Step() unit.Length {
	if s.Units == unit.Inches {
		return unit.Inch / 32
	}
	return unit.Millimetre / 2
}

// Board returns the boards of that name.
func (s *Shop) Board(id string) (Board, bool) {
	return find(s.Boards, func(b Board) bool { return b.ID == id })
}

// Sheet returns the sheets of that name.
func (s *Shop) Sheet(id string) (Sheet, bool) {
	return find(s.Sheets, func(b Sheet) bool { return b.ID == id })
}

// Cutter returns the cutter of that name.
func (s *Shop) Cutter(id string) (Cutter, bool) {
	return find(s.Cutters, func(c Cutter) bool { return c.ID == id })
}

// CutterFor returns the cutter that a design asks for: the one of that name, or
// else the first of the shape and diameter that the name tells, as "round-nose
// 12.7", whatever this shop calls its own. A bare diameter counts in the given
// unit.
func (s *Shop) CutterFor(asked string, bare unit.Length) (Cutter, bool) {
	if c, ok := s.Cutter(asked); ok {
		return c, true
	}
	shape, size, ok := strings.Cut(asked, " ")
	if !ok {
		return Cutter{}, false
	}
	diameter, err := unit.Parse(size, bare)
	if err != nil {
		return Cutter{}, false
	}
	return find(s.Cutters, func(c Cutter) bool { return string(c.Tool.Shape) == shape && c.Tool.Diameter == diameter })
}

// Fitting returns the fitting of that name.
func (s *Shop) Fitting(id string) (Fitting, bool) {
	return find(s.Fittings, func(f Fitting) bool { return f.ID == id })
}

// Rule returns the rule of that name.
func (s *Shop) Rule(name string) (Rule, bool) {
	return find(s.Rules, func(r Rule) bool { return r.Name == name })
}

// LengthRule returns a rule's length as a figure of the house; unknown if there
// is no such rule.
func (s *Shop) LengthRule(name string) figure.Of[unit.Length] {
	r, ok := s.Rule(name)
	l, isLength := r.Value.Length()
	if !ok || !isLength {
		return figure.Of[unit.Length]{}
	}
	return figure.Exactly(l, figure.Source{Key: "house." + name, Title: r.Why, Status: figure.Stated})
}

// Tools returns the cutters without the shop's own particulars, in order.
func (s *Shop) Tools() []tool.Cutter {
	out := make([]tool.Cutter, len(s.Cutters))
	for i, c := range s.Cutters {
		out[i] = c.Tool
	}
	return out
}

// Of returns the machines of a kind, in order.
func (s *Shop) Of(kind tool.Kind) []Machine {
	return slices.DeleteFunc(slices.Clone(s.Machines), func(m Machine) bool { return m.Tool.Kind != kind })
}

func find[T any](all []T, is func(T) bool) (T, bool) {
	if i := slices.IndexFunc(all, is); i >= 0 {
		return all[i], true
	}
	var none T
	return none, false
}
