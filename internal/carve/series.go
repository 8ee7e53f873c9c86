package carve

import (
	"cmp"
	"slices"

	"scantling/internal/address"
	"scantling/internal/carve/fault"
	"scantling/internal/formula"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// row is a series on one part while it is worked out.
type row struct {
	cutting
	lie   trench
	axis  piece.Axis // that the row lies along, in the piece
	local piece.Local
	whole piece.Figure
	slots []mouth
	fixed piece.Figure // of a row of holes: the centre along the third axis
	// inLine says that the cuts lie end to end, along their run; wide is then their
	// width, if it is known.
	inLine bool
	wide   formula.Value
}

// mouth is one cut of the row: what it holds, its size, and where it came to lie
// along the part's own axis.
type mouth struct {
	thing                Held
	key                  string
	width, depth, corner piece.Figure
	cutter               string
	// at is its middle, near and far limit the mouth at the surface, from and to
	// the cutter's path, which is wider where the cutter does not go down to its radius.
	near, far, from, to, at piece.Figure
	cut                     address.Address
}

// Series works out what a series block takes from one part: the cuts and the row
// that they add up to. False where something is wrong, which has been reported.
func Series(site Site) (piece.Series, []piece.Cut, bool) {
	r := &row{cutting: *newCutting(site)}
	if !r.prepare() || !r.fill() || !r.place() {
		return piece.Series{}, nil, false
	}
	return r.write()
}

// prepare works out the side, the run and what the row lies across.
func (r *row) prepare() bool {
	word := r.Words("kind")
	kind, ok := slotKinds[word]
	if !ok && word != "hole" {
		if !r.Has("kind") {
			r.Missing("kind")
		} else if word != "" {
			r.BadWord("kind", word, splitWords(seriesKindWords))
		}
		return false
	}
	r.out.Kind = kind
	r.out.Cutter = r.cutter()
	if word == "hole" {
		r.out.Kind = piece.Hole
		if ok = r.holes(); !ok {
			return false
		}
	} else if r.lie, ok = r.trench(); !ok {
		return false
	} else if !r.lined() {
		return false
	}
	r.local, _ = r.Part.Frame.LocalOf(r.axis)
	r.whole = r.size(r.axis)
	return true
}

const seriesKindWords = "channel, V channel, groove, trough, housing, mortise, notch, recess, hole"

// fill works out what is cut: one for each thing and the spare ones, or so many
// alike.
func (r *row) fill() bool {
	if r.Has("holds") {
		return r.holds()
	}
	n, ok := r.count()
	if !ok {
		return false
	}
	m, ok := r.plain()
	for range n {
		r.slots = append(r.slots, m)
	}
	return ok
}

// count is how many are cut: as said, or one more than there are pitches.
func (r *row) count() (int, bool) {
	if !r.Has("count") && r.Has("pitches") {
		v := r.Value("pitches", "")
		return min(len(v.Items)+1, maxCuts), v.OK()
	}
	n, _, ok := r.Maker.Count(r.Value("count", ""), 1, maxCuts, "")
	if !r.Has("count") {
		r.Missing("count")
		return 0, false
	}
	return n, ok
}

// plain is the mouth of one of many alike.
func (r *row) plain() (mouth, bool) {
	m := mouth{cutter: r.out.Cutter}
	if r.out.Kind == piece.Hole {
		v, ok := r.need("diameter")
		if !ok || !r.Positive(v, "diameter", r.name+".diameter") {
			return m, false
		}
		m.width = r.figure(v)
		m.depth, ok = r.deep()
		return m, ok
	}
	k, known := r.Shop.Cutter(r.out.Cutter)
	if r.out.Kind == piece.Channel && known && k.Tool.NoseRadius() > 0 && !r.Has("width") {
		return r.nosed(m)
	}
	width, depth, ok := r.section(r.lie)
	if r.inLine {
		r.wide = width
		width = formula.Value{}
	}
	if ok && r.inLine {
		width, ok = r.need("length")
		ok = ok && r.Positive(width, "length", r.name+".length")
	} else if ok && !width.OK() {
		width, ok = r.need("width")
		ok = ok && r.Positive(width, "width", r.name+".width")
	}
	m.width, m.depth = r.figure(width), depth
	return m, ok
}

// nosed is the mouth that a round nose leaves at the depth that is said.
func (r *row) nosed(m mouth) (mouth, bool) {
	l := r.Maker.Ledger
	k, _ := r.Shop.Cutter(cmp.Or(m.cutter, r.out.Cutter))
	v, ok := r.need("depth")
	if !ok || !r.Positive(v, "depth", r.name+".depth") {
		return m, false
	}
	m.depth = r.figure(v)
	m.corner = l.Figure(l.Given(ledger.Entry{Name: r.name + ".corner", Value: unit.OfLength(k.Tool.NoseRadius()), Origin: ledger.Bought, Where: k.Where}))
	half, err := l.Call("", "nose_reach", m.corner.Entry, m.depth.Entry)
	if err != nil {
		r.Maker.Refused(err, r.Block.Where)
		return m, false
	}
	m.width = l.Sum(r.name+".width", half, half)
	return m, true
}

// apart sees to it that the mouths lie within the part and do not run into each
// other.
func (r *row) apart() bool {
	order := slices.Clone(r.slots)
	slices.SortFunc(order, func(a, b mouth) int { return int(a.near.Nm - b.near.Nm) })
	at := unit.Length(0)
	for i, m := range order {
		if m.near.Nm < at {
			code := fault.CodeSeriesOverlap
			if i == 0 {
				code = fault.CodeSeriesWide
			}
			r.Fault(code, r.Block.Where, message.Text("name", r.Name), message.LengthRounded("over", at-m.near.Nm, unit.Up), message.Length("width", r.whole.Nm))
			return false
		}
		at = m.far.Nm
	}
	if at > r.whole.Nm {
		r.Fault(fault.CodeSeriesWide, r.Block.Where, message.Text("name", r.Name), message.LengthRounded("over", at-r.whole.Nm, unit.Up), message.Length("width", r.whole.Nm))
		return false
	}
	return true
}

// write puts the cuts and the sum of the row into the piece.
func (r *row) write() (out piece.Series, cuts []piece.Cut, ok bool) {
	start := r.Maker.Ledger.Leaf(r.name+".from", 0, ledger.Derived, "")
	out = piece.Series{Address: r.out.Address, Part: r.Part.Address, Kind: r.out.Kind, Across: r.local, Whole: r.whole, Where: r.Block.Where}
	cuts = make([]piece.Cut, len(r.slots))
	for i, m := range r.slots {
		c := r.out
		c.Series, c.Nth, c.Key, c.Cutter = r.out.Address, i+1, m.key, m.cutter
		if m.key != "" {
			c.Address = r.Keyed(m.key)
		} else {
			c.Address = r.Nth(i + 1)
		}
		if !r.one(&c, m) {
			return out, nil, false
		}
		cuts[i] = c
		r.slots[i].cut = c.Address
		if m.thing != nil {
			m.thing.Lies(r.Part.Address, c.Address)
		}
	}
	order := slices.Clone(r.slots)
	slices.SortStableFunc(order, func(a, b mouth) int { return int(a.near.Nm - b.near.Nm) })
	at, word := start, "margin"
	for _, m := range order {
		land := r.Maker.Ledger.Less(r.name+"."+word, m.near, at)
		out.Terms = append(out.Terms, piece.Term{Figure: land, Word: word},
			piece.Term{Air: true, Figure: r.Maker.Ledger.Less(r.name+".mouth", m.far, m.near), Of: m.cut, Word: string(r.out.Kind)})
		at, word = m.far, "land"
	}
	out.Terms = append(out.Terms, piece.Term{Figure: r.Maker.Ledger.Less(r.name+".margin", r.whole, at), Word: "margin"})
	return out, cuts, true
}

// one works out one cut of the row.
func (r *row) one(c *piece.Cut, m mouth) bool {
	if r.out.Kind == piece.Hole {
		return r.bored(c, m)
	}
	if r.inLine {
		return r.end(c, m)
	}
	s := &piece.Slot{Open: r.lie.side, Near: m.from, Far: m.to, Depth: m.depth, Corner: m.corner}
	s.Run, _ = r.Part.Frame.LocalOf(r.lie.run)
	if m.corner.Nm == 0 && !r.walls(s) {
		return false
	}
	if !r.along(s, r.lie.run) || !r.fits(s, r.lie.open, r.axis) {
		return false
	}
	c.Slot = s
	return true
}
