package share

import (
	"slices"

	"scantling/internal/figure"
	"scantling/internal/unit"
)

// Crossing is the halved slots where the dividers of a grid cross, as egg-crates
// have them: those along lie across the others.
type Crossing struct {
	Grid Grid
	// Measured is what the divider stock measures; High how high dividers are.
	Measured, High unit.Length
}

// slotRoom is how much wider than the measured divider a slot is cut, slotDeeper
// how much deeper than half, so that the two halves meet and the tops are level.
const (
	slotRoom   = 200 * unit.Micrometre
	slotDeeper = 500 * unit.Micrometre
)

// Width returns how wide the slots are: the measured divider and 0.2 mm. Common
// practice, no source.
func (c Crossing) Width() figure.Of[unit.Length] {
	return figure.Between(c.Measured+slotRoom, c.Measured+slotRoom/2, c.Measured+3*slotRoom/2, figure.PracticeSource("share.crossing-width"))
}

// Depth returns how deep they are: half the height and half a millimetre. Common
// practice, no source.
func (c Crossing) Depth() figure.Of[unit.Length] {
	half := (c.High + 1) / 2
	return figure.Between(half+slotDeeper, half, half+2*slotDeeper, figure.PracticeSource("share.crossing-depth"))
}

// Centres returns where the slots of a divider that runs across (0) or along (1)
// have their centres, from its own end: the first after one cell. Add Around for
// centres from the wall.
func (c Crossing) Centres(axis int) []unit.Length {
	var out []unit.Length
	at := c.Grid.Cell[axis] + c.Grid.Divider/2
	for range c.Grid.count(axis) - 1 {
		out = append(out, at)
		at += c.Grid.Cell[axis] + c.Grid.Divider
	}
	return out
}

// Stops returns the settings of one stop that cut the slots of both lengths when
// every divider is turned end for end: the distances of the first half of the
// centres, those that both lengths share once.
func (c Crossing) Stops() []unit.Length {
	var out []unit.Length
	for axis := range 2 {
		all := c.Centres(axis)
		for _, at := range all[:(len(all)+1)/2] {
			if !slices.Contains(out, at) {
				out = append(out, at)
			}
		}
	}
	return out
}

// Slots returns how many slots there are: at every crossing one in each of the
// two dividers.
func (c Crossing) Slots() int { return 2 * (c.Grid.Columns - 1) * (c.Grid.Rows - 1) }
