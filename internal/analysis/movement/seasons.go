package movement

import (
	"cmp"
	"fmt"
	"math"

	"scantling/internal/address"
	"scantling/internal/analysis"
	"scantling/internal/analysis/estimate"
	"scantling/internal/diag"
	"scantling/internal/figure"
	"scantling/internal/joinery"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/shop"
	"scantling/internal/timber"
	"scantling/internal/unit"
)

// Seasons is [Follow] as a declared analysis.
var Seasons = analysis.Declare(analysis.Info{
	Name: "seasons", Kind: analysis.Derive,
	Doc: "What do damp and dry air do to every part, to every pair that is joined across the grain, to a board machined on one face, and to wood glued on sheet goods?",
}, func(c *analysis.Context) (plan.Seasons, diag.List) {
	return Follow(Input{Piece: c.Piece, Cuts: c.AllCuts(), Joints: c.Joints, Shop: c.Shop, Ledger: c.Ledger}), nil
})

// Input is what [Follow] reads.
type Input struct {
	Piece *piece.Piece
	// Cuts are those of all parts, their own and joints'.
	Cuts   []piece.Cut
	Joints []joinery.Lowered
	Shop   *shop.Shop
	Ledger *ledger.Ledger
}

// Follow works out what the seasons do to the piece. A shop that does not tell its
// air gives nothing but the missing figures; a wood or sheet that the catalogues lack
// leaves the estimates unknown, with what is missing.
func Follow(in Input) plan.Seasons {
	f := follower{
		Input: in, maker: estimate.New(in.Ledger, SeasonFunctions()),
		parts: map[address.Address]*piece.Part{}, materials: map[string]piece.Material{}, woods: map[string]wood{},
	}
	for i := range in.Piece.Parts {
		f.parts[in.Piece.Parts[i].Address] = &in.Piece.Parts[i]
	}
	for _, m := range in.Piece.Materials {
		f.materials[m.Name] = m
	}
	if in.Shop != nil {
		f.climate = in.Shop.Climate
		s := &f.climate.Season
		s.Now, s.Dry, s.Wet = hundredths(s.Now), hundredths(s.Dry), hundredths(s.Wet) // as the ledger has them
	}
	f.now, f.dry, f.wet = f.moisture("now", f.climate.Season.Now), f.moisture("dry", f.climate.Season.Dry), f.moisture("wet", f.climate.Season.Wet)
	return plan.Seasons{Air: f.airs(), Parts: f.partMoves(), Pairs: f.pairs(), Rooms: f.rooms(), Cups: f.cups(), Bows: f.bows()}
}

// follower is one run of Follow.
type follower struct {
	Input
	maker     *estimate.Maker
	climate   shop.Climate
	now       estimate.Arg
	dry, wet  estimate.Arg
	parts     map[address.Address]*piece.Part
	materials map[string]piece.Material
	woods     map[string]wood
}

// wood is a timber by its name.
type wood struct {
	species timber.Species
	known   bool
}

// wood returns the timber of a part; false for sheet goods.
func (f *follower) wood(p *piece.Part) (piece.Material, wood, bool) {
	m := f.materials[p.Material]
	if m.Sheet {
		return m, wood{}, false
	}
	w, ok := f.woods[m.Species]
	if !ok {
		s, err := f.Shop.Wood(m.Species)
		w = wood{s, err == nil}
		f.woods[m.Species] = w
	}
	return m, w, true
}

// airs lists the seasons' air.
func (f *follower) airs() []plan.Air {
	var out []plan.Air
	for _, s := range []struct {
		when     string
		air      timber.Air
		moisture timber.Moisture
	}{{"now", f.climate.Now, f.climate.Season.Now}, {"dry", f.climate.Dry, f.climate.Season.Dry}, {"wet", f.climate.Wet, f.climate.Season.Wet}} {
		out = append(out, plan.Air{
			When:     s.when,
			Humidity: estimate.Value(unit.DimHumidity, float64(s.air.Humidity)), Temperature: estimate.Value(unit.DimTemp, float64(s.air.Temperature)),
			Moisture: estimate.Value(unit.DimMoisture, float64(s.moisture)),
		})
	}
	return out
}

// moisture records a moisture content, to the hundredth.
func (f *follower) moisture(when string, m timber.Moisture) estimate.Arg {
	d := deriver{ledger: f.Ledger}
	return estimate.Entry(d.moisture(when, m))
}

func hundredths(m timber.Moisture) timber.Moisture {
	return timber.Moisture(math.Floor(float64(float64(m)*100)+0.5) / 100)
}

// word records a word of the catalogue.
func (f *follower) word(name, s string) estimate.Arg {
	return estimate.Entry(f.Ledger.Given(ledger.Entry{Name: name, Value: unit.OfText(s), Origin: ledger.Reference, Source: "Wood Handbook FPL-GTR-190, Table 13-5"}))
}

// woodArg records a wood as the ledger's functions take it.
func (f *follower) woodArg(name string, w wood) estimate.Arg {
	if !w.known {
		return estimate.Lack(plan.NoWood)
	}
	return estimate.Entry(f.Ledger.Given(ledger.Entry{Name: name, Value: w.species.Value(), Origin: ledger.Reference, Source: "Wood Handbook FPL-GTR-190, Table 13-5"}))
}

// side returns which of a part's sizes across the grain lies along a piece's axis;
// false along the grain.
func side(p *piece.Part, a piece.Axis) (timber.Across, bool) {
	switch local, _ := p.Frame.LocalOf(a); local {
	case piece.AlongWidth:
		return timber.Width, true
	case piece.AlongThickness:
		return timber.Thickness, true
	}
	return 0, false
}

func sideWord(a timber.Across) string {
	if a == timber.Thickness {
		return "thickness"
	}
	return "width"
}

// swell estimates what a size of a wood gains and loses over the year.
func (f *follower) swell(name string, m piece.Material, w wood, across timber.Across, size piece.Figure) plan.Swell {
	out := plan.Swell{Size: size}
	if !w.known {
		out.Grows, out.Shrinks = plan.Estimate{Missing: []plan.Datum{plan.NoWood}}, plan.Estimate{Missing: []plan.Datum{plan.NoWood}}
		return out
	}
	sawn := Sawn(m.Cut)
	s, err := timber.Material{Species: w.species, Sawn: sawn, Across: across}.Swing(size.Nm, f.climate.Season)
	if err != nil {
		return plan.Swell{Size: size, Grows: plan.Estimate{Missing: []plan.Datum{plan.NoWood}}, Shrinks: plan.Estimate{Missing: []plan.Datum{plan.NoWood}}}
	}
	args := []estimate.Arg{f.woodArg(name, w), f.word(name, string(sawn)), f.word(name, sideWord(across)), estimate.Of(size), f.now, f.dry, f.wet}
	out.Grows = f.maker.Estimate(name+".grows", "swells by", "", s.Wet.Source, plan.NoWood, args...)
	out.Shrinks = f.maker.Estimate(name+".shrinks", "shrinks by", "", s.Dry.Source, plan.NoWood, args...)
	out.Grows.Low, out.Grows.High = gain(s.Wet.Low-size.Nm), gain(s.Wet.High-size.Nm)
	out.Shrinks.Low, out.Shrinks.High = gain(size.Nm-s.Dry.High), gain(size.Nm-s.Dry.Low)
	return out
}

func gain(l unit.Length) unit.Value { return unit.OfLength(max(0, l)) }

// partMoves lists what every part does across its grain, equal parts together.
func (f *follower) partMoves() []plan.PartMove {
	type key struct {
		species, cut     string
		width, thickness unit.Length
	}
	at := map[key]int{}
	var out []plan.PartMove
	for i := range f.Piece.Parts {
		p := &f.Piece.Parts[i]
		m, w, solid := f.wood(p)
		if !solid || p.Form == piece.Bought {
			continue
		}
		k := key{m.Species, m.Cut, p.Width.Nm, p.Thickness.Nm}
		if n, ok := at[k]; ok {
			out[n].Parts = append(out[n].Parts, p.Address)
			continue
		}
		at[k] = len(out)
		name := string(p.Address)
		out = append(out, plan.PartMove{
			Parts: []address.Address{p.Address}, Species: m.Species, Cut: m.Cut,
			Width:     f.swell(name+".width", m, w, timber.Width, p.Width),
			Thickness: f.swell(name+".thickness", m, w, timber.Thickness, p.Thickness),
		})
	}
	return out
}

// SeasonFunctions returns the pure functions that entries of [Follow] call.
func SeasonFunctions() ledger.Functions {
	return ledger.Functions{
		"swells by":            swings(func(s timber.Swing) unit.Length { return max(0, s.Wet.Value-s.Now) }),
		"shrinks by":           swings(func(s timber.Swing) unit.Length { return max(0, s.Now-s.Dry.Value) }),
		"less the growth":      lessBy,
		"less the loss":        lessBy,
		"forced strain":        forcedStrain,
		"stress across":        stressAcross,
		"cup for a point":      cupForAPoint,
		"so many points":       soManyPoints,
		"weight to flatten":    weightToFlatten,
		"bow of wood on sheet": bowOnSheet,
	}
}

// swings makes one side of a season a function: species, sawing, which size, the
// size, and the moisture contents now, dry and wet.
func swings(what func(timber.Swing) unit.Length) func([]unit.Value) (unit.Value, error) {
	return func(a []unit.Value) (unit.Value, error) {
		if len(a) != 7 {
			return unit.Value{}, fmt.Errorf("a season's movement takes 7 values, not %d", len(a))
		}
		size, ok := a[3].Length()
		if !ok {
			return unit.Value{}, fmt.Errorf("a season's movement takes a length, not a %s", a[3].Dim())
		}
		m, err := materialOf(a[0], a[1], a[2])
		if err != nil {
			return unit.Value{}, err
		}
		s, err := m.Swing(size, timber.Season{Now: moisture(a[4]), Dry: moisture(a[5]), Wet: moisture(a[6])})
		return unit.OfLength(what(s)), err
	}
}

func materialOf(species, sawn, across unit.Value) (timber.Material, error) {
	s, err := timber.FromValue(species)
	m := timber.Material{Species: s, Sawn: timber.Sawn(sawn.Text())}
	if across.Text() == "thickness" {
		m.Across = timber.Thickness
	}
	return m, err
}

// lengthsOf reads so many lengths from the beginning of a list of arguments.
func lengthsOf(a []unit.Value, n int) ([]unit.Length, error) {
	if len(a) < n {
		return nil, fmt.Errorf("%d values, not %d", n, len(a))
	}
	out := make([]unit.Length, n)
	for i := range out {
		l, ok := a[i].Length()
		if !ok {
			return nil, fmt.Errorf("value %d is a %s, not a length", i+1, a[i].Dim())
		}
		out[i] = l
	}
	return out, nil
}

// acrossModulus is the modulus of elasticity across a wood's grain, in GPa, as a part
// of the tabulated one along it and a tenth more, which bending tests lose to shear.
func (f *follower) acrossModulus(name string, w wood, s timber.Sawn) (moe, part estimate.Arg) {
	if !w.known {
		return estimate.Lack(plan.NoWood), estimate.Lack(plan.NoWood)
	}
	return estimate.Number(f.maker, name+".stiffness along", w.species.MOE, plan.NoStiffness),
		estimate.Number(f.maker, name+".stiffness across", w.species.Elastic().Across(s), plan.NoStiffness)
}

// limit is a habit of the house, or common practice.
func (f *follower) limit(rule string, usual unit.Length) piece.Figure {
	var house figure.Of[unit.Length]
	if f.Shop != nil {
		house = f.Shop.LengthRule(rule)
	}
	if house.Known() {
		return f.Ledger.Leaf("house rule: "+rule, house.Value, ledger.HouseRule, cmp.Or(house.Source.Title, "rule of the shop"))
	}
	return f.Ledger.Leaf("usual: "+rule, usual, ledger.HouseRule, "common practice")
}
