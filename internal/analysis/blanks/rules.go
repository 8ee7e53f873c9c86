package blanks

import (
	"scantling/internal/ledger"
	"scantling/internal/unit"
)

// Allowances are the house's habits about what comes off.
type Allowances struct {
	// End comes off each end of a blank, Edge off each edge. Common practice, no
	// source: about 12 in length and 5 in width over the finished size in all.
	End, Edge ledger.Figure
	// Strip comes off each edge of a strip before it is glued.
	Strip ledger.Figure
	// Planed is the least that a planed board must be thicker than the part, Rough
	// the least for a rough-sawn one. Common practice, no source: a board bought
	// planed at 19.05 cleans up to 18; rough timber loses 5 and more.
	Planed, Rough ledger.Figure
	// Kerf is what the saw that parts a gang turns to dust.
	Kerf ledger.Figure
	// Gang is the longest blank that short parts share.
	Gang unit.Length
}

// Usual returns the allowances that stand where the shop's document says
// nothing else, as entries of the ledger.
func Usual(l *ledger.Ledger) Allowances {
	rule := func(name string, nm unit.Length) ledger.Figure {
		return l.Leaf("allowance."+name, nm, ledger.HouseRule, "common practice, no source")
	}
	return Allowances{
		End:    rule("end", unit.MM(6)),
		Edge:   rule("edge", 2500*unit.Micrometre),
		Strip:  rule("strip", unit.MM(1)),
		Planed: rule("planed", unit.MM(1)),
		Rough:  rule("rough", unit.MM(5)),
		Kerf:   rule("kerf", unit.MM(3)),
		Gang:   unit.MM(900),
	}
}

// Stock is one kind of board or sheet of the rack, as blanks needs to know it.
type Stock struct {
	ID      string
	Species string
	Sheet   bool
	Planed  bool
	// Finished says that parts may be as thick as it is bought.
	Finished                 bool
	Length, Width, Thickness unit.Length
	// Edge and End are what is taken off the board's edges and ends first.
	Edge, End unit.Length
	// Have is how many the rack holds.
	Have int
	// Turns says that parts may lie across it: a sheet without grain.
	Turns bool
}

// usable is the length between the trimmed ends.
func (s Stock) usable() unit.Length { return s.Length - 2*s.End }

// Limits are what the shop's machines can take.
type Limits struct {
	// Least is the least length that the jointer, the thicknesser and, for parts
	// with machined cuts, the router table may be fed; 0 for no such machine.
	LeastPlane, LeastRout unit.Length
	// Joint is the widest face that the jointer takes, Plane the widest that the
	// thicknesser takes; 0 is unbounded.
	Joint, Plane unit.Length
	// LeastRip is the narrowest piece that the table saw may part off.
	LeastRip unit.Length
	// Resaw is the widest board that the band saw takes on edge, 0 for none, and
	// ResawKerf what it turns to dust.
	Resaw, ResawKerf unit.Length
}
