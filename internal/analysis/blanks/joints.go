package blanks

import (
	"cmp"
	"fmt"
	"slices"

	"scantling/internal/address"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// clearOfCut is the least wood between a glued joint and a cut that runs along it.
// Common practice, no source.
const clearOfCut = 5 * unit.Millimetre

// maxStrips bounds how many strips a panel is glued up from.
const maxStrips = 64

// strips shares a panel's width into at least so many strips of at most room, each
// with the panel's allowance at its outer edges: equal ones where nothing that is cut
// along the part comes near, else with their joints in the middle of lands, or clear
// of what is cut. It returns nil if that cannot be.
func (d *deriver) strips(g glued, room unit.Length, least int) []ledger.Figure {
	if room <= 0 || g.width.Nm <= 0 {
		return nil
	}
	row, width, cuts := g.row, g.width, d.along(g.parts)
	lands := d.lands(g.parts[0], cuts)
	for n := max(least, int((width.Nm+room-1)/room)); n <= maxStrips; n++ {
		places := lands
		if len(lands) == 0 {
			if len(cuts) == 0 {
				return d.equal(row, width, room, n)
			}
			places = d.clear(row, width, cuts, n)
		}
		if at := choose(places, width.Nm, d.Allowances.Edge.Nm, room, n); at != nil {
			return d.between(row, width, at)
		}
	}
	return nil
}

// setting is what the width of equal strips is rounded up to, so that all but the
// last are ripped at one setting of the fence.
const setting = unit.Millimetre / 10

// equal returns n strips of one width and the rest in the last; where rounding
// would make them too wide, as equal as nanometres allow.
func (d *deriver) equal(row plan.PartRow, width ledger.Figure, room unit.Length, n int) []ledger.Figure {
	share := func(i int) ledger.Figure {
		return d.Ledger.Share(fmt.Sprintf("panel.%s.strip.%d", row.Mark, i), width, n, i)
	}
	out := make([]ledger.Figure, n)
	one := d.Ledger.Round("panel."+row.Mark+".strip", share(1), setting, unit.Up)
	if rest := width.Nm - one.Nm*unit.Length(n-1); one.Nm > room || rest < one.Nm/2 {
		for i := range out {
			out[i] = share(i + 1)
		}
		return out
	}
	terms := []ledger.Figure{width}
	for i := range n - 1 {
		out[i] = one
		terms = append(terms, one)
	}
	out[n-1] = d.Ledger.Less("panel."+row.Mark+".strip.last", terms...)
	return out
}

// between returns the widths of the strips whose joints lie at the places given,
// from the part's finished low edge.
func (d *deriver) between(row plan.PartRow, width ledger.Figure, at []ledger.Figure) []ledger.Figure {
	var out []ledger.Figure
	var last ledger.Figure
	for i, a := range at {
		name := fmt.Sprintf("panel.%s.strip.%d", row.Mark, i+1)
		if i == 0 {
			out = append(out, d.Ledger.Sum(name, a, d.Allowances.Edge))
		} else {
			out = append(out, d.Ledger.Less(name, a, last))
		}
		last = a
	}
	return append(out, d.Ledger.Less(fmt.Sprintf("panel.%s.strip.%d", row.Mark, len(at)+1), width, last, d.Allowances.Edge))
}

// choose picks n-1 of the places, in rising order, so that no strip is wider than
// room and the strips are as equal as can be: the least sum of squares, the lowest
// places where that is equal. It returns nil if there is no such choice.
func choose(places []ledger.Figure, width, edge, room unit.Length, n int) []ledger.Figure {
	if n < 2 || len(places) < n-1 {
		return nil
	}
	const none = int64(-1)
	square := func(from, to unit.Length) int64 {
		w := to - from
		if w <= 0 || w > room {
			return none
		}
		um := int64(w / unit.Micrometre)
		return um * um
	}
	cost := make([][]int64, n-1)
	came := make([][]int, n-1)
	for k := range cost {
		cost[k], came[k] = make([]int64, len(places)), make([]int, len(places))
		for i, p := range places {
			cost[k][i] = none
			if k == 0 {
				cost[k][i] = square(-edge, p.Nm)
				continue
			}
			for j := range i {
				if s := square(places[j].Nm, p.Nm); s != none && cost[k-1][j] != none && (cost[k][i] == none || cost[k-1][j]+s < cost[k][i]) {
					cost[k][i], came[k][i] = cost[k-1][j]+s, j
				}
			}
		}
	}
	best, least := -1, none
	for i, p := range places {
		if s := square(p.Nm, width-edge); s != none && cost[n-2][i] != none && (best < 0 || cost[n-2][i]+s < least) {
			best, least = i, cost[n-2][i]+s
		}
	}
	if best < 0 {
		return nil
	}
	out := make([]ledger.Figure, n-1)
	for k := n - 2; k >= 0; k-- {
		out[k], best = places[best], came[k][best]
	}
	return out
}

// stretch is what a cut along the grain takes of a part's width.
type stretch struct{ near, far ledger.Figure }

func (s stretch) holds(at unit.Length) bool {
	return at > s.near.Nm-clearOfCut && at < s.far.Nm+clearOfCut
}

// along lists the stretches of width that cuts take where a joint between strips
// would run along in them or come out in them: slots along the grain, recesses,
// holes. They are those of all parts that come out of one panel, in order; stretches
// that overlap are one.
func (d *deriver) along(parts []address.Address) []stretch {
	var out []stretch
	for _, member := range parts {
		for _, c := range d.cuts[member] {
			if s, ok := d.stretch(c); ok {
				out = append(out, s)
			}
		}
	}
	slices.SortStableFunc(out, func(a, b stretch) int {
		return cmp.Or(cmp.Compare(a.near.Nm, b.near.Nm), cmp.Compare(a.far.Nm, b.far.Nm))
	})
	merged := out[:0]
	for _, s := range out {
		if n := len(merged); n > 0 && s.near.Nm <= merged[n-1].far.Nm {
			if s.far.Nm > merged[n-1].far.Nm {
				merged[n-1].far = s.far
			}
			continue
		}
		merged = append(merged, s)
	}
	return merged
}

// stretch is what a cut takes of its part's width, if joints must stay out of it. A
// hole into an edge is crossed by no joint, and a socket in an end runs through the
// thickness: strips share it.
func (d *deriver) stretch(c piece.Cut) (stretch, bool) {
	switch {
	case c.Slot != nil && c.Slot.Run == piece.AlongLength && c.Slot.Across() == piece.AlongWidth:
		return stretch{c.Slot.Near, c.Slot.Far}, true
	case c.Slot != nil && c.Slot.Run == piece.AlongWidth && c.Kind == piece.Recess:
		return stretch{c.Slot.From, c.Slot.To}, true
	case c.Bore != nil:
		axis, _ := c.Bore.Open.Axis()
		if axis == piece.AlongWidth {
			return stretch{}, false
		}
		middle := c.Bore.At[0]
		if axis == piece.AlongThickness {
			middle = c.Bore.At[1]
		}
		name := string(c.Address) + ".edge"
		half := d.Ledger.Half(name, c.Bore.Diameter)
		return stretch{d.Ledger.Less(name, middle, half), d.Ledger.Sum(name, middle, half)}, true
	}
	return stretch{}, false
}

// lands returns the middles of the lands of a part's rows across its width, as
// far as no other cut lies there, in order.
func (d *deriver) lands(member address.Address, cuts []stretch) []ledger.Figure {
	var out []ledger.Figure
	for _, s := range d.series[member] {
		if s.Across != piece.AlongWidth {
			continue
		}
		at := d.Ledger.Leaf("edge", 0, ledger.Derived, "")
		for i, t := range s.Terms {
			if !t.Air && i > 0 && i < len(s.Terms)-1 {
				name := fmt.Sprintf("%s.land.%d", s.Address, i)
				middle := d.Ledger.Sum(name, at, d.Ledger.Half(name+".half", t.Figure))
				if !slices.ContainsFunc(cuts, func(c stretch) bool { return middle.Nm > c.near.Nm && middle.Nm < c.far.Nm }) {
					out = append(out, middle)
				}
			}
			at = d.Ledger.Sum(fmt.Sprintf("%s.term.%d", s.Address, i), at, t.Figure)
		}
	}
	slices.SortStableFunc(out, func(a, b ledger.Figure) int { return cmp.Compare(a.Nm, b.Nm) })
	return slices.CompactFunc(out, func(a, b ledger.Figure) bool { return a.Nm == b.Nm })
}

// clear returns places for the joints of n strips: where equal strips would meet,
// as far as no cut is near, the middles between cuts, and just clear of cuts.
func (d *deriver) clear(row plan.PartRow, width ledger.Figure, cuts []stretch, n int) []ledger.Figure {
	var out []ledger.Figure
	add := func(f ledger.Figure) {
		if f.Nm > 0 && f.Nm < row.Width.Nm && !slices.ContainsFunc(cuts, func(c stretch) bool { return c.holds(f.Nm) }) {
			out = append(out, f)
		}
	}
	at := d.Ledger.Less("panel."+row.Mark+".start", d.Allowances.Edge, d.Allowances.Edge, d.Allowances.Edge)
	for i, w := range d.equal(row, width, width.Nm, n)[:n-1] {
		at = d.Ledger.Sum(fmt.Sprintf("panel.%s.equal.%d of %d", row.Mark, i+1, n), at, w)
		add(at)
	}
	for i := range len(cuts) + 1 {
		low, high := d.Ledger.Leaf("edge", 0, ledger.Derived, ""), row.Width
		if i > 0 {
			low = cuts[i-1].far
		}
		if i < len(cuts) {
			high = cuts[i].near
		}
		name := fmt.Sprintf("panel.%s.between cuts.%d", row.Mark, i+1)
		add(d.Ledger.Half(name, d.Ledger.Sum(name+".sum", low, high)))
	}
	margin := d.Ledger.Leaf("allowance.clear of cuts", clearOfCut, ledger.HouseRule, "common practice, no source")
	for _, c := range cuts {
		add(d.Ledger.Less("panel."+row.Mark+".before cut", c.near, margin))
		add(d.Ledger.Sum("panel."+row.Mark+".after cut", c.far, margin))
	}
	slices.SortStableFunc(out, func(a, b ledger.Figure) int { return cmp.Compare(a.Nm, b.Nm) })
	return slices.CompactFunc(out, func(a, b ledger.Figure) bool { return a.Nm == b.Nm })
}
