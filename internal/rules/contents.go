package rules

import (
	"scantling/internal/ledger"
	"scantling/internal/share"
	"scantling/internal/unit"
)

// ofContents are the functions about what goes inside (package share).
func ofContents() ledger.Functions {
	return ledger.Functions{
		// Count, growth as a ratio, spare ones, places they are dealt out to, how many
		// on each other: the cells of one place.
		"cells_each": cellsEach,
		// Cells, columns and rows, nought where they are not said.
		"columns": cellsBy(func(g share.Grid) int { return g.Columns }),
		"rows":    cellsBy(func(g share.Grid) int { return g.Rows }),
		// Sides and the size across corners or flats.
		"flats": prism(func(p share.Prism) (unit.Length, error) { return p.Flats(), p.Check() }),
		"corners": prism(func(p share.Prism) (unit.Length, error) {
			c, err := share.PrismOfFlats(p.Sides, p.Corners)
			return c.Corners, err
		}),
		"least_round": ofLengths(2, func(l []unit.Length) (unit.Length, error) {
			f, err := share.LeastRound(l[0], l[1])
			return f.Value, err
		}),
		"mouth": ofLengths(2, func(l []unit.Length) (unit.Length, error) {
			g := share.Groove{Radius: l[0] / 2, Depth: l[1]}
			return g.Mouth(), g.Check()
		}),
		"sinks":  ofLengths(4, sinks),
		"swing":  ofLengths(2, func(l []unit.Length) (unit.Length, error) { return share.Swing{Arm: l[0]}.At(l[1]), nil }),
		"spread": spread,
		// What a crossing's slot is cut to: from the divider's thickness, from its height.
		"crossing_width": ofLengths(1, func(l []unit.Length) (unit.Length, error) { return share.Crossing{Measured: l[0]}.Width().Value, nil }),
		"crossing_depth": ofLengths(1, func(l []unit.Length) (unit.Length, error) { return share.Crossing{High: l[0]}.Depth().Value, nil }),
	}
}

// sinks takes a round-nose cutter's diameter, the channel's depth, the rod's
// diameter and the lining.
func sinks(l []unit.Length) (unit.Length, error) {
	g := share.Groove{Radius: l[0] / 2, Depth: l[1]}
	if err := g.Check(); err != nil {
		return 0, err
	}
	if l[3] != 0 {
		var err error
		if g, err = g.Lined(l[3]); err != nil {
			return 0, err
		}
	}
	s, err := g.Seat(l[2])
	return s.Sit, err
}

// ofLengths makes a rule of so many lengths a function.
func ofLengths(n int, rule func([]unit.Length) (unit.Length, error)) func([]unit.Value) (unit.Value, error) {
	return func(a []unit.Value) (unit.Value, error) {
		l, err := lengths(a)
		if err != nil || len(l) != n {
			return unit.Value{}, errArguments
		}
		for _, x := range l {
			if x < 0 || x > unit.MaxLength {
				return unit.Value{}, errArguments
			}
		}
		out, err := rule(l)
		if err != nil {
			return unit.Value{}, err
		}
		return unit.OfLength(out), nil
	}
}

func counts(a []unit.Value) ([]int, bool) {
	out := make([]int, len(a))
	for i, v := range a {
		n, ok := v.Int()
		if !ok || n < 0 || n > share.MaxCount {
			return nil, false
		}
		out[i] = int(n)
	}
	return out, true
}

func cellsEach(a []unit.Value) (unit.Value, error) {
	if len(a) != 5 || a[1].Number() == nil {
		return unit.Value{}, errArguments
	}
	n, ok := counts([]unit.Value{a[0], a[2], a[3], a[4]})
	if !ok || n[2] < 1 || n[3] < 1 {
		return unit.Value{}, errArguments
	}
	all, err := share.Grown(n[0], a[1].Number())
	if err != nil {
		return unit.Value{}, err
	}
	up := func(a, b int) int { return (a + b - 1) / b }
	return unit.OfCount(up(up(all+n[1], n[2]), n[3])), nil
}

func cellsBy(what func(share.Grid) int) func([]unit.Value) (unit.Value, error) {
	return func(a []unit.Value) (unit.Value, error) {
		n, ok := counts(a)
		if !ok || len(n) != 3 {
			return unit.Value{}, errArguments
		}
		g, err := share.Grid{Columns: n[1], Rows: n[2]}.For(n[0])
		if err != nil {
			return unit.Value{}, err
		}
		return unit.OfCount(what(g)), nil
	}
}

func prism(what func(share.Prism) (unit.Length, error)) func([]unit.Value) (unit.Value, error) {
	return func(a []unit.Value) (unit.Value, error) {
		if len(a) != 2 {
			return unit.Value{}, errArguments
		}
		n, ok := counts(a[:1])
		l, isLength := a[1].Length()
		if !ok || !isLength {
			return unit.Value{}, errArguments
		}
		p := share.Prism{Sides: n[0], Corners: l}
		if err := p.Check(); err != nil {
			return unit.Value{}, err
		}
		out, err := what(p)
		return unit.OfLength(out), err
	}
}

func spread(a []unit.Value) (unit.Value, error) {
	if len(a) != 2 || a[0].Dim() != unit.DimList {
		return unit.Value{}, errArguments
	}
	needs, err := lengths(a[0].List())
	width, ok := a[1].Length()
	if err != nil || !ok {
		return unit.Value{}, errArguments
	}
	wide, err := share.SpreadOver(needs, width)
	if err != nil {
		return unit.Value{}, err
	}
	out := make([]unit.Value, len(wide))
	for i, l := range wide {
		out[i] = unit.OfLength(l)
	}
	return unit.OfList(out...), nil
}
