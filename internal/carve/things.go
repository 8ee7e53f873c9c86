package carve

import (
	"strconv"

	"scantling/internal/address"
	"scantling/internal/carve/fault"
	"scantling/internal/formula"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/share"
	"scantling/internal/unit"
)

// holds makes a channel for each thing by the cutter of the shop that takes it,
// then spare ones like the last.
func (r *row) holds() bool {
	v, last := r.Things(r.Value("holds", ""))
	if !v.OK() {
		return false
	}
	var like Held
	for _, item := range v.Items {
		t, ok := r.thing(item)
		if !ok {
			return false
		}
		like = t
		m, ok := r.around(t)
		if !ok {
			return false
		}
		if m.key = t.Name(); m.key != "" {
			m.thing = t
		}
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
		r.Fault(fault.CodeTooFewSlots, r.Where("slots"), message.Count("things", len(r.slots)), message.Count("slots", n))
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
		r.Fault(fault.CodeNoSpare, r.Block.Where, message.Text("name", r.Name))
		return false
	}
	m, ok := r.around(like)
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

// bare is a size that stands in a list of things to hold.
type bare struct{ v formula.Value }

func (b bare) Name() string              { return "" } // it has no key
func (b bare) Size() formula.Value       { return b.v }
func (b bare) Lies(_, _ address.Address) {} // nobody asks

// thing reads one of the things that a row holds: of the contents, or a size.
func (r *row) thing(item formula.Value) (Held, bool) {
	if t, ok := item.Ref.(Held); ok {
		return t, true
	}
	if item.Kind == formula.Quantity || item.Kind == formula.Text {
		v, ok := r.Maker.Length(item, r.name+".holds")
		return bare{v}, ok && r.Positive(v, "holds", r.name+".holds")
	}
	r.Fault(formula.CodeWrongReference, item.Where, message.Word("want", "kind.things"), message.Word("got", item.Word()))
	return nil, false
}

// around is the mouth for one thing: a channel by the cutter that takes it, else as
// wide as the thing and its play.
func (r *row) around(t Held) (mouth, bool) {
	if r.out.Kind == piece.Channel {
		m, ok := r.channel(t)
		if ok && r.Has("depth") { // shallower or deeper than the half of the thing
			return r.nosed(m)
		}
		return m, ok
	}
	m := mouth{cutter: r.out.Cutter, width: r.figure(t.Size())}
	if m.width.Nm <= 0 {
		return m, false // what is wrong with the thing is told there
	}
	if r.Has("play") {
		play, ok := r.need("play")
		if !ok {
			return m, false
		}
		m.width = r.Maker.Ledger.Sum(r.name+".width", m.width, r.figure(play))
	}
	var ok bool
	m.depth, ok = r.deep()
	return m, ok
}

// channel works out the channel of one rod: its cutter, depth and mouth.
func (r *row) channel(t Held) (mouth, bool) {
	pitch, ok := r.widest()
	if !ok {
		return mouth{}, false
	}
	widest := pitch.Nm - share.LeastLand(0).Value
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
