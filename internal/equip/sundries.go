package equip

import (
	"scantling/internal/document"
	"scantling/internal/figure"
	"scantling/internal/formula"
	"scantling/internal/message"
	"scantling/internal/sundries"
	"scantling/internal/timber"
	"scantling/internal/unit"
)

// maxGrits bounds the abrasives that a shop names.
const maxGrits = 30

// stated is a figure that the maker of a glue or finish states.
func stated[T any](of string, v T) figure.Of[T] {
	return figure.Exactly(v, figure.Source{Key: "sundries.stated." + of, Status: figure.Stated})
}

// glue reads a glue of the shop's own: what its tin says goes before the glue that
// it is like, or before the trade's of the same name.
func (r *reader) glue(b *document.Block) (sundries.Glue, bool) {
	like, err := sundries.FindGlue(b.Label())
	if b.Has("like") {
		if like, err = sundries.FindGlue(r.words(b, "like")); err != nil {
			return like, r.refused(err, r.of(b).Where("like"))
		}
	}
	if err != nil && !b.Has("clamp") {
		r.of(b).Missing("like")
		return like, false
	}
	g := sundries.NewGlue(b.Label(), like)
	r.times(b, time{"open", &g.Open}, time{"closed", &g.Closed}, time{"clamp", &g.Clamp}, time{"cure", &g.Cure})
	if t, ok := r.degrees(b, "coldest"); ok {
		g.Coldest = stated("coldest", t)
	}
	if b.Has("water") {
		g.Water = r.of(b).Choice("water", "D1", "D2", "D3", "D4")
	}
	return g, r.refused(g.Check(), b.Where)
}

// finish reads a finish of the shop's own.
func (r *reader) finish(b *document.Block) (sundries.Finish, bool) {
	like, err := sundries.FindFinish(b.Label())
	if b.Has("like") {
		if like, err = sundries.FindFinish(r.words(b, "like")); err != nil {
			return like, r.refused(err, r.of(b).Where("like"))
		}
	}
	if err != nil && !b.Has("recoat") {
		r.of(b).Missing("like")
		return like, false
	}
	f := sundries.NewFinish(b.Label(), like)
	r.times(b, time{"recoat", &f.Recoat}, time{"light", &f.Light}, time{"cure", &f.Cure})
	if n, ok := r.number(b, "coverage"); ok {
		f.Coverage = stated("coverage", sundries.Coverage(n))
	}
	if n, ok := r.count(b, "coats", 1, 100); ok {
		f.Coats = stated("coats", float64(n))
	}
	if t, ok := r.degrees(b, "coldest"); ok {
		f.Coldest = stated("coldest", t)
	}
	for i, to := range []*bool{&f.Oil, &f.Film, &f.Rags} {
		if attribute := []string{"oil", "film", "rags"}[i]; b.Has(attribute) {
			v, _ := r.maker.Truth(r.of(b).Value(attribute, ""))
			*to = v.Is.Truth()
		}
	}
	return f, r.refused(f.Check(), b.Where)
}

// time is a time that a block may state.
type time struct {
	attribute string
	to        *figure.Of[sundries.Minutes]
}

// times reads times, which have their unit with them.
func (r *reader) times(b *document.Block, all ...time) {
	for _, t := range all {
		if v, ok := r.quantity(b, t.attribute, unit.DimTime); ok {
			*t.to = stated(t.attribute, sundries.Minutes(v.Float()))
		}
	}
}

// degrees reads a temperature: a bare number is in degrees Celsius.
func (r *reader) degrees(b *document.Block, attribute string) (timber.Temperature, bool) {
	if !b.Has(attribute) {
		return 0, false
	}
	if v := r.of(b).Value(attribute, ""); v.Kind == formula.Quantity && v.Is.Dim() == unit.DimUntyped {
		return timber.Temperature(v.Is.Float()), true
	}
	v, ok := r.quantity(b, attribute, unit.DimTemp)
	return timber.Temperature(v.Float()), ok
}

// quantity reads a text with its unit.
func (r *reader) quantity(b *document.Block, attribute string, dim unit.Dim) (unit.Value, bool) {
	if !b.Has(attribute) {
		return unit.Value{}, false
	}
	v := r.of(b).Value(attribute, "")
	if !v.OK() {
		return unit.Value{}, false
	}
	if v.Kind == formula.Text {
		if is, err := unit.ParseValue(v.Is.Text(), 0); err == nil && is.Dim() == dim {
			return is, true
		}
	}
	r.of(b).Fault(CodeQuantity, r.of(b).Where(attribute), message.Text("name", attribute), message.Word("want", "kind."+string(dim)))
	return unit.Value{}, false
}

// grits reads the abrasives that the shop has.
func (r *reader) grits(b *document.Block) {
	if !b.Has("abrasives") {
		return
	}
	v := r.of(b).Value("abrasives", "")
	if v.OK() && v.Kind != formula.List || len(v.Items) > maxGrits {
		r.of(b).Fault(formula.CodeWrongKind, r.of(b).Where("abrasives"), message.Word("got", v.Word()), message.Word("want", "kind.list"))
		return
	}
	for _, item := range v.Items {
		if n, _, ok := r.maker.Count(item, 12, 5000, ""); ok {
			r.shop.Grits = append(r.shop.Grits, n)
		}
	}
}
