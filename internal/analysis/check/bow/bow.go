package bow

import (
	_ "embed" // the help

	"cmp"
	"slices"
	"strings"

	"scantling/internal/address"
	"scantling/internal/analysis"
	"scantling/internal/analysis/check/bodies"
	"scantling/internal/analysis/check/verdict"
	"scantling/internal/analysis/marks"
	"scantling/internal/analysis/movement"
	"scantling/internal/diag"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// Codes of the findings.
const (
	// CodeBows: wood on a sheet bows so far that it is seen.
	//
	// Example: 6 mm of flat-sawn cherry, 300 wide, glued on one face of 6 mm ply.
	CodeBows diag.Code = "bows-on-sheet"
	// CodeBinds: wood on a sheet bows so far that it takes up the room of its fit.
	//
	// Example: a faced lid with 0.3 above it.
	CodeBinds diag.Code = "bow-takes-the-room"
	// CodeUnknown: how far wood on a sheet bows is not known.
	//
	// Example: a facing on a sheet that the catalogue does not have.
	CodeUnknown diag.Code = "bow-not-known"
	// CodeFlat: all wood that is glued on sheets stays flat.
	//
	// Example: a piece without any.
	CodeFlat diag.Code = "stays-flat"
)

// rule is the house's own bow to the foot of width.
const rule = "bow to the foot"

// usual is the bow to the foot of width that a straight edge shows. Common practice, no
// source.
var usual = verdict.Practice("check.seen-bow", unit.Inch/32)

//go:embed doc.go
var source string

// Analysis is the check.
var Analysis = analysis.Declare(analysis.Info{
	Name: "bow", Kind: analysis.Judge, Doc: verdict.Help(source), Requires: []analysis.Analysis{marks.Analysis, movement.Analysis, movement.Seasons},
}, func(c *analysis.Context) ([]plan.Finding, diag.List) {
	j := judge{Context: c, index: bodies.Of(c), out: verdict.Of("bow", c), clearances: movement.Analysis.Get(c)}
	all := movement.Seasons.Get(c).Bows
	j.foot = j.out.Limit(rule, usual)
	for i, b := range all {
		j.out.Judged()
		if !j.balanced(all, i) {
			j.bow(b)
		}
	}
	j.unknown()
	return j.out.Done(CodeFlat, message.New("check.bow.flat")), nil
})

type judge struct {
	*analysis.Context
	index      *bodies.Index
	out        *verdict.Findings
	clearances []plan.Clearance
	// foot is what is put up with on a foot of width.
	foot verdict.Limit
	// open are the pairs of which nobody knows how far they bow, and lacks what is
	// missing.
	open  []plan.SheetBow
	lacks []plan.Datum
}

// balanced reports whether the sheet of a pair has wood on its other face that holds
// against it.
func (j *judge) balanced(all []plan.SheetBow, at int) bool {
	own := all[at]
	for i, b := range all {
		if i != at && b.Sheet == own.Sheet && j.above(b) != j.above(own) && j.against(own, b) {
			return true
		}
	}
	return false
}

// above reports whether the wood of a pair lies on the high side of its sheet.
func (j *judge) above(b plan.SheetBow) bool {
	solid, sheet := j.index.Part(b.Solid), j.index.Part(b.Sheet)
	axis, _ := sheet.Frame.Thickness.Axis()
	return solid.Extent[axis].Low.Nm >= sheet.Extent[axis].High.Nm-sheet.Thickness.Nm/2
}

// against reports whether the second piece of wood holds against the first: at least half
// as thick, over nine tenths of its width, with the grain one way. The formula for two
// layers says nothing of what is left then.
func (j *judge) against(x, y plan.SheetBow) bool {
	a, b := j.index.Part(x.Solid), j.index.Part(y.Solid)
	across, _ := a.Frame.Width.Axis()
	other, _ := b.Frame.Width.Axis()
	common := bodies.Body(a).Common(bodies.Body(b))[across].Size()
	return across == other && b.Thickness.Nm >= a.Thickness.Nm/2 && common >= x.Width.Nm/10*9
}

// bow judges one pair, by the end of the year that leaves it farther beyond what it may.
func (j *judge) bow(b plan.SheetBow) {
	solid, sheet := j.index.Part(b.Solid), j.index.Part(b.Sheet)
	if !b.Dry.Known() || !b.Wet.Known() {
		// Narrower than both are thick, it has no length to bow over.
		if b.Width.Nm > solid.Thickness.Nm+sheet.Thickness.Nm {
			j.open = append(j.open, b)
			j.lacks = append(append(j.lacks, b.Dry.Missing...), b.Wet.Missing...)
		}
		return
	}
	seen := j.Ledger.Times(string(b.Joint)+".bow seen", b.Width, int64(j.foot.Nm), int64(12*unit.Inch))
	var worst plan.Finding
	for _, end := range []struct {
		when string
		is   plan.Estimate
	}{{"dry", b.Dry}, {"wet", b.Wet}} {
		x := j.end(b, end.is, end.when, seen)
		if x.Is != nil && (worst.Is == nil || away(*x.Is)-x.Limit.Nm > away(*worst.Is)-worst.Limit.Nm) {
			worst = x
		}
	}
	if worst.Is != nil {
		j.out.Add(worst, b.Solid, b.Sheet)
	}
}

func away(f plan.Figure) unit.Length { return max(f.Nm, -f.Nm) }

// end judges one end of the year; a finding without figures is none.
func (j *judge) end(b plan.SheetBow, e plan.Estimate, when string, seen piece.Figure) plan.Finding {
	value, low, high, _ := e.Lengths()
	hollow := value > 0
	if !hollow {
		value, low, high = -value, -high, -low
	}
	limit, code, key := seen, CodeBows, "check.bow.seen"
	cite := j.foot.Source
	if room, at, ok := j.room(b, when); ok && room.Nm < seen.Nm {
		limit, code, key = room, CodeBinds, "check.bow.room"
		cite = string(at) + " (stated)"
	}
	if high <= max(0, limit.Nm) {
		return plan.Finding{}
	}
	f := e.Figure()
	x := plan.Finding{Status: plan.Fail, Severity: diag.Warning, Code: code, Address: b.Joint, Where: j.where(b.Joint), Is: &f, Limit: &limit,
		Figures: []plan.Quantity{verdict.Quantity(plan.RoleIs, e)}, Source: cite + "; " + verdict.Cite(e.Source)}
	if code == CodeBows {
		x.Rule = rule
	}
	which := "wood"
	if !hollow {
		which = "sheet"
	}
	x.Text = message.New(key, message.Text("mark", j.out.Mark(b.Solid)), message.Text("sheet", j.out.Mark(b.Sheet)), message.Length("wide", b.Width.Nm),
		message.Range("is", message.LengthRounded("value", value, unit.Nearest), message.LengthRounded("low", max(0, low), unit.Down), message.LengthRounded("high", high, unit.Up)),
		message.LengthRounded("limit", limit.Nm, unit.Down), message.Word("when", "bow."+when), message.Word("hollow", "bow."+which))
	return x
}

// room is what the fit of a pair that moves leaves where it bows, at an end of the year,
// with the fit's address; false where it moves in none.
func (j *judge) room(b plan.SheetBow, when string) (piece.Figure, address.Address, bool) {
	axis, _ := j.index.Part(b.Sheet).Frame.Thickness.Axis()
	for _, m := range j.index.Moves() {
		if m.Fit == nil || !m.Has(b.Sheet) {
			continue
		}
		across, stated := "behind", m.Fit.Behind
		switch axis {
		case piece.Right:
			across, stated = "sides", m.Fit.Sides
		case piece.Up:
			across, stated = "above", m.Fit.Above
		}
		for _, c := range j.clearances {
			if c.Fit != m.Fit.Address || c.Across != across {
				continue
			}
			if when == "dry" {
				return c.AtDry, c.Fit, true
			}
			return c.AtWet, c.Fit, true
		}
		return stated, m.Fit.Address, stated.Nm > 0
	}
	return piece.Figure{}, "", false
}

// unknown tells once of all pairs that there is no estimate of, and what is missing.
func (j *judge) unknown() {
	if len(j.open) == 0 {
		return
	}
	slices.Sort(j.lacks)
	var lacks, pairs []message.Arg
	for _, d := range slices.Compact(j.lacks) {
		lacks = append(lacks, message.Word("", "datum."+strings.ReplaceAll(string(d), " ", "-")))
	}
	slices.SortStableFunc(j.open, func(a, b plan.SheetBow) int { return cmp.Compare(a.Joint, b.Joint) })
	var parts []address.Address
	for _, b := range j.open {
		parts = append(parts, b.Solid, b.Sheet)
		if mark := message.Text("", j.out.Mark(b.Solid)); !slices.ContainsFunc(pairs, func(a message.Arg) bool { return a.S == mark.S }) {
			pairs = append(pairs, mark)
		}
	}
	j.out.Unknown(CodeUnknown, message.New("check.bow.unknown", message.List("marks", pairs...), message.List("lacks", lacks...)),
		j.open[0].Joint, j.where(j.open[0].Joint), parts...)
}

// where is the place of a joint in the document.
func (j *judge) where(a address.Address) diag.Place {
	for i := range j.Piece.Joints {
		if j.Piece.Joints[i].Address == a {
			return j.Piece.Joints[i].Where
		}
	}
	return diag.Place{}
}
