package strength

import (
	"cmp"
	"slices"

	"scantling/internal/address"
	"scantling/internal/analysis/estimate"
	"scantling/internal/figure"
	"scantling/internal/joinery"
	"scantling/internal/ledger"
	"scantling/internal/mechanics"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// The shelf loads of the Architectural Woodwork Standards, and the greatest load of a
// shelf: 50 and 40 lb to the square foot, 200 lb in all.
var sourceLoad = figure.Source{Key: "strength.shelf-load", Title: "Architectural Woodwork Standards", Edition: "1st edition, 2009", Clause: "4.4.14.10", Status: figure.Read}

// bridge is a part that lies flat between supports.
type bridge struct {
	part *piece.Part
	kind string
	axis piece.Axis
	// from and to are the inner faces of its supports, of the widest gap between two.
	from, to piece.Figure
	// cross is how far it bridges the other way, where it is held at all four edges.
	cross piece.Figure
	// feet says that it rests on what stands under it, and on no joints.
	feet bool
	// whole is how far it bridges in all, over supports between: what it carries is
	// shared out over that.
	whole [2]piece.Figure
	// on is the bridge on which the upright stands that is under it, and above the one on
	// an upright that stands on it; nil where there is none.
	on, above *bridge
	// at is where the upright under it stands, beside the wider part of its span beside
	// that.
	at     piece.Extent
	beside [2]piece.Figure
	// load is what it carries, once asked for.
	load *plan.Estimate
}

// shelves lists all parts that lie flat between supports, with what they carry.
func (e *estimator) shelves() []plan.Shelf {
	var bridges []*bridge
	for i := range e.Piece.Parts {
		p := &e.Piece.Parts[i]
		up, _ := p.Frame.Thickness.Axis()
		if up != piece.Up || p.Extent[piece.Up].Low.Nm == e.floor || p.Form == piece.Round || p.Form == piece.Bought || p.Tilt != nil {
			continue
		}
		if b, ok := e.bridge(p); ok {
			bridges = append(bridges, &b)
		}
	}
	e.prop(bridges)
	var out []plan.Shelf
	for _, b := range bridges {
		out = append(out, e.shelf(b))
	}
	return out
}

// bridge finds what a flat part rests on: joints at two opposite ends, of two pairs the
// nearer; or else what stands under it.
func (e *estimator) bridge(p *piece.Part) (bridge, bool) {
	var best bridge
	found := false
	for _, axis := range []piece.Axis{piece.Right, piece.Back} {
		from, to, ok := e.ends(p, axis)
		if ok && (!found || to.Nm-from.Nm < best.to.Nm-best.from.Nm) {
			best, found = bridge{part: p, kind: e.kind(p), axis: axis, from: from, to: to}, true
		}
	}
	if found {
		best.whole = [2]piece.Figure{best.from, best.to}
		if from, to, ok := e.ends(p, 1-best.axis); ok {
			best.cross = e.Ledger.Less(string(p.Address)+".shelf.cross", to, from)
		}
		return best, true
	}
	best, found = e.onFeet(p)
	best.feet = true
	best.whole = [2]piece.Figure{best.from, best.to}
	return best, found
}

// ends returns the inner faces of the joints at both ends of a part along an axis.
func (e *estimator) ends(p *piece.Part, axis piece.Axis) (from, to piece.Figure, ok bool) {
	low, high := false, false
	middle := (p.Extent[axis].Low.Nm + p.Extent[axis].High.Nm) / 2
	for _, l := range e.at[p.Address] {
		entry, _ := l.Entry.Axis()
		other := e.other(l, p)
		if entry != axis && l.Kind != piece.RebateJoint || other == nil || !upright(other, axis) {
			continue
		}
		switch r := l.Region[axis]; {
		case r.High.Nm < middle && (!low || r.High.Nm > from.Nm):
			from, low = r.High, true
		case r.Low.Nm > middle && (!high || r.Low.Nm < to.Nm):
			to, high = r.Low, true
		}
	}
	return from, to, low && high && to.Nm > from.Nm && from.Entry != 0 && to.Entry != 0
}

func (e *estimator) other(l *joinery.Lowered, p *piece.Part) *piece.Part {
	if l.A == p.Address {
		return e.parts[l.B]
	}
	return e.parts[l.A]
}

// upright reports whether a part stands across an axis: it is higher than it is thick
// along the axis.
func upright(p *piece.Part, axis piece.Axis) bool {
	return p.Extent[piece.Up].Size() > p.Extent[axis].Size()
}

// kind names what a jointed part is in its group: the lowest is a bottom, the highest a
// top.
func (e *estimator) kind(p *piece.Part) string {
	lowest, highest := true, true
	for i := range e.Piece.Parts {
		q := &e.Piece.Parts[i]
		t, _ := q.Frame.Thickness.Axis()
		if q.Group != p.Group || q.Address == p.Address || t != piece.Up {
			continue
		}
		lowest = lowest && q.Extent[piece.Up].Low.Nm > p.Extent[piece.Up].Low.Nm
		highest = highest && q.Extent[piece.Up].High.Nm < p.Extent[piece.Up].High.Nm
	}
	switch {
	case lowest && !(highest && e.of(p.Address) == nil), lowest && e.low(p):
		return "bottom"
	case highest && !lowest:
		return "top"
	}
	return "shelf"
}

// low reports whether a part lies in the lowest quarter of what its group takes up.
func (e *estimator) low(p *piece.Part) bool {
	x := p.Extent[piece.Up]
	from, to := x.Low.Nm, x.High.Nm
	for i := range e.Piece.Parts {
		if q := &e.Piece.Parts[i]; q.Group == p.Group {
			from, to = min(from, q.Extent[piece.Up].Low.Nm), max(to, q.Extent[piece.Up].High.Nm)
		}
	}
	return x.Low.Nm-from < (to-from)/4
}

// onFeet finds parts that stand under a flat part: the widest gap between them along
// either axis is what it bridges.
func (e *estimator) onFeet(p *piece.Part) (bridge, bool) {
	best, found := bridge{part: p, kind: "bottom on feet"}, false
	if p.Extent[piece.Up].Low.Nm > (e.floor+e.top)/2 {
		best.kind = "top"
	}
	for _, axis := range []piece.Axis{piece.Right, piece.Back} {
		var feet []piece.Extent
		for i := range e.Piece.Parts {
			q := &e.Piece.Parts[i]
			if q != p && q.Extent[piece.Up].High.Nm == p.Extent[piece.Up].Low.Nm && meets(p, q, piece.Right) && meets(p, q, piece.Back) {
				feet = append(feet, q.Extent[axis])
			}
		}
		slices.SortFunc(feet, func(a, b piece.Extent) int { return cmp.Compare(a.Low.Nm, b.Low.Nm) })
		for i := 1; i < len(feet); i++ {
			end := feet[i-1].High
			if gap := feet[i].Low.Nm - end.Nm; gap > 0 && (!found || gap > best.to.Nm-best.from.Nm) {
				best.axis, best.from, best.to, found = axis, end, feet[i].Low, true
			}
			if end.Nm > feet[i].High.Nm {
				feet[i].High = end // it reaches farther
			}
		}
	}
	return best, found
}

func meets(p, q *piece.Part, a piece.Axis) bool {
	return min(p.Extent[a].High.Nm, q.Extent[a].High.Nm) > max(p.Extent[a].Low.Nm, q.Extent[a].Low.Nm)
}

// shelf works out one part under all its loads.
func (e *estimator) shelf(b *bridge) plan.Shelf {
	p, sag := b.part, e.sagger(b)
	name, span := sag.name, sag.span
	out := plan.Shelf{
		Part: p.Address, Kind: b.kind, Span: span,
		Seen: e.seen(name, span), Design: e.Ledger.Times(name+".design", span, 1, 600), Allowed: e.Ledger.Times(name+".allowed", span, 1, 144),
	}
	m, _ := e.wood(p)
	out.Across = sag.local != piece.AlongLength && !m.Sheet
	if b.on != nil {
		out.On = b.on.part.Address
	}
	if e.of(p.Address) == nil && b.kind != "bottom" {
		out.Loads = append(out.Loads, sag.pressed("books", mechanics.PSF(50), sourceLoad), sag.pressed("other", mechanics.PSF(40), sourceLoad))
	}
	if x, ok := e.houseLoad(); ok {
		out.Loads = append(out.Loads, sag.pressed("shelf load", x, figure.Source{Key: "house.shelf load", Status: figure.Stated}))
	}
	if b.on == nil && b.above == nil {
		out.Loads = append(out.Loads, sag.under("contents", sag.carries()))
	} else {
		out.Loads = append(out.Loads, e.stacked(b, sag))
	}
	return out
}

// sagger prepares to work out the sag of a bridge.
func (e *estimator) sagger(b *bridge) sagger {
	p := b.part
	name := string(p.Address) + ".shelf"
	local, _ := p.Frame.LocalOf(b.axis)
	wide := p.Sizes()[piece.AlongWidth]
	if local == piece.AlongWidth {
		wide = p.Length
	}
	return sagger{e, p, name, e.Ledger.Less(name+".span", b.to, b.from), e.Ledger.Less(name+".whole", b.whole[1], b.whole[0]), b.cross, wide, local}
}

// houseLoad is the house rule "shelf load", in kilopascals.
func (e *estimator) houseLoad() (mechanics.Pressure, bool) {
	if e.Shop == nil {
		return 0, false
	}
	r, ok := e.Shop.Rule("shelf load")
	if !ok || !r.Value.IsNumeric() {
		return 0, false
	}
	return mechanics.Pressure(r.Value.Float()), true
}

// sagger works out the sag of one part.
type sagger struct {
	*estimator
	part                     *piece.Part
	name                     string
	span, whole, cross, wide piece.Figure
	local                    piece.Local // along the span
}

// pressed is a load spread evenly.
func (s sagger) pressed(name string, p mechanics.Pressure, source figure.Source) plan.ShelfSag {
	kpa := s.maker.Given("pressure "+name, estimate.Value(unit.DimUntyped, float64(p)), ledger.Reference, source.String())
	load := s.maker.Estimate(s.name+"."+name, "spread load", "", source, plan.NoLoad, kpa, estimate.Of(s.span), estimate.Of(s.wide))
	return s.under(name, load)
}

// carries is its own weight and all that rests on it: contents, loose parts, and
// groups that slide on it, with what lies in them.
func (s sagger) carries() plan.Estimate {
	var loads []plan.Estimate
	rests := map[address.Address]bool{s.part.Address: true}
	for i := range s.Piece.Parts {
		p := &s.Piece.Parts[i]
		if m := s.of(p.Address); m != nil && m != s.of(s.part.Address) && s.on(m.low[piece.Up], m.low, m.high) || len(s.at[p.Address]) == 0 && s.on(p.Extent[piece.Up].Low, lows(p), highs(p)) {
			rests[p.Address] = true
			loads = append(loads, s.mass(p))
		}
	}
	for _, c := range s.cargo {
		if rests[c.on] {
			loads = append(loads, c.mass)
		}
	}
	if len(loads) == 0 {
		lacks := plan.NoLoad
		if slices.ContainsFunc(s.cargo, func(c cargo) bool { return c.on == "" }) {
			lacks = plan.NoPlace // something stands somewhere
		}
		return plan.Estimate{Missing: []plan.Datum{lacks}}
	}
	all := s.sum(s.name+".carries", append(loads, s.mass(s.part))...)
	weight := s.maker.Estimate(s.name+".weight", "weight of a mass", "", all.Source, plan.NoMass, estimate.Again(all))
	if s.span.Nm != s.whole.Nm {
		weight = s.maker.Estimate(s.name+".share", "share of a load", "", all.Source, plan.NoMass, estimate.Again(weight), estimate.Of(s.span), estimate.Of(s.whole))
	}
	return weight
}

// on reports whether a body that begins at a height rests on the part, or slides on it
// with no more than a millimetre between.
func (s sagger) on(bottom piece.Figure, low, high [3]piece.Figure) bool {
	gap := bottom.Nm - s.part.Extent[piece.Up].High.Nm
	if gap < 0 || gap > unit.Millimetre {
		return false
	}
	for _, a := range []piece.Axis{piece.Right, piece.Back} {
		if min(s.part.Extent[a].High.Nm, high[a].Nm) <= max(s.part.Extent[a].Low.Nm, low[a].Nm) {
			return false
		}
	}
	return true
}

func lows(p *piece.Part) [3]piece.Figure {
	return [3]piece.Figure{p.Extent[0].Low, p.Extent[1].Low, p.Extent[2].Low}
}

func highs(p *piece.Part) [3]piece.Figure {
	return [3]piece.Figure{p.Extent[0].High, p.Extent[1].High, p.Extent[2].High}
}

func (s sagger) under(name string, load plan.Estimate) plan.ShelfSag {
	out := plan.ShelfSag{Case: name, Load: load}
	stiff, rigid, creep := s.stiffness()
	out.AtOnce = s.maker.Estimate(s.name+"."+name+".sag", "sag", "", mechanics.SourceBeam, plan.NoStiffness,
		estimate.Again(s.oneWay(name, load, stiff)), estimate.Of(s.span), estimate.Of(s.wide), estimate.Of(s.part.Thickness), stiff, rigid)
	out.Lasting = s.maker.Estimate(s.name+"."+name+".lasting", "sag after years", "", creepSource, plan.NoStiffness, estimate.Again(out.AtOnce), creep)
	return out
}

var creepSource = figure.Source{Key: "mechanics.creep", Title: "EN 1995-1-1", Edition: "2004", Clause: "Table 3.2", Status: figure.Memory}
