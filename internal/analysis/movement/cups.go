package movement

import (
	"cmp"
	"fmt"
	"slices"

	"scantling/internal/address"
	"scantling/internal/analysis/estimate"
	"scantling/internal/figure"
	"scantling/internal/ledger"
	"scantling/internal/mechanics"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/timber"
	"scantling/internal/unit"
)

// leastShare is the part of a face's width that channels must take to count as
// machining one face: less changes little.
const leastShare = 10 // percent

// cupDays is how long a machined board is followed.
const cupDays = 14

// furrows is what channels along the grain take of one face of a part.
type furrows struct {
	face piece.Side
	deep piece.Figure
	cut  unit.Length // of the width
	land unit.Length // between two, in the mean
}

// cups lists the boards of which channels, grooves or flutes along the grain take a
// part of one face, equal ones together.
func (f *follower) cups() []plan.Cup {
	type key struct {
		species, sawn                     string
		width, thickness, deep, cut, land unit.Length
		face                              piece.Side
	}
	by := map[address.Address][]*piece.Cut{}
	for i := range f.Cuts {
		by[f.Cuts[i].Part] = append(by[f.Cuts[i].Part], &f.Cuts[i])
	}
	at := map[key]int{}
	var out []plan.Cup
	for i := range f.Piece.Parts {
		p := &f.Piece.Parts[i]
		m, w, solid := f.wood(p)
		if !solid {
			continue
		}
		r, ok := furrowed(p, by[p.Address])
		if !ok {
			continue
		}
		k := key{m.Species, m.Cut, p.Width.Nm, p.Thickness.Nm, r.deep.Nm, r.cut, r.land, r.face}
		if n, ok := at[k]; ok {
			out[n].Parts = append(out[n].Parts, p.Address)
			continue
		}
		at[k] = len(out)
		out = append(out, f.cup(p, m, w, r))
	}
	return out
}

// furrowed reads the cuts along the grain in a part's faces: of the face that loses
// more. Where both lose alike nothing cups.
func furrowed(p *piece.Part, cuts []*piece.Cut) (furrows, bool) {
	if p.Form != piece.Board || p.Width.Nm <= 0 {
		return furrows{}, false
	}
	var best furrows
	var lost [2]unit.Length
	for i, face := range []piece.Side{piece.FaceLow, piece.FaceHigh} {
		r := furrows{face: face}
		var spans [][2]unit.Length
		for _, c := range cuts {
			s := c.Slot
			if s == nil || s.Open != face || s.Run != piece.AlongLength || s.To.Nm-s.From.Nm < p.Length.Nm/2 || s.Depth.Nm >= p.Thickness.Nm {
				continue
			}
			low, high := max(0, s.Near.Nm), min(p.Width.Nm, s.Far.Nm)
			if high > low {
				spans = append(spans, [2]unit.Length{low, high})
			}
			if s.Depth.Nm > r.deep.Nm {
				r.deep = s.Depth
			}
		}
		r.cut, r.land = covered(spans, p.Width.Nm)
		lost[i] = r.cut
		if r.cut > best.cut {
			best = r
		}
	}
	return best, best.cut*100 >= p.Width.Nm*leastShare && lost[0] != lost[1]
}

// covered returns how much of a width spans take, and the mean of what is left
// between them and beside them.
func covered(spans [][2]unit.Length, width unit.Length) (cut, land unit.Length) {
	slices.SortFunc(spans, func(a, b [2]unit.Length) int { return cmp.Or(cmp.Compare(a[0], b[0]), cmp.Compare(a[1], b[1])) })
	end, lands := unit.Length(0), 0
	for i, s := range spans {
		if s[0] > end || i == 0 {
			lands++
		}
		cut += max(0, s[1]-max(s[0], end))
		end = max(end, s[1])
	}
	if end < width {
		lands++
	}
	return cut, (width - cut) / unit.Length(max(1, lands))
}

var sourceCup = figure.Source{Key: "movement.cup", Title: "diffusion and beam theory", Status: figure.Memory}

func (f *follower) cup(p *piece.Part, m piece.Material, w wood, r furrows) plan.Cup {
	name := string(p.Address) + ".cup"
	out := plan.Cup{
		Parts: []address.Address{p.Address}, Face: r.face, Width: p.Width, Deep: r.deep,
		Share: estimate.Value(unit.DimRatio, float64(r.cut)/float64(p.Width.Nm)), Room: estimate.Value(unit.DimMoisture, float64(f.climate.Season.Now)),
	}
	wetter, haveCore := f.core(m, &out)
	material := timber.Material{Species: w.species, Sawn: Sawn(m.Cut)}
	perPoint, spreads := estimate.Lack(plan.NoWood), estimate.Lack(plan.NoWood)
	if w.known {
		perPoint = estimate.Number(f.maker, name+".per point", material.Coefficient(), plan.NoWood)
		spreads = estimate.Number(f.maker, name+".spreads", mechanicsSpread(w.species), plan.NoDensity)
		// Their ranges are put on afterwards, see scaled and timed.
		perPoint.Low, perPoint.High, spreads.Low, spreads.High = unit.Value{}, unit.Value{}, unit.Value{}, unit.Value{}
	}
	film := estimate.Number(f.maker, "film", mechanics.FilmOf, "")
	film.Low, film.High = unit.Value{}, unit.Value{}
	share := f.maker.Given(name+".share", out.Share, ledger.Derived, "channels over width")
	land := f.Ledger.Leaf(name+".land", r.land, ledger.Derived, "mean of the lands")
	for _, how := range []mechanics.Keeping{mechanics.FlatOnBench, mechanics.OnEdge, mechanics.Stickered, mechanics.BothMachined, mechanics.Weighted} {
		as := how
		if how == mechanics.Stickered || how == mechanics.Weighted {
			as = mechanics.OnEdge // air on both faces: the same figures, of one entry
		}
		all := f.maker.Estimate(name+" "+string(as), "cup for a point", "", sourceCup, plan.NoWood,
			f.word("keeping", string(as)), estimate.Of(p.Thickness), estimate.Of(p.Width), estimate.Of(r.deep), estimate.Of(land), share, spreads, film, perPoint)
		k := plan.Kept{How: string(how), PerPoint: f.item(all, 1), Worst: f.item(all, 2), Later: f.item(all, 3)}
		k.PerPoint.Low, k.PerPoint.High = scaled(k.PerPoint, material)
		k.Worst.Unit = "hours"
		timed(&k.Worst, w)
		k.Rise = plan.Estimate{Source: sourceCup, Missing: []plan.Datum{plan.NoCore}}
		if haveCore {
			k.Rise = f.maker.Estimate(name+".rise", "so many points", "", sourceCup, plan.NoCore, estimate.Again(k.PerPoint), wetter)
		}
		out.Kept = append(out.Kept, k)
	}
	if haveCore {
		out.Way = wayOf(out.Kept[0].Rise)
	}
	moe, part := f.acrossModulus(name, w, Sawn(m.Cut))
	out.Flatten = f.maker.Estimate(name+".flatten", "weight to flatten", "", sourceCup, plan.NoStiffness,
		estimate.Again(out.Kept[0].Rise), estimate.Of(p.Width), estimate.Of(p.Length), estimate.Of(p.Thickness), moe, part)
	return out
}

// core reads the moisture of the wood's core: the reading of the board that the
// material is cut from, or the house rule "core moisture". It returns by how much the
// core is wetter than the room.
func (f *follower) core(m piece.Material, out *plan.Cup) (wetter estimate.Arg, ok bool) {
	if f.Shop == nil {
		return wetter, false
	}
	reading, origin, source := 0.0, ledger.HouseRule, "rule of the shop: core moisture"
	if rule, ok := f.Shop.Rule("core moisture"); ok && rule.Value.IsNumeric() {
		reading = rule.Value.Float()
	}
	if b, ok := f.Shop.Board(m.Stock); ok && b.Moisture > 0 {
		reading, origin, source = float64(b.Moisture), ledger.Bought, "reading of the board "+b.ID
	}
	if reading <= 0 {
		return wetter, false
	}
	out.Core = estimate.Value(unit.DimMoisture, reading)
	return f.maker.Given("core over room", estimate.Value(unit.DimUntyped, reading-float64(f.climate.Season.Now)), origin, source), true
}

func mechanicsSpread(s timber.Species) figure.Of[mechanics.Diffusivity] {
	if !s.Gravity.Known() {
		return figure.Of[mechanics.Diffusivity]{}
	}
	d := mechanics.DiffusivityFor(mechanics.Gravity(s.Gravity.Value))
	scale := func(x mechanics.Diffusivity) mechanics.Diffusivity { return x * 1e10 } // so that six digits hold it
	return figure.Between(scale(d.Value), scale(d.Low), scale(d.High), d.Source)
}

// item takes one of the results out of an estimate that is a list.
func (f *follower) item(list plan.Estimate, n int) plan.Estimate {
	out := list
	if !list.Known() {
		return out
	}
	count := f.Ledger.Given(ledger.Entry{Value: unit.OfCount(n), Origin: ledger.Derived})
	id, err := f.Ledger.Make("", ledger.OpItem, "", list.Entry, count)
	if err != nil {
		return plan.Estimate{Missing: list.Missing, Source: list.Source}
	}
	out.Entry, out.Value = id, f.Ledger.Value(id)
	out.Low, out.High = out.Value, out.Value
	return out
}

// scaled returns the ends of a cup by the ends of the wood's coefficient, in the
// measure of which it is.
func scaled(e plan.Estimate, m timber.Material) (low, high unit.Value) {
	rise, ok := e.Value.Length()
	c := m.Coefficient()
	if !ok || c.Value <= 0 {
		return e.Low, e.High
	}
	by := func(x timber.Coefficient) unit.Length {
		return unit.FromMillimetres(rise.Millimetres() * float64(x) / float64(c.Value))
	}
	a, b := by(c.Low), by(c.High)
	return unit.OfLength(min(a, b)), unit.OfLength(max(a, b))
}

// timed widens a time by the range of the diffusivity, with which it goes.
func timed(e *plan.Estimate, w wood) {
	if !e.Known() {
		return
	}
	d := mechanicsSpread(w.species)
	x := e.Value.Float()
	e.Low, e.High = estimate.Value(unit.DimUntyped, x*float64(d.Value/d.High)), estimate.Value(unit.DimUntyped, x*float64(d.Value/d.Low))
}

// wayOf says on which face it is hollow; less than 0.02 mm is flat.
func wayOf(rise plan.Estimate) string {
	switch l, ok := rise.Value.Length(); {
	case !ok:
		return ""
	case l > 20*unit.Micrometre:
		return string(mechanics.HollowMachined)
	case l < -20*unit.Micrometre:
		return string(mechanics.HollowBack)
	}
	return string(mechanics.StaysFlat)
}

// cupForAPoint follows a channelled board whose core is a point wetter than the room:
// how it is kept, thickness, width, depth of the channels, mean land, their share,
// the diffusivity in 1e-10 m2/s, the film in m/s, the coefficient. It returns a list:
// the worst rise, when in hours, and what is left after two weeks.
func cupForAPoint(a []unit.Value) (unit.Value, error) {
	if len(a) != 9 {
		return unit.Value{}, fmt.Errorf("a cup takes 9 values, not %d", len(a))
	}
	l, err := lengthsOf(a[1:], 4)
	if err != nil {
		return unit.Value{}, err
	}
	s := mechanics.Slab{
		Thickness: l[0], Machined: mechanics.Face{Deep: min(l[2], l[0]*9/10)}, Cut: mechanics.Ratio(min(0.95, a[5].Float())), Land: max(l[3], unit.Millimetre),
		Spreads: mechanics.Diffusivity(a[6].Float() * 1e-10), Film: mechanics.Film(a[7].Float()), Core: 1, Shell: 1,
	}
	each, worst, at, err := s.CupDays(mechanics.Keeping(a[0].Text()), l[1], a[8].Float(), cupDays)
	if err != nil {
		return unit.Value{}, err
	}
	micron := func(x unit.Length) unit.Value { return unit.OfLength(x.Round(unit.Micrometre, unit.Nearest)) }
	return unit.OfList(micron(worst.Rise), estimate.Value(unit.DimUntyped, float64(at)), micron(each[len(each)-1].Rise)), nil
}

// soManyPoints is a length for one point times the points.
func soManyPoints(a []unit.Value) (unit.Value, error) {
	l, err := lengthsOf(a, 1)
	if err != nil || len(a) != 2 {
		return unit.Value{}, fmt.Errorf("points of %v: %v", a, err)
	}
	return unit.OfLength(unit.FromMillimetres(l[0].Millimetres() * a[1].Float())), nil
}

// weightToFlatten is the load that presses a rise flat: rise, width, length,
// thickness, the modulus along in GPa and the part that it is across. In newtons.
func weightToFlatten(a []unit.Value) (unit.Value, error) {
	l, err := lengthsOf(a, 4)
	if err != nil || len(a) != 6 || l[1] <= 0 {
		return unit.Value{}, fmt.Errorf("a weight for %v: %v", a, err)
	}
	w := l[1].Millimetres()
	bend := mechanics.Curvature(8 * l[0].Millimetres() / (w * w))
	return estimate.Value(unit.DimForce, float64(mechanics.WeightToFlatten(bend, l[1], l[2], l[3], mechanics.Stress(a[4].Float()*1100*a[5].Float())))), nil
}
