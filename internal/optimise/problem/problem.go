package problem

import "scantling/internal/unit"

// Form says what is cut: boards across their length, or sheets and wide boards
// in both directions.
type Form int

// The two forms.
const (
	Boards Form = iota // crosscuts only; widths are ignored
	Sheets             // guillotine cuts in both directions
)

// Goal says what is sought.
type Goal int

// The two goals.
const (
	LeastCost Goal = iota // every part, from stock of the least total cost
	MostValue             // from one piece of stock, parts of the greatest total value; Sheets only
)

// Cost is money in the caller's smallest unit, or a part's value under
// [MostValue]. It is never negative.
type Cost int64

// Problem is what is asked of the engine.
type Problem struct {
	Name  string
	Form  Form
	Goal  Goal
	Stock []Stock
	Parts []Part
	// Kerf is the width of a saw cut. n parts in a row need their lengths and
	// n-1 kerfs; a rest of a kerf or less is lost with the last cut.
	Kerf unit.Length
	// Cutting restricts the guillotine cuts of sheets.
	Cutting Cutting
	// Feed is the least piece that may be put to the saw.
	Feed Feed
	// Useful is the least rest that is worth keeping. A rest at least this
	// large is reported as a remnant, a smaller one as waste. Zero in both
	// means that no rest is a remnant.
	Useful Size
	// Sequences are parts that stay together, in order.
	Sequences []Sequence
}

// Size is the size of a rectangle; a board's Width is zero.
type Size struct {
	Length, Width unit.Length
}

// Stock is one kind of piece that can be cut: a board or sheet as bought, or an
// offcut in the rack.
type Stock struct {
	ID string
	Size
	// Cost of one piece. A rack's offcut costs what keeping it is worth.
	Cost Cost
	// Limit is how many there are; zero means as many as wanted.
	Limit int
	// Trim is taken off before anything else, its own cut included.
	Trim Trim
	// Defects may lie in waste and remnants, in no part.
	Defects []Box
}

// Trim is what is lost at the four edges, the kerf of the trimming cut
// included. Boards have no Low and High.
type Trim struct {
	Start, End unit.Length // at the two ends, off the length
	Low, High  unit.Length // at the two edges, off the width
}

// Point is a place in the frame of a piece of stock.
type Point struct {
	Along, Across unit.Length
}

// Box is a rectangle in the frame of a piece of stock. For boards only Along
// and Length count.
type Box struct {
	Point
	Size
}

// Part is one kind of rectangle that is wanted.
type Part struct {
	ID string
	Size
	// Quantity is how many are wanted; under [MostValue] the most that count.
	Quantity int
	// Turn says that the part may lie across the length: it has no grain.
	Turn bool
	// Value of one, under [MostValue] only.
	Value Cost
}

// Sequence names parts that are cut from one piece of stock next to each other
// in the order given, so that the grain runs on: drawer fronts from one board.
// An index stands as often as that part is in the row; all pieces of a part
// that is in a sequence must stand in sequences.
type Sequence struct {
	Parts []int
	// Direction is how the parts are sawn from each other: Crosscut for a row
	// along the grain, Rip for a row across it (Sheets only).
	Direction Direction
}

// Direction of a saw cut on a piece of stock.
type Direction int

// The directions. Any is for restrictions only: no cut has it.
const (
	Any      Direction = iota
	Crosscut           // across the length: it divides the length
	Rip                // with the length: it divides the width
)

// Cutting restricts how the cuts on a sheet may follow each other.
type Cutting struct {
	// Stages is how many times the direction of cutting may be taken up, the
	// first included: 2, 3, or 0 for no limit. Boards always have one.
	Stages int
	// First is the direction of the first stage. A stage may be without cuts: a
	// sheet whose first cut runs the other way has one stage less left.
	First Direction
	// Exact forbids the trimming cut after the last stage that takes a rest
	// off a single part.
	Exact bool
}

// Feed is the least piece that may be put to the saw: its longer side must be
// at least Long, its shorter side at least Short. What falls off may be
// smaller. Boards have only Long.
type Feed struct {
	Long, Short unit.Length
}

// Usable returns the size that is left of s when it is trimmed.
func (s Stock) Usable(f Form) Size {
	u := Size{Length: s.Length - s.Trim.Start - s.Trim.End}
	if f == Sheets {
		u.Width = s.Width - s.Trim.Low - s.Trim.High
	}
	return u
}

// End returns the corner of b opposite to its Point.
func (b Box) End() Point {
	return Point{b.Along + b.Length, b.Across + b.Width}
}

// Pieces returns how many pieces the parts add up to.
func (p Problem) Pieces() int {
	n := 0
	for _, part := range p.Parts {
		n += part.Quantity
	}
	return n
}
