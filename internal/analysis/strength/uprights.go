package strength

import (
	"cmp"
	"slices"

	"scantling/internal/address"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// prop finds what uprights do for the bridges that rest on joints at their ends. An
// upright that stands firmly ends a span; one that stands on a board which bridges the
// same gap goes down with that board (see [mechanics.Stack]).
func (e *estimator) prop(bridges []*bridge) {
	upwards := slices.Clone(bridges)
	slices.SortStableFunc(upwards, func(a, b *bridge) int {
		return cmp.Compare(a.part.Extent[piece.Up].Low.Nm, b.part.Extent[piece.Up].Low.Nm)
	})
	below := map[address.Address]*bridge{}
	for _, b := range upwards {
		if !b.feet {
			e.held(b, below)
		}
		below[b.part.Address] = b
	}
}

// held narrows a bridge to the widest gap that the firm uprights leave which stand under
// it, or are let into its underside, between its ends. Of those in that gap which go down
// with what they stand on, the one nearest its middle counts, as if it stood there.
func (e *estimator) held(b *bridge, below map[address.Address]*bridge) {
	under := b.part.Extent[piece.Up].Low.Nm
	var firm []piece.Extent
	type soft struct {
		on *bridge
		at piece.Extent
	}
	var softs []soft
	for i := range e.Piece.Parts {
		q := &e.Piece.Parts[i]
		x, at := q.Extent[piece.Up], q.Extent[b.axis]
		if x.Low.Nm >= under || x.High.Nm < under || !upright(q, b.axis) || !meets(b.part, q, 1-b.axis) || at.Low.Nm <= b.from.Nm || at.High.Nm >= b.to.Nm {
			continue
		}
		switch on, stands := e.footing(q, b.axis, below); {
		case stands && on == nil:
			firm = append(firm, at)
		case stands:
			softs = append(softs, soft{on, at})
		}
	}
	b.from, b.to = widest(b.from, b.to, firm)
	middle := func(x piece.Extent) unit.Length { return (x.Low.Nm + x.High.Nm - b.from.Nm - b.to.Nm).Abs() }
	for _, s := range softs {
		within := s.at.Low.Nm > b.from.Nm && s.at.High.Nm < b.to.Nm
		if !within || s.on.above != nil && s.on.above != b || b.on != nil && middle(s.at) >= middle(b.at) {
			continue
		}
		if b.on != nil {
			b.on.above = nil
		}
		b.on, b.at, s.on.above = s.on, s.at, b
	}
	if b.on != nil {
		b.beside[0], b.beside[1] = widest(b.from, b.to, []piece.Extent{b.at})
	}
}

// widest returns the widest gap that props leave between two ends.
func widest(from, to piece.Figure, props []piece.Extent) (low, high piece.Figure) {
	props = slices.Clone(props)
	slices.SortFunc(props, func(x, y piece.Extent) int { return cmp.Compare(x.Low.Nm, y.Low.Nm) })
	for _, x := range append(props, piece.Extent{Low: to, High: to}) {
		if gap := x.Low.Nm - from.Nm; gap > high.Nm-low.Nm {
			low, high = from, x.Low
		}
		if x.High.Nm > from.Nm {
			from = x.High
		}
	}
	return low, high
}

// footing tells whether an upright stands on anything: the floor, or what it is jointed to
// below; what hangs from a shelf does not hold it up. On is the bridge that it stands on
// within its span, if that bridges along the same axis; nil where it stands firmly.
func (e *estimator) footing(q *piece.Part, axis piece.Axis, below map[address.Address]*bridge) (on *bridge, stands bool) {
	if q.Extent[piece.Up].Low.Nm == e.floor {
		return nil, true
	}
	at := q.Extent[axis]
	for _, l := range e.at[q.Address] {
		other := e.other(l, q)
		if other == nil || other.Extent[piece.Up].Low.Nm >= q.Extent[piece.Up].Low.Nm || l.Region[piece.Up].Low.Nm > q.Extent[piece.Up].Low.Nm {
			continue
		}
		b := below[other.Address]
		if b == nil || b.axis != axis || at.Low.Nm <= b.from.Nm || at.High.Nm >= b.to.Nm {
			return nil, true
		}
		on, stands = b, true
	}
	return on, stands
}
