package evaluate

import (
	"scantling/internal/address"
	"scantling/internal/document"
	"scantling/internal/formula"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
)

// fits keeps the clearances of fit blocks, by block and word.
type fitKey struct {
	d    *decl
	word string
}

// fitMember works out one clearance of a fit; nought where it is not said.
func (w *world) fitMember(d *decl, word string) (formula.Value, bool) {
	if word != "sides" && word != "above" && word != "behind" {
		return formula.Value{}, false
	}
	key := fitKey{d, word}
	if w.fits[key] == nil {
		w.fits[key] = &cell[formula.Value]{}
	}
	name := "fit." + slug(d.name) + "." + word
	return get(w, w.fits[key], func() string { return name }, d.block.Where, func() formula.Value {
		if !d.block.Has(word) {
			return quantity(w.ledger.Leaf(name, 0, ledger.Default, ""))
		}
		v, ok := env{s: d.s}.length(d.block, word, name)
		if !ok {
			return formula.Value{}
		}
		return v.At(nil)
	}), true
}

// collectFit writes a fit into the piece, one for each group that moves.
func (d *decl) collectFit() {
	w, e := d.s.w, env{s: d.s}
	for _, must := range []string{"moves", "inside"} {
		if !d.block.Has(must) {
			d.s.missing(d.block, must)
			return
		}
	}
	var moves, inside []address.Address
	for _, x := range e.selections(d.block, "moves", "group") {
		moves = append(moves, addressesOf(x)...)
	}
	for _, x := range e.selections(d.block, "inside", "space") {
		inside = append(inside, addressesOf(x)...)
	}
	out := piece.Fit{Where: d.block.Where}
	to := [3]*piece.Figure{&out.Sides, &out.Above, &out.Behind}
	for i, word := range []string{"sides", "above", "behind"} {
		v, _ := w.fitMember(d, word)
		if !v.OK() {
			return
		}
		*to[i] = w.figure(v)
		if a := d.block.Attribute(word); a != nil && seasonIn(a.Value) {
			out.Season = append(out.Season, word)
		}
	}
	if len(moves) != len(inside) {
		w.fault(CodeFitPairs, d.block.Where, message.Text("name", d.name), message.Count("moves", len(moves)), message.Count("inside", len(inside)))
		return
	}
	base := address.Address("fit").Child(slug(d.name))
	for i := range moves {
		f := out
		f.Address, f.Moves, f.Inside = base, moves[i], inside[i]
		if len(moves) > 1 {
			f.Address = address.Address("fit").Nth(slug(d.name), i+1)
		}
		w.out.Fits = append(w.out.Fits, f)
	}
}

// seasonIn reports whether a formula asks what the seasons do.
func seasonIn(x document.Expr) bool {
	switch x := x.(type) {
	case *document.Call:
		if x.Func == "season" || x.Func == "season_dry" || x.Func == "loose" {
			return true
		}
		for _, a := range x.Args {
			if seasonIn(a) {
				return true
			}
		}
	case *document.Binary:
		return seasonIn(x.X) || seasonIn(x.Y)
	case *document.Unary:
		return seasonIn(x.X)
	case *document.Choose:
		return seasonIn(x.Then) || seasonIn(x.Else)
	}
	return false
}

func addressesOf(x *selection) []address.Address {
	var out []address.Address
	for _, n := range x.nodes() {
		out = append(out, n.address())
	}
	return out
}

// addresses works out an attribute that names things of any kind, to the
// addresses of all that they stand for.
func (w *world) addresses(e env, b *document.Block, attribute string) []address.Address {
	var out []address.Address
	for _, x := range e.selections(b, attribute, "reference") {
		out = append(out, addressesOf(x)...)
	}
	return out
}
