package supplies

import (
	"errors"
	"math"
	"slices"

	"scantling/internal/analysis"
	"scantling/internal/analysis/cutting"
	"scantling/internal/analysis/estimate"
	"scantling/internal/diag"
	"scantling/internal/figure"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/shop"
	"scantling/internal/sundries"
	"scantling/internal/timber"
	"scantling/internal/unit"
)

// Analysis is [Derive] as a declared analysis.
var Analysis = analysis.Declare(analysis.Info{
	Name: "supplies-used", Kind: analysis.Derive, Requires: []analysis.Analysis{cutting.Strips},
	Doc: "Which glues and finishes is it made with, and what is known of them?",
}, func(c *analysis.Context) ([]plan.Supply, diag.List) {
	return Derive(c.Piece, c.Shop, cutting.Strips.Get(c).Workpieces, c.Ledger), nil
})

// Functions returns the pure functions that entries of this package call.
func Functions() ledger.Functions { return ledger.Functions{"litres of finish": litres} }

// litres takes an area in square metres, coats and square metres to the litre.
func litres(a []unit.Value) (unit.Value, error) {
	if len(a) != 3 || a[2].Float() <= 0 {
		return unit.Value{}, errors.New("litres of finish take an area, coats and a coverage above nought")
	}
	l := sundries.Litres(a[0].Float(), int(min(a[1].Float(), 100)), sundries.Coverage(a[2].Float()))
	return estimate.Value(unit.DimUntyped, l), nil
}

// Derive returns what the piece, made from workpieces, is glued and finished with; the
// shop may be nil.
func Derive(p *piece.Piece, s *shop.Shop, from []plan.Workpiece, l *ledger.Ledger) []plan.Supply {
	d := deriver{piece: p, shop: s, maker: estimate.New(l, Functions())}
	var out []plan.Supply
	for _, j := range p.Joints {
		if j.Glue != "" && !slices.ContainsFunc(out, func(x plan.Supply) bool { return x.Name == j.Glue }) {
			out = append(out, d.glue(j.Glue))
		}
	}
	if _, ok := Panel(from); ok {
		name := PanelGlue(p, s)
		at := slices.IndexFunc(out, func(x plan.Supply) bool { return x.Name == name })
		if at < 0 {
			at, out = len(out), append(out, d.glue(name))
		}
		out[at].Panels = true
	}
	for _, f := range p.Finishes {
		out = append(out, d.finish(f))
	}
	return out
}

type deriver struct {
	piece *piece.Piece
	shop  *shop.Shop
	maker *estimate.Maker
}

// add records a figure; one that nobody gives is left out.
func add[N ~float64](d *deriver, to *plan.Supply, word, in string, f figure.Of[N]) {
	if !f.Known() {
		return
	}
	a := estimate.Number(d.maker, to.Kind+"."+to.Name+"."+word, f, "")
	e := plan.Estimate{Value: d.maker.Ledger.Value(a.ID), Entry: a.ID, Unit: in, Source: f.Source}
	e.Low, e.High = e.Value, e.Value
	if !a.Low.IsZero() {
		e.Low, e.High = a.Low, a.High
	}
	to.Figures = append(to.Figures, plan.SupplyFigure{Word: word, Estimate: e})
}

func (d *deriver) glue(name string) plan.Supply {
	out := plan.Supply{Kind: "glue", Name: name}
	g, err := d.shop.Glue(name)
	if err != nil {
		return out
	}
	out.Water = g.Water
	clamp := g.Clamp
	if d.shop != nil && d.shop.Climate.Now != (timber.Air{}) {
		if today, err := g.ClampAt(d.shop.Climate.Now.Temperature); err == nil {
			clamp = today
		}
	}
	add(d, &out, "open", "min", g.Open)
	add(d, &out, "closed", "min", g.Closed)
	add(d, &out, "clamp", "min", whole(clamp))
	add(d, &out, "cure", "min", g.Cure)
	add(d, &out, "coldest", "°C", g.Coldest)
	add(d, &out, "light-wood", "MPa", g.Light)
	add(d, &out, "dense-wood", "MPa", g.Dense)
	add(d, &out, "spread", "g/m²", g.Spread)
	return out
}

// whole rounds minutes up to whole ones.
func whole(m figure.Of[sundries.Minutes]) figure.Of[sundries.Minutes] {
	up := func(x sundries.Minutes) sundries.Minutes { return sundries.Minutes(math.Ceil(float64(x) - 1e-6)) }
	m.Value, m.Low, m.High = up(m.Value), up(m.Low), up(m.High)
	return m
}

func (d *deriver) finish(f piece.Finish) plan.Supply {
	out := plan.Supply{Kind: "finish", Name: f.Kind}
	x, err := d.shop.Finish(f.Kind)
	if err != nil {
		return out
	}
	add(d, &out, "recoat", "min", x.Recoat)
	add(d, &out, "light", "min", x.Light)
	add(d, &out, "cure", "min", x.Cure)
	add(d, &out, "coldest", "°C", x.Coldest)
	add(d, &out, "warmest", "°C", x.Warmest)
	add(d, &out, "coverage", "m²/l", x.Coverage)
	area := d.area(f)
	if area == 0 || !x.Coverage.Known() {
		return out
	}
	name := string(f.Address)
	coats := d.maker.Given(name+".coats", unit.OfCount(max(1, f.Coats)), ledger.Document, "")
	of := d.maker.Given(name+".area", estimate.Value(unit.DimUntyped, area), ledger.Derived, "")
	e := d.maker.Estimate(name+".litres", "litres of finish", "l", x.Coverage.Source, "", of, coats, estimate.Number(d.maker, name+".coverage", x.Coverage, ""))
	if e.Known() {
		out.Figures = append(out.Figures, plan.SupplyFigure{Word: "litres", Estimate: e})
	}
	return out
}

// area is the surface of the boxes of all parts that a finish goes on, in square
// metres.
func (d *deriver) area(f piece.Finish) float64 {
	sum := 0.0
	for _, p := range d.piece.Parts {
		on := false
		for _, a := range f.On {
			on = on || a == p.Address || a.Has(p.Address)
		}
		if !on {
			continue
		}
		l, w, t := p.Length.Nm.Millimetres()/1000, p.Width.Nm.Millimetres()/1000, p.Thickness.Nm.Millimetres()/1000
		sum += 2 * (float64(l*w) + float64(l*t) + float64(w*t))
	}
	return sum
}
