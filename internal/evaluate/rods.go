package evaluate

import (
	"strings"

	"scantling/internal/address"
	"scantling/internal/document"
	"scantling/internal/formula"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/share"
	"scantling/internal/stow"
	"scantling/internal/unit"
)

const maxThings = 4096

// thing is one rod.
type thing struct {
	of  *contents
	key string
	// diameter of a rod with flats is its size across corners, flats that across
	// flats.
	diameter, long, flats formula.Value
	headWidth, headLength formula.Value
	in, cut               address.Address
	entry                 ledger.ID
	hasHead               bool
}

func wantSpace() []message.Arg {
	return []message.Arg{message.Word("want", "kind.space"), message.Word("got", "kind.reference")}
}

func (c *contents) rodMember(name string) (formula.Value, bool) {
	switch name {
	case "play", "finger", "lining":
		return c.room(name), true
	case "length":
		return c.length(), true
	case "head":
		return c.head(), true
	case "things":
		return c.all(), true
	case "thickest":
		return c.thickest(), true
	case "corners":
		if _, _, ok := c.sides(); ok {
			return c.thickest(), true
		}
	case "flats":
		if _, _, ok := c.sides(); ok {
			return c.greatest("flats", func(t *thing) formula.Value { return t.flats }), true
		}
	case "pitch":
		return c.sum("pitch", c.widest(), c.room("finger")), true
	case "place":
		return c.sum("place", c.length(), c.room("play")), true
	case "round":
		return c.called("round", "least_round", c.thickest(), c.room("lining")), true
	case "count":
		if !c.all().OK() {
			return formula.Value{}, true
		}
		id := c.s.w.ledger.Given(ledger.Entry{Name: c.name() + ".count", Value: unit.OfCount(len(c.made)), Origin: ledger.Derived})
		return formula.Value{Kind: formula.Quantity, Is: unit.OfCount(len(c.made)), Entry: id}, true
	case "mass":
		m, ok := stow.Mass(c.s.reader(c.b), c.name())
		if !ok || m.Entry == 0 {
			return formula.Value{}, !ok
		}
		return formula.Value{Kind: formula.Quantity, Is: m.Value, Entry: m.Entry}, true
	}
	return formula.Value{}, false
}

func (c *contents) sum(name string, terms ...formula.Value) formula.Value {
	ids := make([]ledger.ID, len(terms))
	for i, t := range terms {
		if !t.OK() {
			return formula.Value{}
		}
		ids[i] = t.Entry
	}
	return quantity(c.s.w.ledger.Figure(c.s.w.make(c.name()+"."+name, ledger.OpAdd, ids...)))
}

// called makes a length by one of the trade's functions; a refusal is reported.
func (c *contents) called(name, fn string, args ...formula.Value) formula.Value {
	ids := make([]ledger.ID, len(args))
	for i, a := range args {
		if !a.OK() {
			return formula.Value{}
		}
		ids[i] = a.Entry
	}
	id, err := c.s.w.ledger.Make(c.name()+"."+name, ledger.OpCall, fn, ids...)
	if err != nil {
		c.s.maker.Refused(err, c.b.Where)
		return formula.Value{}
	}
	return quantity(c.s.w.ledger.Figure(id))
}

func (c *contents) length() formula.Value {
	name := c.name() + ".length"
	return get(c.s.w, &c.long, func() string { return name }, c.b.Where, func() formula.Value {
		v, ok := c.s.reader(c.b).Above("length", name)
		if !ok {
			return formula.Value{}
		}
		return v
	})
}

// sides is how many flats the rods have; false for round ones.
func (c *contents) sides() (int, formula.Value, bool) {
	if !c.b.Has("sides") {
		return 0, formula.Value{}, false
	}
	n, count, ok := c.s.maker.Count(env{s: c.s}.value(c.b, "sides", ""), 0, maxThings, "")
	if !ok {
		return 0, formula.Value{}, false
	}
	if err := (share.Prism{Sides: n, Corners: unit.Millimetre}).Check(); err != nil {
		c.s.maker.Refused(err, c.b.Attribute("sides").Value.Place())
		return 0, formula.Value{}, false
	}
	return n, count, true
}

// head returns the head's diameter and length as an object; an empty one where
// the rods have none.
func (c *contents) head() formula.Value {
	name := c.name() + ".head"
	return get(c.s.w, &c.heads, func() string { return name }, c.b.Where, func() formula.Value {
		if !c.b.Has("head") {
			return formula.Value{Kind: formula.Object, Where: c.b.Where}
		}
		v, ok := c.s.w.headOf(c.s.maker, env{s: c.s}.value(c.b, "head", name), name)
		if !ok {
			return formula.Value{}
		}
		return v
	})
}

// headOf reads { diameter, length } of a rod's head.
func (w *world) headOf(m *formula.Maker, v formula.Value, name string) (formula.Value, bool) {
	if !v.OK() {
		return v, false
	}
	if v.Kind != formula.Object {
		w.fault(formula.CodeWrongKind, v.Where, message.Word("got", v.Word()), message.Word("want", "kind.object"))
		return formula.Value{}, false
	}
	out := formula.Value{Kind: formula.Object, Where: v.Where}
	for _, want := range []string{"diameter", "length"} {
		f, found := v.Field(want)
		if !found {
			if len(v.Fields) == 0 {
				break // no head at all
			}
			w.fault(formula.CodeMissing, v.Where, message.Text("name", want), message.Text("block", "head"))
			return formula.Value{}, false
		}
		l, ok := m.Length(f, "")
		if !ok {
			return formula.Value{}, false
		}
		l.Where = f.Where
		out.Fields = append(out.Fields, formula.Field{Name: want, Value: l})
	}
	for _, f := range v.Fields {
		if f.Name != "diameter" && f.Name != "length" {
			w.fault(document.CodeUnknownAttribute, f.Value.Where, message.Text("word", f.Name), message.Text("block", "head"))
			return formula.Value{}, false
		}
	}
	return out, true
}

// all returns the rods as a list that the ledger knows, in order.
func (c *contents) all() formula.Value {
	return get(c.s.w, &c.things, func() string { return c.name() }, c.b.Where, func() formula.Value {
		switch c.kind() {
		case "":
			return formula.Value{}
		case stow.Rod:
			return c.make()
		}
		c.s.w.fault(formula.CodeWrongKind, c.b.Where, message.Word("got", "contents."+c.kind()), message.Word("want", "kind.things"))
		return formula.Value{}
	})
}

func (c *contents) make() formula.Value {
	w, e := c.s.w, env{s: c.s}
	if !c.b.Has("rod") {
		c.s.missing(c.b, "rod")
		return formula.Value{}
	}
	sizes := e.value(c.b, "rod", "")
	each := 1
	if c.b.Has("each") {
		var ok bool
		if each, _, ok = c.s.maker.Count(e.value(c.b, "each", ""), 1, maxThings, ""); !ok {
			return formula.Value{}
		}
	}
	head, long, play := c.head(), c.length(), c.room("play")
	if !sizes.OK() || !head.OK() || !long.OK() || !play.OK() {
		return formula.Value{}
	}
	if sizes.Kind != formula.List {
		sizes = formula.Value{Kind: formula.List, Items: []formula.Value{sizes}, Where: sizes.Where}
	}
	if n := len(sizes.Items) * each; n > maxThings {
		w.fault(CodeTooManyThings, c.b.Where, message.Count("got", n), message.Count("most", maxThings))
		return formula.Value{}
	}
	out := formula.Value{Kind: formula.List, Where: c.b.Where, Ref: c}
	seen := map[unit.Length]bool{}
	for _, item := range sizes.Items {
		d, ok := c.s.maker.Length(item, "")
		if !ok || !e.reader(c.b).Positive(d, "rod", c.name()+".rod") {
			return formula.Value{}
		}
		l, _ := d.Is.Length()
		if seen[l] {
			w.fault(CodeRodTwice, item.Where, message.Length("diameter", l))
			continue
		}
		seen[l] = true
		corners, flats, ok := c.across(d)
		if !ok {
			return formula.Value{}
		}
		for i := range each {
			out.Items = append(out.Items, c.newThing(&thing{of: c, key: keyOf(l, c.s.maker.Show, i, each), diameter: corners, flats: flats, long: long}, head))
		}
	}
	return c.s.maker.Listed(out, c.name())
}

// across returns a rod's size across corners and across flats, whichever was
// stated; a round rod has no flats.
func (c *contents) across(d formula.Value) (corners, flats formula.Value, ok bool) {
	_, count, has := c.sides()
	if !has {
		return d, formula.Value{}, !c.b.Has("sides")
	}
	word := "corners"
	if c.b.Has("across") {
		if word = c.s.words(c.b, "across"); word != "corners" && word != "flats" {
			c.s.reader(c.b).BadWord("across", word, []string{"corners", "flats"})
			return formula.Value{}, formula.Value{}, false
		}
	}
	where := d.Where
	if word == "corners" {
		corners, flats = d, c.called("flats", "flats", count, d)
	} else {
		corners, flats = c.called("corners", "corners", count, d), d
	}
	corners.Where = where
	return corners, flats, corners.OK() && flats.OK()
}

// newThing enters a rod in the ledger as a list: key, diameter, length, and the
// head's diameter and length.
func (c *contents) newThing(t *thing, head formula.Value) formula.Value {
	w := c.s.w
	t.headWidth, t.hasHead = head.Field("diameter")
	t.headLength, _ = head.Field("length")
	where := t.diameter.Where
	key := w.ledger.Given(ledger.Entry{Value: unit.OfText(t.key), Origin: ledger.Document, Where: where})
	ids := []ledger.ID{key, t.diameter.Entry, t.long.Entry}
	if t.hasHead {
		ids = append(ids, t.headWidth.Entry, t.headLength.Entry)
	}
	id, err := w.ledger.Make(c.name()+"["+quoted(t.key)+"]", ledger.OpCall, "list", ids...)
	if err != nil {
		return formula.Value{}
	}
	t.entry = id
	c.made = append(c.made, t)
	return formula.Value{Kind: formula.Reference, Ref: t, Entry: id, Is: w.ledger.Value(id), Where: where}
}

// keyOf names a rod: its size with at least one decimal, and a letter where
// there are several ("4.0 a").
func keyOf(l unit.Length, show unit.Show, i, each int) string {
	size := show.Format(l)
	if show.System == unit.Metric && !strings.Contains(size, ".") {
		size += ".0"
	}
	if each == 1 {
		return size
	}
	letters := ""
	for n := i; ; n = n/26 - 1 {
		letters = string(rune('a'+n%26)) + letters
		if n < 26 {
			return size + " " + letters
		}
	}
}

func (t *thing) member(name string) (formula.Value, bool) {
	switch name {
	case "diameter":
		return t.diameter, true
	case "length":
		return t.long, true
	case "head":
		return t.of.head(), true
	case "flats":
		return t.flats, t.flats.OK()
	}
	return formula.Value{}, false
}

// thickest is the greatest diameter of the rods themselves.
func (c *contents) thickest() formula.Value {
	return c.greatest("thickest", func(t *thing) formula.Value { return t.diameter })
}

// widest is the greatest diameter of heads and rods.
func (c *contents) widest() formula.Value {
	thick := c.thickest()
	head, has := c.head().Field("diameter")
	if !has || !thick.OK() {
		return thick
	}
	return quantity(c.s.w.ledger.Figure(c.s.w.make(c.name()+".widest", ledger.OpMax, thick.Entry, head.Entry)))
}

func (c *contents) greatest(name string, of func(*thing) formula.Value) formula.Value {
	if !c.all().OK() || len(c.made) == 0 {
		return formula.Value{}
	}
	ids := make([]ledger.ID, len(c.made))
	for i, t := range c.made {
		ids[i] = of(t).Entry
	}
	return quantity(c.s.w.ledger.Figure(c.s.w.make(c.name()+"."+name, ledger.OpMax, ids...)))
}

// collectRods writes rods; false where something is wrong.
func (c *contents) collectRods(out *piece.Contents) bool {
	w := c.s.w
	if !c.all().OK() {
		return false
	}
	sides, _, _ := c.sides()
	out.Play = w.figure(c.room("play"))
	if c.b.Has("lining") {
		out.Lining = w.figure(c.room("lining"))
	}
	if c.b.Has("finger") {
		out.Finger = w.figure(c.room("finger"))
	}
	out.Mass, _ = stow.Mass(c.s.reader(c.b), c.name())
	if c.b.Has("spare") {
		out.Spare, _, _ = c.s.maker.Count(env{s: c.s}.value(c.b, "spare", ""), 0, maxThings, "")
	}
	out.Count = len(c.made)
	for _, t := range c.made {
		out.Things = append(out.Things, piece.Thing{
			Key: t.key, Diameter: w.figure(t.diameter), Length: w.figure(t.long), Sides: sides, Flats: w.figure(t.flats),
			HeadWidth: w.figure(t.headWidth), HeadLength: w.figure(t.headLength), In: t.in, Cut: t.cut,
		})
	}
	return true
}
