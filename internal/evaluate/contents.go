package evaluate

import (
	"cmp"

	"scantling/internal/address"
	"scantling/internal/document"
	"scantling/internal/formula"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/stow"
)

// contents is what goes inside: rods of several diameters, so many of each, or a
// lot of equal things in cells.
type contents struct {
	s      *scope
	b      *document.Block
	sort   cell[string]
	lots   cell[*stow.Lot]
	things cell[formula.Value]
	heads  cell[formula.Value]
	long   cell[formula.Value]
	plain  map[string]*cell[formula.Value]
	// made are the rods in order, once they have been asked for.
	made []*thing
}

func (c *contents) name() string { return "contents." + c.b.Label() }

// kind is the kind of contents; empty where that is wrong, which was reported.
func (c *contents) kind() string {
	return get(c.s.w, &c.sort, func() string { return c.name() + ".kind" }, c.b.Where, func() string {
		kind, _ := stow.KindOf(c.s.reader(c.b))
		return kind
	})
}

// lot works out what stands in cells; nil where something is wrong.
func (c *contents) lot() *stow.Lot {
	return get(c.s.w, &c.lots, c.name, c.b.Where, func() *stow.Lot {
		if lot, ok := stow.Read(c.s.reader(c.b), c.kind(), c.name()); ok {
			return &lot
		}
		return nil
	})
}

func (c *contents) member(name string) (formula.Value, bool) {
	switch c.kind() {
	case "":
		return formula.Value{}, true
	case stow.Rod:
		return c.rodMember(name)
	}
	lot := c.lot()
	if lot == nil {
		return formula.Value{}, true
	}
	v, ok := lot.Values[name]
	return v, ok
}

// room is a length of the block that may be left out, and is nought then.
func (c *contents) room(attribute string) formula.Value {
	if c.plain == nil {
		c.plain = map[string]*cell[formula.Value]{}
	}
	if c.plain[attribute] == nil {
		c.plain[attribute] = &cell[formula.Value]{}
	}
	name := c.name() + "." + attribute
	return get(c.s.w, c.plain[attribute], func() string { return name }, c.b.Where, func() formula.Value {
		if !c.b.Has(attribute) {
			return quantity(c.s.w.ledger.Leaf(name, 0, ledger.Default, ""))
		}
		v, ok := env{s: c.s}.length(c.b, attribute, name)
		if !ok {
			return formula.Value{}
		}
		return v
	})
}

// collectContents writes the contents into the piece, with where each thing lies.
func (s *scope) collectContents() {
	for _, b := range s.file.Of("contents") {
		c := s.contents[b.Label()]
		if c == nil || c.b != b || c.kind() == "" {
			continue
		}
		out := piece.Contents{
			Address: address.Address("").Child("contents").Child(slug(b.Label())),
			Label:   cmp.Or(s.words(b, "label"), b.Label()), Kind: c.kind(), Where: b.Where,
		}
		if b.Has("sharp") {
			sharp, ok := s.maker.Truth(env{s: s}.value(b, "sharp", ""))
			out.Sharp = ok && sharp.Is.Truth()
		}
		fill := c.collectLot
		if c.kind() == stow.Rod {
			fill = c.collectRods
		}
		if !fill(&out) {
			continue
		}
		for _, hold := range []struct {
			attribute string
			to        *[]address.Address
		}{{"in", &out.In}, {"through", &out.Through}} {
			for _, x := range (env{s: s}).selections(b, hold.attribute, "space") {
				*hold.to = append(*hold.to, spacesOf(s.w, x)...)
			}
		}
		s.w.out.Contents = append(s.w.out.Contents, out)
	}
}

// spacesOf returns the addresses of the spaces that a name stands for; anything
// else is reported.
func spacesOf(w *world, x *selection) []address.Address {
	var out []address.Address
	for _, n := range x.nodes() {
		if _, ok := n.(*space); !ok {
			w.fault(formula.CodeWrongReference, x.where, wantSpace()...)
			return nil
		}
		out = append(out, n.address())
	}
	return out
}

// collectLot writes a lot; false where something is wrong.
func (c *contents) collectLot(out *piece.Contents) bool {
	lot := c.lot()
	if lot == nil {
		return false
	}
	out.Lot = &lot.Lot
	out.Count, out.Among, out.Spare, out.Wanted = lot.Count, lot.Among, lot.Spare, lot.Wanted
	out.Play, out.Lining, out.Finger, out.Mass = lot.Play, lot.Lining, lot.Finger, lot.Mass
	out.From, out.Status = lot.From, lot.Status
	return true
}

// figure is a length value as a figure; the zero figure for nothing.
func (w *world) figure(v formula.Value) piece.Figure {
	if v.Entry == 0 {
		return piece.Figure{}
	}
	return w.ledger.Figure(v.Entry)
}
