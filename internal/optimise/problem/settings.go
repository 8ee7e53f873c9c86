package problem

import (
	"maps"
	"slices"

	"scantling/internal/unit"
)

// Settings returns the sizes that an answer's saw is set to, each once and in
// rising order: rips are the widths that a fence gives, stops the lengths that a
// stop gives. A cut is set by what it saws off; where that is waste, by what is
// left. A cut that leaves nothing on either side needs no setting.
func (a Answer) Settings() (rips, stops []unit.Length) {
	by := map[Direction]map[unit.Length]bool{Rip: {}, Crosscut: {}}
	for _, d := range a.Diagrams {
		for cut := range d.Cuts() {
			if kept := cut.kept(); kept != nil {
				size := kept.Length
				if cut.Direction == Rip {
					size = kept.Width
				}
				by[cut.Direction][size] = true
			}
		}
	}
	return slices.Sorted(maps.Keys(by[Rip])), slices.Sorted(maps.Keys(by[Crosscut]))
}

// kept is the child of a sawn piece whose size the cut is set by.
func (n *Node) kept() *Node {
	if n.Near != nil && (n.Near.Kind != Waste || n.Far == nil) {
		return n.Near
	}
	return n.Far
}
