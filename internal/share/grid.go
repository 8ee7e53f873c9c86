package share

import (
	"scantling/internal/figure"
	"scantling/internal/message"
	"scantling/internal/unit"
)

// Grid is equal cells in columns (side by side, left to right) and rows (one
// behind the other), parted by dividers or by nothing, with room around.
type Grid struct {
	Columns, Rows int
	// Cell is a cell's clear size across a column and along a row: the thing and its
	// play.
	Cell [2]unit.Length
	// Divider parts two cells; Around is left on every side beyond the outer cells.
	Divider, Around unit.Length
}

// Check reports a grid that is not worked out. Keys: "share.grid-cells" for counts
// below 1 or more than [MaxThings] cells, "figure.length-range".
func (g Grid) Check() error {
	if g.Columns < 1 || g.Rows < 1 || g.Columns > MaxThings || g.Rows > MaxThings || g.Columns*g.Rows > MaxThings {
		return figure.Refuse("share.grid-cells", message.Count("columns", g.Columns), message.Count("rows", g.Rows), message.Count("most", MaxThings)).Or("share.split-contents")
	}
	for _, l := range g.Cell {
		if err := figure.LengthRange("share.grid", "quantity.thing", l, 1, maxRadius); err != nil {
			return err
		}
	}
	for _, l := range [2]unit.Length{g.Divider, g.Around} {
		if err := figure.LengthRange("share.grid", "quantity.play", l, 0, maxRadius); err != nil {
			return err
		}
	}
	return nil
}

// count is the number of cells across (0) or along (1).
func (g Grid) count(axis int) int {
	if axis == 0 {
		return g.Columns
	}
	return g.Rows
}

// Inside returns the least clear size that the grid needs, across and along:
// cells, the dividers between them and the room around.
func (g Grid) Inside() [2]unit.Length {
	var out [2]unit.Length
	for axis := range out {
		n := unit.Length(g.count(axis))
		out[axis] = n*g.Cell[axis] + (n-1)*g.Divider + 2*g.Around
	}
	return out
}

// Row returns the cells of one axis (0 across, 1 along) as a row, so that it
// closes to a width and prints as a sum. Errors: those of [Grid.Check].
func (g Grid) Row(axis int) (Row, error) {
	if err := g.Check(); err != nil {
		return Row{}, err
	}
	things := make([]Thing, g.count(axis))
	for i := range things {
		things[i].Mouth = g.Cell[axis]
	}
	return Least(things, Rule{Land: g.Divider, Margin: g.Around})
}

// For returns the grid with the columns and rows for so many things: a number
// that is given (above nought) stays, the other follows; where neither is, the
// grid is as near to square in numbers as can be, columns first. Errors:
// "share.too-few-cells" where both are given and hold fewer, with what would do.
func (g Grid) For(things int) (Grid, error) {
	up := func(a, b int) int { return (a + b - 1) / b }
	switch {
	case things < 1 || things > MaxThings:
		return g, tooMany(things)
	case g.Columns > 0 && g.Rows > 0:
		if g.Columns <= MaxThings && g.Rows <= MaxThings && g.Columns*g.Rows < things {
			return g, figure.Refuse("share.too-few-cells", message.Count("things", things), message.Count("columns", g.Columns), message.Count("rows", g.Rows), message.Count("cells", g.Columns*g.Rows)).
				Or("share.more-rows", message.Count("rows", up(things, g.Columns))).Or("share.more-columns", message.Count("columns", up(things, g.Rows)))
		}
	case g.Columns > 0:
		g.Rows = up(things, g.Columns)
	case g.Rows > 0:
		g.Columns = up(things, g.Rows)
	default:
		g.Columns = 1
		for g.Columns*g.Columns < things {
			g.Columns++
		}
		g.Rows = up(things, g.Columns)
	}
	return g, nil
}

// FitIn returns the grid with as many columns and rows as an inside takes, and
// what is then left over across and along. A grid that does not take one cell has
// nought columns or rows.
func (g Grid) FitIn(inside [2]unit.Length) (Grid, [2]unit.Length, error) {
	g.Columns, g.Rows = 1, 1
	if err := g.Check(); err != nil {
		return g, [2]unit.Length{}, err
	}
	var left [2]unit.Length
	for axis := range left {
		n, err := HowMany(g.Cell[axis], g.Divider, inside[axis]-2*g.Around)
		if err != nil {
			return g, left, err
		}
		n = min(n, MaxThings)
		if axis == 0 {
			g.Columns = n
		} else {
			g.Rows = n
		}
		left[axis] = inside[axis] - 2*g.Around
		if n > 0 {
			left[axis] -= unit.Length(n)*g.Cell[axis] + unit.Length(n-1)*g.Divider
		}
	}
	return g, left, nil
}
