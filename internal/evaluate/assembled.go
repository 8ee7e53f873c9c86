package evaluate

import (
	"slices"

	"scantling/internal/carve"
	"scantling/internal/carve/assembled"
	"scantling/internal/formula"
	"scantling/internal/message"
	"scantling/internal/piece"
)

// collectAssembled writes what a cut that is made on a group after glue-up takes
// from each of its parts.
func (d *decl) collectAssembled(g *scope) {
	w, e := d.s.w, env{s: d.s}
	parts := slices.DeleteFunc(g.standing(), func(p piece.Part) bool { return p.Tilt != nil })
	if len(parts) == 0 {
		return
	}
	block := assembled.Block(w.ledger, g.addr, parts)
	site := carve.Site{
		Reader: e.reader(d.block), Shop: w.shop, Part: block, Assembled: true, Name: d.name, Address: g.addr.Child(slug(d.name)),
		Carried: func(v formula.Value) formula.Value { return w.carried(v, w.root.frame) },
		Things:  thingsOf,
	}
	for _, c := range carve.Cuts(site) {
		met := false
		for _, p := range parts {
			if one, ok := assembled.Onto(w.ledger, c, block, p); ok {
				met = true
				if !d.keep([]piece.Cut{one}) {
					return
				}
			}
		}
		if !met {
			w.fault(CodeMeetsNothing, d.block.Where, message.Text("name", d.name))
			return
		}
	}
}

// parts returns the parts of a group and of those within it.
func (s *scope) parts() []*part {
	var out []*part
	s.each(func(s *scope) {
		for _, x := range s.order {
			if x.block.Type != "part" {
				continue
			}
			for _, n := range x.members() {
				if p, ok := n.(*part); ok {
					out = append(out, p)
				}
			}
		}
	})
	return out
}

// standing returns the parts of a group as they are in the piece.
func (s *scope) standing() []piece.Part {
	var out []piece.Part
	for _, p := range s.parts() {
		if p.done != nil {
			out = append(out, *p.done)
		}
	}
	return out
}
