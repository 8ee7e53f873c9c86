package carve

import (
	"scantling/internal/address"
	"slices"
	"strconv"

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
	thing                Held
	key                  string
	width, depth, corner piece.Figure
	cutter               string
	// near and far limit the mouth at the surface, from and to the cutter's path,
	// which is wider where the cutter does not go down to its radius.
	near, far, from, to piece.Figure
	cut                 address.Address
}

// Series works out what a series block takes from one part: the cuts and the row
// that they add up to. False where something is wrong, which has been reported.
func Series(site Site) (piece.Series, []piece.Cut, bool) {
	r := &row{cutting: *newCutting(site)}
	if !r.prepare() || !r.fill() || !r.place() {
		return piece.Series{}, nil, false
	}
	series, cuts := r.write()
	return series, cuts, true
}

// prepare works out the side, the run and what the row lies across.
func (r *row) prepare() bool {
	word := r.Words("kind")
	kind, ok := slotKinds[word]
	if !ok {
		if !r.Has("kind") {
			r.Missing("kind")
		} else if word != "" {
			r.BadWord("kind", word, splitWords("channel, groove, trough, housing, notch, recess"))
		}
		return false
	}
	r.out.Kind = kind
	r.out.Cutter = r.cutter()
	side, open, ok := r.cutting.open("side")
	if !ok {
		return false
	}
	run, ok := r.cutting.run(open)
	if !ok {
		return false
	}
	r.open, r.axis = side, 3-open-run
	r.run, _ = r.Part.Frame.LocalOf(run)
	r.local, _ = r.Part.Frame.LocalOf(r.axis)
	r.whole, r.length = r.size(r.axis), r.size(run)
	return true
}

// fill works out what is cut: a channel for each thing and the spare ones, or so
// many alike.
func (r *row) fill() bool {
	if r.Has("holds") {
		return r.holds()
	}
	n, _, ok := r.Maker.Count(r.Value("count", ""), 1, maxCuts, "")
	if !r.Has("count") {
		r.Missing("count")
		return false
	}
	width, okW := r.need("width")
	depth, okD := r.need("depth")
	if !ok || !okW || !okD || !r.Positive(width, "width", r.name+".width") || !r.Positive(depth, "depth", r.name+".depth") {
		return false
	}
	for range n {
		r.slots = append(r.slots, mouth{width: r.figure(width), depth: r.figure(depth), cutter: r.out.Cutter})
	}
	return true
}

// holds makes a channel for each thing by the cutter of the shop that takes it,
// then spare ones like the last.
func (r *row) holds() bool {
	v, last := r.Things(r.Value("holds", ""))
	if !v.OK() {
		return false
	}
	var like Held
	for _, item := range v.Items {
		t, ok := item.Ref.(Held)
		if !ok {
			r.Fault(formula.CodeWrongReference, item.Where, message.Word("want", "kind.things"), message.Word("got", item.Word()))
			return false
		}
		like = t
		m, ok := r.channel(t)
		if !ok {
			return false
		}
		m.thing, m.key = t, t.Name()
		r.slots = append(r.slots, m)
	}
	n := len(r.slots)
	if r.Has("slots") {
		var ok bool
		if n, _, ok = r.Maker.Count(r.Value("slots", ""), 0, maxCuts, ""); !ok {
			return false
		}
	}
	if n < len(r.slots) {
		r.Fault(CodeTooFewSlots, r.Where("slots"), message.Count("things", len(r.slots)), message.Count("slots", n))
		return false
	}
	if like == nil {
		like = last
	}
	return r.spares(n, like, len(v.Items))
}

func (r *row) spares(n int, like Held, held int) bool {
	if n == len(r.slots) {
		return true
	}
	if like == nil {
		r.Fault(CodeNoSpare, r.Block.Where, message.Text("name", r.Name))
		return false
	}
	m, ok := r.channel(like)
	if !ok {
		return false
	}
	for i := len(r.slots); i < n; i++ {
		m.key = "spare " + string(rune('a'+(i-held)%26))
		if i-held >= 26 {
			m.key = "spare " + strconv.Itoa(i-held+1)
		}
		r.slots = append(r.slots, m)
	}
	return true
}

// channel works out the channel of one rod: its cutter, depth and mouth.
func (r *row) channel(t Held) (mouth, bool) {
	pitch, ok := r.need("pitch")
	if !ok {
		return mouth{}, false
	}
	p, _ := pitch.Is.Length()
	widest := p - share.LeastLand(0).Value
	cutters, ids := r.roundNoses(r.out.Cutter)
	d, _ := t.Size().Is.Length()
	found, err := share.ChannelFor(d, cutters, max(widest, 1))
	if err != nil {
		r.Maker.Refused(err, r.Block.Where)
		return mouth{}, false
	}
	land := r.Maker.Ledger.Given(ledger.Entry{Name: "least-land", Value: unit.OfLength(share.LeastLand(0).Value), Origin: ledger.Reference, Source: share.LeastLand(0).Source.Key, Status: string(share.LeastLand(0).Source.Status)})
	limit := r.make(ledger.OpSub, pitch.Entry, land)
	make := func(what string) piece.Figure {
		id, err := r.Maker.Ledger.Make(r.name+"["+strconv.Quote(t.Name())+"]."+what, ledger.OpCall, "channel_"+what, t.Size().Entry, limit, ids)
		if err != nil {
			return piece.Figure{}
		}
		return r.Maker.Ledger.Figure(id)
	}
	return mouth{width: make("mouth"), depth: make("depth"), corner: make("radius"), cutter: found.Cutter.Name}, true
}

// place lays the mouths along the row: at one pitch from centre to centre, from
// the margin on or in the middle, in the order of the document.
func (r *row) place() bool {
	if len(r.slots) == 0 {
		return true
	}
	pitch, ok := r.need("pitch")
	if !ok || !r.Positive(pitch, "pitch", r.name+".pitch") {
		return false
	}
	step := r.figure(pitch)
	between := r.Maker.Ledger.Times("", step, int64(len(r.slots)-1), 1)
	var first piece.Figure
	switch word := r.Words("place"); {
	case r.Has("margin") && word == "":
		margin, ok := r.need("margin")
		if !ok {
			return false
		}
		first = r.Maker.Ledger.Sum(r.name+".first", r.figure(margin), r.Maker.Ledger.Half("", r.slots[0].width))
	case word == "centred" || word == "centered" || word == "" && !r.Has("place"):
		first = r.Maker.Ledger.Half(r.name+".first", r.Maker.Ledger.Less("", r.whole, between))
	default:
		if word != "" {
			r.BadWord("place", word, splitWords("centred"))
		}
		return false
	}
	for i := range r.slots {
		centre := first
		if i > 0 {
			centre = r.Maker.Ledger.Sum("", first, r.Maker.Ledger.Times("", step, int64(i), 1))
		}
		m := &r.slots[i]
		at := r.cutting.local(r.axis, quantity(centre))
		m.near = r.Maker.Ledger.Round(r.name+".near", r.Maker.Ledger.Less("", at, r.Maker.Ledger.Half("", m.width)), unit.Nanometre, unit.Nearest)
		m.far = r.Maker.Ledger.Sum(r.name+".far", m.near, m.width)
		m.from, m.to = m.near, m.far
		if m.depth.Nm < m.corner.Nm {
			m.from = r.Maker.Ledger.Round(r.name+".from", r.Maker.Ledger.Less("", at, m.corner), unit.Nanometre, unit.Nearest)
			m.to = r.Maker.Ledger.Sum(r.name+".to", m.from, m.corner, m.corner)
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
			r.Fault(code, r.Block.Where, message.Text("name", r.Name), message.LengthRounded("over", at-m.near.Nm, unit.Up), message.Length("width", r.whole.Nm))
			return false
		}
		at = m.far.Nm
	}
	if at > r.whole.Nm {
		r.Fault(CodeSeriesWide, r.Block.Where, message.Text("name", r.Name), message.LengthRounded("over", at-r.whole.Nm, unit.Up), message.Length("width", r.whole.Nm))
		return false
	}
	return true
}

// write puts the cuts and the sum of the row into the piece.
func (r *row) write() (piece.Series, []piece.Cut) {
	start := r.Maker.Ledger.Leaf(r.name+".from", 0, ledger.Derived, "")
	out := piece.Series{Address: r.out.Address, Part: r.Part.Address, Kind: r.out.Kind, Across: r.local, Whole: r.whole, Where: r.Block.Where}
	cuts := make([]piece.Cut, len(r.slots))
	for i, m := range r.slots {
		c := r.out
		c.Series, c.Nth, c.Key, c.Cutter = r.out.Address, i+1, m.key, m.cutter
		if m.key != "" {
			c.Address = r.Keyed(m.key)
		} else {
			c.Address = r.Nth(i + 1)
		}
		c.Slot = &piece.Slot{Open: r.open, Run: r.run, From: start, To: r.length, StartOpen: true, EndOpen: true, Near: m.from, Far: m.to, Depth: m.depth, Corner: m.corner}
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
	return out, cuts
}
