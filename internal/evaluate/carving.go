package evaluate

import (
	"scantling/internal/address"
	"scantling/internal/carve"
	"scantling/internal/formula"
	"scantling/internal/message"
	"scantling/internal/piece"
)

// sites lists the parts that a cut or series block is on, each with what is
// needed to work the block out there.
func (d *decl) sites() []carve.Site {
	w, e := d.s.w, env{s: d.s}
	if !d.present() {
		return nil
	}
	if !d.block.Has("on") {
		d.s.missing(d.block, "on")
		return nil
	}
	var out []carve.Site
	for _, x := range e.selections(d.block, "on", "part") {
		for _, n := range x.nodes() {
			p, ok := n.(*part)
			g, group := n.(*scope)
			switch lid := d.isLid(); {
			case group && lid:
				d.collectLid(g)
				continue
			case group && d.block.Type == "cut":
				d.collectAssembled(g)
				continue
			case lid:
				w.fault(formula.CodeWrongReference, x.where, message.Word("want", "kind.group"), message.Word("got", "kind.part"))
				continue
			}
			if !ok {
				w.fault(formula.CodeWrongReference, x.where, message.Word("want", "kind.part"), message.Word("got", "kind.reference"))
				continue
			}
			if p.done == nil {
				continue
			}
			out = append(out, carve.Site{
				Reader: e.reader(d.block), Shop: w.shop, Part: *p.done, Name: d.name, Address: p.addr.Child(slug(d.name)), After: d.cutsBefore(e, p),
				Carried: func(v formula.Value) formula.Value { return w.carried(v, w.root.frame) },
				Things:  thingsOf,
			})
		}
	}
	return out
}

// cutsBefore lists the cuts of the same part that come before this one.
func (d *decl) cutsBefore(e env, p *part) []address.Address {
	var out []address.Address
	for _, x := range e.selections(d.block, "after", "cut") {
		if k := x.decl.block.Type; k != "cut" && k != "series" {
			d.s.w.fault(formula.CodeWrongReference, x.where, message.Word("want", "kind.cut"), message.Word("got", "block."+k))
			continue
		}
		if x.decl.present() {
			out = append(out, p.addr.Child(slug(x.decl.name)))
		}
	}
	return out
}

// thingsOf returns what a value lists, and the last of the contents that it was
// taken from.
func thingsOf(v formula.Value) (formula.Value, carve.Held) {
	c, ok := v.Ref.(*contents)
	if !ok {
		return v, nil
	}
	if v.Kind == formula.Reference {
		v = c.all()
	}
	if !c.all().OK() || len(c.made) == 0 {
		return v, nil
	}
	return v, c.made[len(c.made)-1]
}

// collectCut writes a cut block's cuts into the piece.
func (d *decl) collectCut() {
	for _, s := range d.sites() {
		d.keep(carve.Cuts(s))
	}
}

// collectSeries writes a series block's rows and cuts into the piece.
func (d *decl) collectSeries() {
	for _, s := range d.sites() {
		if series, cuts, ok := carve.Series(s); ok && d.keep(cuts) {
			d.s.w.out.Series = append(d.s.w.out.Series, series)
		}
	}
}

func (d *decl) keep(cuts []piece.Cut) bool {
	if !d.s.w.take(d.block.Where, len(cuts)) {
		return false
	}
	d.s.w.out.Cuts = append(d.s.w.out.Cuts, cuts...)
	return true
}

// Name is the thing's key; Size its diameter (see [carve.Held]).
func (t *thing) Name() string { return t.key }

// Size is the thing's diameter.
func (t *thing) Size() formula.Value { return t.diameter }

// Lies tells the thing where it came to lie.
func (t *thing) Lies(in, cut address.Address) { t.in, t.cut = in, cut }
