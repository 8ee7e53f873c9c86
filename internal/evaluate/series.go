package evaluate

import (
	"scantling/internal/address"
	"slices"

	"scantling/internal/formula"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/share"
	"scantling/internal/unit"
)

// row is a series on one part while it is worked out.
type row struct {
	cutting
	axis   piece.Axis // across, in the piece
	local  piece.Local
	whole  piece.Figure
	slots  []mouth
	open   piece.Side
	run    piece.Local
	length piece.Figure
}

// mouth is one cut of the row: what it holds, its size, and where it came to lie
// along the part's own axis.
type mouth struct {
	thing                *thing
	key                  string
	width, depth, corner piece.Figure
	cutter               string
	// near and far limit the mouth at the surface, from and to the cutter's path,
	// which is wider where the cutter does not go down to its radius.
	near, far, from, to piece.Figure
	cut                 address.Address
}

// collectSeries writes a series block's rows and cuts into the piece.
func (d *decl) collectSeries() {
	if !d.present() {
		return
	}
	e := env{s: d.s}
	if !d.block.Has("on") {
		d.s.missing(d.block, "on")
		return
	}
	for _, x := range e.selections(d.block, "on", "part") {
		for _, n := range x.nodes() {
			p, ok := n.(*part)
			if !ok || !p.done {
				continue
			}
			r := &row{cutting: cutting{d: d, b: d.block, e: e, p: p}}
			r.out = piece.Cut{Address: p.addr.Child(slug(d.name)), Part: p.addr, Where: d.block.Where}
			r.name = string(r.out.Address)
			if r.prepare() && r.fill() && r.place() && d.s.w.take(d.block.Where, len(r.slots)) {
				r.write()
			}
		}
	}
}

// prepare works out the side, the run and what the row lies across.
func (r *row) prepare() bool {
	word := r.e.words(r.b, "kind")
	kind, ok := slotKinds[word]
	if !ok {
		if !r.b.Has("kind") {
			r.d.s.missing(r.b, "kind")
		} else if word != "" {
			r.w().badWord(r.e, r.b, "kind", word, "channel, groove, trough, housing, notch, recess")
		}
		return false
	}
	r.out.Kind = kind
	r.out.Cutter, r.out.After = r.cutter(), r.after()
	side, open, ok := r.cutting.open("side")
	if !ok {
		return false
	}
	run, ok := r.cutting.run(open)
	if !ok {
		return false
	}
	r.open, r.axis = side, 3-open-run
	r.run, _ = r.p.form().frame.LocalOf(run)
	r.local, _ = r.p.form().frame.LocalOf(r.axis)
	r.whole, r.length = r.p.sizeAlong(r.axis), r.p.sizeAlong(run)
	return true
}

// fill works out what is cut: a channel for each thing and the spare ones, or so
// many alike.
func (r *row) fill() bool {
	if r.b.Has("holds") {
		return r.holds()
	}
	n, _, ok := r.d.s.maker.Count(r.e.value(r.b, "count", ""), 1, maxRepeat, "")
	if !r.b.Has("count") {
		r.d.s.missing(r.b, "count")
		return false
	}
	width, okW := r.need("width")
	depth, okD := r.need("depth")
	if !ok || !okW || !okD || !r.w().positive(width, r.b.Attribute("width"), r.name+".width") || !r.w().positive(depth, r.b.Attribute("depth"), r.name+".depth") {
		return false
	}
	for range n {
		r.slots = append(r.slots, mouth{width: r.w().figure(width), depth: r.w().figure(depth), cutter: r.out.Cutter})
	}
	return true
}

// holds makes a channel for each thing by the cutter of the shop that takes it,
// then spare ones like the last.
func (r *row) holds() bool {
	v := r.e.value(r.b, "holds", "")
	if !v.OK() {
		return false
	}
	if c, ok := v.Ref.(*contents); ok && v.Kind == formula.Reference {
		v = c.all()
	}
	var like *thing
	for _, item := range v.Items {
		t, ok := item.Ref.(*thing)
		if !ok {
			r.w().fault(CodeWrongReference, item.Where, message.Word("want", "kind.things"), message.Word("got", item.Word()))
			return false
		}
		like = t
		m, ok := r.channel(t)
		if !ok {
			return false
		}
		m.thing, m.key = t, t.key
		r.slots = append(r.slots, m)
	}
	n := len(r.slots)
	if r.b.Has("slots") {
		var ok bool
		if n, _, ok = r.d.s.maker.Count(r.e.value(r.b, "slots", ""), 0, maxThings, ""); !ok {
			return false
		}
	}
	if n < len(r.slots) {
		r.w().fault(CodeTooFewSlots, r.b.Attribute("slots").Value.Place(), message.Count("things", len(r.slots)), message.Count("slots", n))
		return false
	}
	return r.spares(n, like, v)
}

func (r *row) spares(n int, like *thing, v formula.Value) bool {
	if n == len(r.slots) {
		return true
	}
	if c, ok := v.Ref.(*contents); like == nil && ok && c.all().OK() && len(c.made) > 0 {
		like = c.made[len(c.made)-1]
	}
	if like == nil {
		r.w().fault(CodeNoSpare, r.b.Where, message.Text("name", r.d.name))
		return false
	}
	m, ok := r.channel(like)
	if !ok {
		return false
	}
	for i := len(r.slots); i < n; i++ {
		m.key = "spare " + string(rune('a'+(i-len(v.Items))%26))
		if i-len(v.Items) >= 26 {
			m.key = "spare " + itoa(i-len(v.Items)+1)
		}
		r.slots = append(r.slots, m)
	}
	return true
}

// channel works out the channel of one rod: its cutter, depth and mouth.
func (r *row) channel(t *thing) (mouth, bool) {
	w := r.w()
	pitch, ok := r.need("pitch")
	if !ok {
		return mouth{}, false
	}
	p, _ := pitch.Is.Length()
	widest := p - share.LeastLand(0).Value
	cutters, ids := w.roundNoses(r.out.Cutter)
	d, _ := t.diameter.Is.Length()
	found, err := share.ChannelFor(d, cutters, max(widest, 1))
	if err != nil {
		w.refused(err, r.b.Where)
		return mouth{}, false
	}
	land := w.ledger.Given(ledger.Entry{Name: "least-land", Value: unit.OfLength(share.LeastLand(0).Value), Origin: ledger.Reference, Source: share.LeastLand(0).Source.Key, Status: string(share.LeastLand(0).Source.Status)})
	limit := w.make("", ledger.OpSub, pitch.Entry, land)
	make := func(what string) piece.Figure {
		id, err := w.ledger.Make(r.name+"["+quoted(t.key)+"]."+what, ledger.OpCall, "channel_"+what, t.diameter.Entry, limit, ids)
		if err != nil {
			return piece.Figure{}
		}
		return w.ledger.Figure(id)
	}
	return mouth{width: make("mouth"), depth: make("depth"), corner: make("radius"), cutter: found.Cutter.Name}, true
}

// place lays the mouths along the row: at one pitch from centre to centre, from
// the margin on or in the middle, in the order of the document.
func (r *row) place() bool {
	w := r.w()
	if len(r.slots) == 0 {
		return true
	}
	pitch, ok := r.need("pitch")
	if !ok || !w.positive(pitch, r.b.Attribute("pitch"), r.name+".pitch") {
		return false
	}
	step := w.figure(pitch)
	between := w.ledger.Times("", step, int64(len(r.slots)-1), 1)
	var first piece.Figure
	switch word := r.e.words(r.b, "place"); {
	case r.b.Has("margin") && word == "":
		margin, ok := r.need("margin")
		if !ok {
			return false
		}
		first = w.ledger.Sum(r.name+".first", w.figure(margin), w.ledger.Half("", r.slots[0].width))
	case word == "centred" || word == "centered" || word == "" && !r.b.Has("place"):
		first = w.ledger.Half(r.name+".first", w.ledger.Less("", r.whole, between))
	default:
		if word != "" {
			w.badWord(r.e, r.b, "place", word, "centred")
		}
		return false
	}
	for i := range r.slots {
		centre := first
		if i > 0 {
			centre = w.ledger.Sum("", first, w.ledger.Times("", step, int64(i), 1))
		}
		m := &r.slots[i]
		at := r.cutting.local(r.axis, quantity(centre))
		m.near = w.ledger.Round(r.name+".near", w.ledger.Less("", at, w.ledger.Half("", m.width)), unit.Nanometre, unit.Nearest)
		m.far = w.ledger.Sum(r.name+".far", m.near, m.width)
		m.from, m.to = m.near, m.far
		if m.depth.Nm < m.corner.Nm {
			m.from = w.ledger.Round(r.name+".from", w.ledger.Less("", at, m.corner), unit.Nanometre, unit.Nearest)
			m.to = w.ledger.Sum(r.name+".to", m.from, m.corner, m.corner)
		}
	}
	return r.apart()
}

// apart sees to it that the mouths lie within the part and do not run into each
// other.
func (r *row) apart() bool {
	order := slices.Clone(r.slots)
	slices.SortFunc(order, func(a, b mouth) int { return int(a.near.Nm - b.near.Nm) })
	at := unit.Length(0)
	for i, m := range order {
		if m.near.Nm < at {
			code := CodeSeriesOverlap
			if i == 0 {
				code = CodeSeriesWide
			}
			r.w().fault(code, r.b.Where, message.Text("name", r.d.name), message.LengthRounded("over", at-m.near.Nm, unit.Up), message.Length("width", r.whole.Nm))
			return false
		}
		at = m.far.Nm
	}
	if at > r.whole.Nm {
		r.w().fault(CodeSeriesWide, r.b.Where, message.Text("name", r.d.name), message.LengthRounded("over", at-r.whole.Nm, unit.Up), message.Length("width", r.whole.Nm))
		return false
	}
	return true
}

// write puts the cuts and the sum of the row into the piece.
func (r *row) write() {
	w := r.w()
	start := w.ledger.Leaf(r.name+".from", 0, ledger.Derived, "")
	out := piece.Series{Address: r.out.Address, Part: r.p.addr, Kind: r.out.Kind, Across: r.local, Whole: r.whole, Where: r.b.Where}
	cuts := make([]piece.Cut, len(r.slots))
	for i, m := range r.slots {
		c := r.out
		c.Series, c.Nth, c.Key, c.Cutter = r.out.Address, i+1, m.key, m.cutter
		if m.key != "" {
			c.Address = r.p.addr.Keyed(slug(r.d.name), m.key)
		} else {
			c.Address = r.p.addr.Nth(slug(r.d.name), i+1)
		}
		c.Slot = &piece.Slot{Open: r.open, Run: r.run, From: start, To: r.length, StartOpen: true, EndOpen: true, Near: m.from, Far: m.to, Depth: m.depth, Corner: m.corner}
		cuts[i] = c
		r.slots[i].cut = c.Address
		if m.thing != nil {
			m.thing.in, m.thing.cut = r.p.addr, c.Address
		}
	}
	w.out.Cuts = append(w.out.Cuts, cuts...)
	order := slices.Clone(r.slots)
	slices.SortStableFunc(order, func(a, b mouth) int { return int(a.near.Nm - b.near.Nm) })
	at, word := start, "margin"
	for _, m := range order {
		land := w.ledger.Less(r.name+"."+word, m.near, at)
		out.Terms = append(out.Terms, piece.Term{Figure: land, Word: word},
			piece.Term{Air: true, Figure: w.ledger.Less(r.name+".mouth", m.far, m.near), Of: m.cut, Word: string(r.out.Kind)})
		at, word = m.far, "land"
	}
	out.Terms = append(out.Terms, piece.Term{Figure: w.ledger.Less(r.name+".margin", r.whole, at), Word: "margin"})
	w.out.Series = append(w.out.Series, out)
}
