package movement

import (
	"fmt"

	"scantling/internal/address"
	"scantling/internal/analysis/estimate"
	"scantling/internal/joinery"
	"scantling/internal/mechanics"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/timber"
	"scantling/internal/unit"
)

// bows lists solid wood that is glued face to face to sheet goods.
func (f *follower) bows() []plan.SheetBow {
	glued := map[address.Address]bool{}
	for _, j := range f.Piece.Joints {
		glued[j.Address] = j.Glue != "" && !j.Slides
	}
	var out []plan.SheetBow
	for i := range f.Joints {
		low := &f.Joints[i]
		a, b := f.parts[low.A], f.parts[low.B]
		if !glued[low.Joint] || a == nil || b == nil {
			continue
		}
		_, _, solidA := f.wood(a)
		_, _, solidB := f.wood(b)
		if solidA == solidB {
			continue
		}
		if solidB {
			a, b = b, a
		}
		if x, ok := f.bow(low, a, b); ok {
			out = append(out, x)
		}
	}
	return out
}

// bow works out one pair; false unless the parts lie flat on each other.
func (f *follower) bow(low *joinery.Lowered, solid, sheet *piece.Part) (plan.SheetBow, bool) {
	entry, _ := low.Entry.Axis()
	flat := func(p *piece.Part) bool {
		local, _ := p.Frame.LocalOf(entry)
		return local == piece.AlongThickness
	}
	across, _ := solid.Frame.Width.Axis()
	width := low.Region[across]
	if !flat(solid) || !flat(sheet) || width.Size() <= slight || !entered(width) {
		return plan.SheetBow{}, false
	}
	name := string(low.Joint) + ".bow"
	m, w, _ := f.wood(solid)
	out := plan.SheetBow{Joint: low.Joint, Solid: solid.Address, Sheet: sheet.Address, Width: f.Ledger.Less(name+".width", width.High, width.Low)}
	moe, part := f.acrossModulus(name, w, Sawn(m.Cut))
	args := []estimate.Arg{
		estimate.Of(out.Width), estimate.Of(solid.Thickness), estimate.Of(sheet.Thickness),
		f.woodArg(name, w), f.word(name, string(Sawn(m.Cut))), moe, part, f.sheetModulus(name, sheet, across), f.now,
	}
	out.Dry = f.maker.Estimate(name+".dry", "bow of wood on sheet", "", mechanics.SourceBow, plan.NoWood, append(args, f.dry)...)
	out.Wet = f.maker.Estimate(name+".wet", "bow of wood on sheet", "", mechanics.SourceBow, plan.NoWood, append(args, f.wet)...)
	return out, true
}

// sheetModulus is the bending modulus of a sheet along an axis of the piece.
func (f *follower) sheetModulus(name string, sheet *piece.Part, axis piece.Axis) estimate.Arg {
	p, err := timber.FindPanel(f.materials[sheet.Material].Species, sheet.Thickness.Nm)
	if err != nil {
		return estimate.Lack(plan.NoSheet)
	}
	if local, _ := sheet.Frame.LocalOf(axis); local == piece.AlongLength {
		return estimate.Number(f.maker, name+".sheet along", p.Along, plan.NoStiffness)
	}
	return estimate.Number(f.maker, name+".sheet across", p.Across, plan.NoStiffness)
}

// bowOnSheet is how far wood glued on a sheet stands off a straight edge: width, the
// thicknesses of wood and sheet, species, sawing, the modulus along in GPa and the
// part across, the sheet's modulus in GPa, and the moisture contents when it was
// glued and then. The sheet is taken not to move. Positive is hollow on the wood.
func bowOnSheet(a []unit.Value) (unit.Value, error) {
	if len(a) != 10 {
		return unit.Value{}, fmt.Errorf("a bow takes 10 values, not %d", len(a))
	}
	l, err := lengthsOf(a, 3)
	if err != nil {
		return unit.Value{}, err
	}
	m, err := materialOf(a[3], a[4], unit.OfText("width"))
	if err != nil {
		return unit.Value{}, err
	}
	change, err := m.Change(l[0], moisture(a[8]), moisture(a[9]))
	if err != nil || l[0] <= 0 {
		return unit.Value{}, fmt.Errorf("a bow over %v: %v", l[0], err)
	}
	pair := mechanics.TwoLayer{
		First: l[1], Second: l[2],
		StiffFirst:  mechanics.Stress(a[5].Float() * 1100 * a[6].Float()),
		StiffSecond: mechanics.Stress(a[7].Float() * 1000),
		Apart:       mechanics.Strain(-change.Value.Millimetres() / l[0].Millimetres()),
	}
	k, err := pair.Bow()
	if err != nil {
		return unit.Value{}, err
	}
	return unit.OfLength(k.Rise(l[0]).Round(unit.Micrometre, unit.Nearest)), nil
}
