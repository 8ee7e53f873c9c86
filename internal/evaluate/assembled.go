package evaluate

import (
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
	var parts []piece.Part
	g.each(func(s *scope) {
		for _, x := range s.order {
			if x.block.Type != "part" {
				continue
			}
			for _, n := range x.members() {
				if p, ok := n.(*part); ok && p.done != nil && p.done.Tilt == nil {
					parts = append(parts, *p.done)
				}
			}
		}
	})
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
