package evaluate

import (
	"cmp"
	"strings"

	"scantling/internal/address"
	"scantling/internal/document"
	"scantling/internal/formula"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// contents is what goes inside: rods of several diameters, so many of each.
type contents struct {
	s      *scope
	b      *document.Block
	things cell[formula.Value]
	heads  cell[formula.Value]
	long   cell[formula.Value]
	slack  cell[formula.Value]
	// made are the things in order, once they have been asked for.
	made []*thing
}

const maxThings = 4096

// thing is one rod.
type thing struct {
	of                    *contents
	key                   string
	diameter, long        formula.Value
	headWidth, headLength formula.Value
	in, cut               address.Address
	entry                 ledger.ID
	hasHead               bool
}

func (c *contents) name() string { return "contents." + c.b.Label() }

func (c *contents) member(name string) (formula.Value, bool) {
	switch name {
	case "play":
		return c.figure(&c.slack, "play"), true
	case "length":
		return c.figure(&c.long, "length"), true
	case "head":
		return c.head(), true
	case "things":
		return c.all(), true
	case "thickest":
		return c.thickest(), true
	}
	return formula.Value{}, false
}

func (c *contents) figure(at *cell[formula.Value], attribute string) formula.Value {
	name := c.name() + "." + attribute
	return get(c.s.w, at, func() string { return name }, c.b.Where, func() formula.Value {
		if !c.b.Has(attribute) {
			if attribute == "play" {
				f := c.s.w.ledger.Leaf(name, 0, ledger.Default, "")
				return quantity(f)
			}
			c.s.missing(c.b, attribute)
			return formula.Value{}
		}
		v, ok := env{s: c.s}.length(c.b, attribute, name)
		if !ok || attribute == "length" && !c.s.reader(c.b).Positive(v, attribute, name) {
			return formula.Value{}
		}
		return v
	})
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

// all returns the things as a list that the ledger knows, in order.
func (c *contents) all() formula.Value {
	return get(c.s.w, &c.things, func() string { return c.name() }, c.b.Where, c.make)
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
	head, long, play := c.head(), c.figure(&c.long, "length"), c.figure(&c.slack, "play")
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
		for i := range each {
			out.Items = append(out.Items, c.newThing(d, long, head, i, each))
		}
	}
	return c.s.maker.Listed(out, c.name())
}

// newThing makes number i of the rods of one diameter. Its line in the ledger is
// a list: key, diameter, length, and the head's diameter and length.
func (c *contents) newThing(d, long, head formula.Value, i, each int) formula.Value {
	w := c.s.w
	l, _ := d.Is.Length()
	t := &thing{of: c, key: keyOf(l, c.s.maker.Show, i, each), diameter: d, long: long}
	t.headWidth, t.hasHead = head.Field("diameter")
	t.headLength, _ = head.Field("length")
	key := w.ledger.Given(ledger.Entry{Value: unit.OfText(t.key), Origin: ledger.Document, Where: d.Where})
	ids := []ledger.ID{key, d.Entry, long.Entry}
	if t.hasHead {
		ids = append(ids, t.headWidth.Entry, t.headLength.Entry)
	}
	id, err := w.ledger.Make(c.name()+"["+quoted(t.key)+"]", ledger.OpCall, "list", ids...)
	if err != nil {
		return formula.Value{}
	}
	t.entry = id
	c.made = append(c.made, t)
	return formula.Value{Kind: formula.Reference, Ref: t, Entry: id, Is: w.ledger.Value(id), Where: d.Where}
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
	}
	return formula.Value{}, false
}

// thickest is the greatest diameter of the rods themselves.
func (c *contents) thickest() formula.Value {
	if !c.all().OK() || len(c.made) == 0 {
		return formula.Value{}
	}
	ids := make([]ledger.ID, len(c.made))
	for i, t := range c.made {
		ids[i] = t.diameter.Entry
	}
	return quantity(c.s.w.ledger.Figure(c.s.w.make(c.name()+".thickest", ledger.OpMax, ids...)))
}

// collectContents writes the contents into the piece, with where each thing lies.
func (s *scope) collectContents() {
	w := s.w
	for _, b := range s.file.Of("contents") {
		c := s.contents[b.Label()]
		if c == nil || c.b != b || !c.all().OK() {
			continue
		}
		out := piece.Contents{
			Address: address.Address("").Child("contents").Child(slug(b.Label())),
			Label:   cmp.Or(s.words(b, "label"), b.Label()), Kind: "rod", Where: b.Where,
			Play: w.ledger.Figure(c.figure(&c.slack, "play").Entry),
		}
		if b.Has("spare") {
			out.Spare, _, _ = s.maker.Count(env{s: s}.value(b, "spare", ""), 0, maxThings, "")
		}
		for _, t := range c.made {
			out.Things = append(out.Things, piece.Thing{
				Key: t.key, Diameter: w.figure(t.diameter), Length: w.figure(t.long),
				HeadWidth: w.figure(t.headWidth), HeadLength: w.figure(t.headLength), In: t.in, Cut: t.cut,
			})
		}
		w.out.Contents = append(w.out.Contents, out)
	}
}

// figure is a length value as a figure; the zero figure for nothing.
func (w *world) figure(v formula.Value) piece.Figure {
	if v.Entry == 0 {
		return piece.Figure{}
	}
	return w.ledger.Figure(v.Entry)
}
