package operations

import (
	"scantling/internal/figure"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// Input is what the derivation needs.
type Input struct {
	Piece *piece.Piece
	// Cuts are all cuts: the document's own and those that joints make.
	Cuts       []piece.Cut
	Rows       []plan.PartRow
	Workpieces []plan.Workpiece
	Diagrams   []plan.Diagram
	Stages     []plan.Stage
	Shop       Workshop
	Ledger     *ledger.Ledger
}

// Workshop is what must be known of the shop.
type Workshop struct {
	Machines []tool.Machine
	Cutters  []tool.Cutter
	// Reach is how far the fence (at a drill press the throat) goes from the
	// cutter, by machine name; 0 or none is not known and bounds nothing.
	Reach map[string]unit.Length
	Rules Rules

	kinds map[tool.Kind][]tool.Machine // see indexed
}

// Rules are habits of the house, each with its source; a rule that is not known
// is replaced by [Usual].
type Rules struct {
	// PassDepth is the most that a router cutter takes in one pass.
	PassDepth figure.Of[unit.Length]
	// Upright is the greatest length of a part that is stood on its end.
	Upright figure.Of[unit.Length]
	// PlaneDepth is what the thicknesser takes off in one pass.
	PlaneDepth figure.Of[unit.Length]
	// RowError is the greatest error of a row of cuts that is put up with to save
	// settings.
	RowError figure.Of[unit.Length]
	// LidWeb is what the blade leaves of a wall where a lid is sawn off.
	LidWeb figure.Of[unit.Length]
	// Lowering says that lowering work on to a turning cutter is allowed, Raising
	// that a turning cutter may be raised into work that is held between stops.
	Lowering, Raising bool
}

// Usual returns the rules of a careful shop: common practice, no source.
func Usual() Rules {
	rule := func(key string, l unit.Length) figure.Of[unit.Length] {
		return figure.Exactly(l, figure.PracticeSource("rule."+key))
	}
	return Rules{
		Upright:    rule("upright", unit.MM(200)),
		PlaneDepth: rule("plane-depth", 1500*unit.Micrometre),
		RowError:   rule("row-error", unit.MM(1)),
		LidWeb:     rule("lid-web", 1500*unit.Micrometre),
	}
}

// Completed fills unknown rules with the usual ones. The depth of a pass stays
// unknown where it is: package tool then has a rule for each cutter.
func (r Rules) Completed() Rules {
	usual := Usual()
	for _, pair := range []struct{ to, from *figure.Of[unit.Length] }{
		{&r.Upright, &usual.Upright}, {&r.PlaneDepth, &usual.PlaneDepth}, {&r.RowError, &usual.RowError}, {&r.LidWeb, &usual.LidWeb},
	} {
		if !pair.to.Known() || pair.to.Value <= 0 {
			*pair.to = *pair.from
		}
	}
	return r
}

// Machine returns the machine of that name.
func (w Workshop) Machine(name string) (tool.Machine, bool) {
	for _, m := range w.Machines {
		if m.Name == name {
			return m, true
		}
	}
	return tool.Machine{}, false
}

// Of returns the shop's machines of a kind, in the shop's order.
func (w Workshop) Of(kind tool.Kind) []tool.Machine {
	if w.kinds != nil {
		return w.kinds[kind]
	}
	var out []tool.Machine
	for _, m := range w.Machines {
		if m.Kind == kind {
			out = append(out, m)
		}
	}
	return out
}

// indexed returns the workshop with its machines sorted by kind, for many
// questions.
func (w Workshop) indexed() Workshop {
	kinds := map[tool.Kind][]tool.Machine{}
	for _, m := range w.Machines {
		kinds[m.Kind] = append(kinds[m.Kind], m)
	}
	w.kinds = kinds
	return w
}

// Result is what was derived.
type Result struct {
	Operations []plan.Operation
	// Jobs are the cuts with the way that each is made, in the order of the
	// operations that make them.
	Jobs []Job
}

// Job is one cut of one part row and how it is made.
type Job struct {
	Operation string
	Row       plan.PartRow
	Cut       piece.Cut
	Way       Way
}
