package plan

import (
	"scantling/internal/figure"
	"scantling/internal/ledger"
	"scantling/internal/unit"
)

// Estimate is a computed quantity with the range that the ranges of its sources
// give. It is an estimate: of clear wood, by the formula that Source names. Without
// a value it is unknown, and Missing says why.
type Estimate struct {
	// Value in the unit of its dimension; Entry is its line in the ledger. Low is the
	// least and High the greatest that the sources' ranges allow.
	Value unit.Value `json:"value,omitzero"`
	Entry ledger.ID  `json:"entry,omitempty"`
	Low   unit.Value `json:"low,omitzero"`
	High  unit.Value `json:"high,omitzero"`
	// Unit names what a bare number counts in: "N m", "MPa", "percent", "hours".
	Unit   string        `json:"unit,omitempty"`
	Source figure.Source `json:"source,omitzero"`
	// Missing lists what must be known for the answer, most wanted first.
	Missing []Datum `json:"missing,omitempty"`
}

// Datum is something that an estimate needs and the documents do not say.
type Datum string

// The data that may be missing.
const (
	NoWood         Datum = "wood"           // the catalogue does not have the timber
	NoSheet        Datum = "sheet"          // nor the sheet goods
	NoStiffness    Datum = "stiffness"      // no source gives how stiff it is
	NoDensity      Datum = "density"        // or how heavy
	NoCore         Datum = "core moisture"  // a reading of the wood's core: moisture of the board, or house rule "core moisture"
	NoLoad         Datum = "load"           // what it carries: contents with a mass, or house rule "shelf load"
	NoMass         Datum = "mass"           // the mass of one thing of the contents
	NoPlace        Datum = "place"          // where the contents stand
	NoFastener     Datum = "fastener"       // a screw or nail that the catalogue has
	NoJointFormula Datum = "joint strength" // no published estimate for such a joint
	NoSupport      Datum = "support"        // what it rests on
	NoFront        Datum = "front"          // where it opens
)

// Known reports whether there is a value.
func (e Estimate) Known() bool { return !e.Value.IsZero() }

// Figure returns an estimated length as a figure; the zero figure for any other.
func (e Estimate) Figure() Figure {
	nm, ok := e.Value.Length()
	if !ok {
		return Figure{}
	}
	return Figure{Nm: nm, Entry: e.Entry}
}

// Lengths returns an estimated length with its range; false for any other.
func (e Estimate) Lengths() (value, low, high unit.Length, ok bool) {
	value, ok = e.Value.Length()
	low, _ = e.Low.Length()
	high, _ = e.High.Length()
	return value, low, high, ok
}
