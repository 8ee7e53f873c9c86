package fronts

import (
	_ "embed" // the help
	"slices"

	"scantling/internal/address"
	"scantling/internal/analysis"
	"scantling/internal/analysis/check/bodies"
	"scantling/internal/analysis/check/reach"
	"scantling/internal/analysis/check/verdict"
	"scantling/internal/analysis/marks"
	"scantling/internal/diag"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/timber"
	"scantling/internal/unit"
)

// Codes of the findings.
const (
	// CodeTouch: a front has too little room beside what it faces.
	//
	// Example: two doors of cherry 149 wide, 2 apart.
	CodeTouch diag.Code = "fronts-touch"
	// CodeInWay: something lies in the way of a front that is pulled out.
	//
	// Example: a front that reaches 6 down before the drawer below.
	CodeInWay diag.Code = "front-in-the-way"
	// CodeUnknown: how far a front grows is not known, or there are too many.
	//
	// Example: doors of a timber that the catalogue does not have.
	CodeUnknown diag.Code = "fronts-not-known"
	// CodeClear: all fronts clear one another.
	//
	// Example: a piece without any.
	CodeClear diag.Code = "fronts-clear"
)

// rule is the house's own least gap at the damp end.
const rule = "between fronts"

var usual = verdict.Practice("check.between-fronts", unit.Millimetre/2)

// MaxLooks bounds the work, counted in looks at two parts.
const MaxLooks = 20_000_000

// near is how far off a part is looked at: no front grows so far.
const near = 50 * unit.Millimetre

//go:embed doc.go
var source string

// Analysis is the check.
var Analysis = analysis.Declare(analysis.Info{
	Name: "fronts", Kind: analysis.Judge, Doc: verdict.Help(source), Requires: []analysis.Analysis{marks.Analysis},
}, func(c *analysis.Context) ([]plan.Finding, diag.List) {
	j := judge{Context: c, index: bodies.Of(c), out: verdict.Of("fronts", c), ranges: map[ledger.ID][]plan.Quantity{}}
	j.leaves = j.index.Leaves()
	j.least = j.out.Limit(rule, usual)
	j.all()
	return j.out.Done(CodeClear, message.New("check.fronts.clear")), nil
})

type judge struct {
	*analysis.Context
	index  *bodies.Index
	out    *verdict.Findings
	leaves []bodies.Leaf
	least  verdict.Limit
	// ranges are growths with their range, by their entry.
	ranges map[ledger.ID][]plan.Quantity
}

// all looks from every front at every part.
func (j *judge) all() {
	if looks := len(j.leaves) * len(j.Piece.Parts); looks > MaxLooks {
		j.out.Unknown(CodeUnknown, message.New("check.fronts.too-many", message.Count("fronts", len(j.leaves)), message.Count("parts", len(j.Piece.Parts))), "", diag.Place{})
		return
	}
	at := map[address.Address]int{}
	for i := range j.leaves {
		l := &j.leaves[i]
		for _, p := range l.Faces {
			at[p.Address] = i + 1
		}
		if l.Move != nil {
			for _, p := range l.Move.Parts {
				at[p.Address] = i + 1
			}
		}
	}
	for i := range j.leaves {
		l := &j.leaves[i]
		j.out.Judged()
		for k := range j.Piece.Parts {
			c := &j.Piece.Parts[k]
			if l.Has(c.Address) || c.Tilt != nil {
				continue
			}
			var other *bodies.Leaf
			if n := at[c.Address]; n > 0 {
				other = &j.leaves[n-1]
			}
			if other != nil && (inside(l, other) || inside(other, l)) {
				continue // a tray in a drawer
			}
			if j.inWay(l, other, c) {
				continue
			}
			if other == nil || at[c.Address]-1 > i {
				j.beside(l, other, c)
			}
		}
	}
}

// inside reports whether a drawer moves in a space of another leaf.
func inside(l, other *bodies.Leaf) bool {
	return l.Move != nil && l.Move.Space != nil && other.Address.Has(l.Move.Space.Address)
}

// inWay judges whether a part lies before a drawer: before its front, or, if it moves
// itself, before any of it. A door is opened first.
func (j *judge) inWay(l, other *bodies.Leaf, c *piece.Part) bool {
	if l.Move == nil || other != nil && other.Move == nil {
		return false
	}
	from := l.Faces
	if other != nil {
		from = l.Move.Parts
	}
	for _, p := range from {
		if p.Tilt != nil || !l.Ahead(bodies.Body(p)).Overlaps(bodies.Body(c)) {
			continue
		}
		var deep unit.Length
		for _, b := range j.index.WoodOf(p) {
			for _, w := range j.index.WoodOf(c) {
				if way := l.Ahead(b); way.Overlaps(w) {
					common := way.Common(w)
					deep = max(deep, min(common[piece.Right].Size(), common[piece.Up].Size()))
				}
			}
		}
		if deep == 0 {
			continue
		}
		is := j.Ledger.Leaf(string(c.Address)+".before."+string(p.Address), deep, ledger.Derived, "")
		none := j.Ledger.Leaf("nothing before a front", 0, ledger.HouseRule, "check.fronts (practice)")
		j.out.Add(plan.Finding{Status: plan.Fail, Severity: diag.Error, Code: CodeInWay, Address: c.Address, Where: c.Where, Is: &is, Limit: &none, Source: "check.fronts (practice)",
			Text: message.New("check.fronts.in-way", message.Text("mark", j.out.Mark(c.Address)), message.Address("drawer", l.Address), message.LengthRounded("is", deep, unit.Up)),
		}, c.Address, l.Faces[0].Address)
		return true
	}
	return false
}

// gap is the least distance of two parts along an axis.
type gap struct {
	axis piece.Axis
	// high says that the second part lies on the high side of the first.
	high       bool
	size       unit.Length
	mine, its  bodies.Box
	face, part *piece.Part
}

// beside judges a part beside the faces of a leaf.
func (j *judge) beside(l, other *bodies.Leaf, c *piece.Part) {
	if other != nil && !slices.Contains(other.Faces, c) {
		return
	}
	for _, p := range l.Faces {
		if p.Tilt != nil {
			continue
		}
		for _, a := range bodies.Plane(p) {
			for _, high := range []bool{true, false} {
				if g, ok := j.gap(l, other, p, c, a, high); ok {
					j.judge(l, other, g)
				}
			}
		}
	}
}

// gap returns the least distance between a face, on its way out, and a part beside it on
// one side; false where they do not face each other or a fit is all that counts.
func (j *judge) gap(l, other *bodies.Leaf, p, c *piece.Part, a piece.Axis, high bool) (gap, bool) {
	g := gap{axis: a, high: high, size: near, face: p, part: c}
	found := false
	apart := func(x, y bodies.Box) (unit.Length, bool) {
		d := y[a].Low - x[a].High
		if !high {
			d = x[a].Low - y[a].High
		}
		return d, d >= 0 && d < g.size && x[(a+1)%3].Overlaps(y[(a+1)%3]) && x[(a+2)%3].Overlaps(y[(a+2)%3])
	}
	way := func(b bodies.Box) bodies.Box {
		if other != nil && other.Move == nil {
			return b
		}
		return l.Sweeps(b)
	}
	if _, ok := apart(way(bodies.Body(p)), bodies.Body(c)); !ok {
		return g, false
	}
	for _, x := range j.index.WoodOf(p) {
		for _, y := range j.index.WoodOf(c) {
			d, ok := apart(way(x), y)
			if ok && !(other == nil && fitted(l, x, a)) {
				g.size, g.mine, g.its, found = d, x, y, true
			}
		}
	}
	return g, found
}

// fitted reports whether a box of a drawer lies between the walls of its opening along
// an axis: then its fit is judged against them.
func fitted(l *bodies.Leaf, b bodies.Box, a piece.Axis) bool {
	if l.Move == nil || l.Move.Space == nil {
		return false
	}
	s := bodies.BoxOf(l.Move.Space.Extent)[a]
	return s.Low <= b[a].Low && b[a].High <= s.High
}

// judge holds a gap against what both sides grow.
func (j *judge) judge(l, other *bodies.Leaf, g gap) {
	mine, ok, err := j.grows(l, g.face, g.axis, g.high)
	if err != nil {
		j.unknown(g.face)
		return
	}
	if !ok || other == nil && g.size == 0 && len(mine) == 0 && l.Move != nil {
		return // its hinges, or what it stands on
	}
	its, ok, err := j.grows(other, g.part, g.axis, !g.high)
	if err != nil {
		j.unknown(g.part)
		return
	}
	if !ok {
		return
	}
	name := string(g.face.Address) + ".beside." + string(g.part.Address)
	limit := j.Ledger.Sum(name+".wanted", append(append(mine, its...), j.least.Figure)...)
	if g.size >= limit.Nm || j.between(g) {
		return
	}
	is, growth := j.figure(name, g), limit.Nm-j.least.Nm
	x := plan.Finding{Status: plan.Fail, Severity: diag.Warning, Code: CodeTouch, Address: g.face.Address, Where: g.face.Where, Is: &is, Limit: &limit,
		Source: j.least.Source, Rule: rule}
	if growth > 0 {
		x.Source += "; " + verdict.Cite(timber.SourceNarrow)
	}
	for _, f := range append(slices.Clone(mine), its...) {
		x.Figures = append(x.Figures, j.ranges[f.Entry]...)
	}
	if g.size < growth || g.size == 0 {
		x.Severity = diag.Error
	}
	x.Text = message.New("check.fronts.touch", message.Text("mark", j.out.Mark(g.face.Address)), message.Text("other", j.out.Mark(g.part.Address)),
		message.LengthRounded("is", g.size, unit.Down), message.LengthRounded("grows", growth, unit.Up), message.LengthRounded("limit", limit.Nm, unit.Up))
	x.Remedy = []diag.Remedy{reach.Rewrite(j.Context, message.New("check.fronts.leave", message.LengthRounded("to", limit.Nm, unit.Up)), is, limit.Nm, unit.Up)}
	j.out.Add(x, g.face.Address, g.part.Address)
}

// figure is the gap between two faces where they are the parts' own.
func (j *judge) figure(name string, g gap) piece.Figure {
	low, high := g.face, g.part
	if !g.high {
		low, high = high, low
	}
	from, to := low.Extent[g.axis].High, high.Extent[g.axis].Low
	if to.Nm-from.Nm == g.size {
		return j.Ledger.Less(name, to, from)
	}
	return j.Ledger.Leaf(name, g.size, ledger.Derived, "")
}

// between reports whether a third part lies in the gap: then the two never meet.
func (j *judge) between(g gap) bool {
	room := g.mine.Common(g.its)
	room[g.axis] = bodies.Span{Low: g.mine[g.axis].High, High: g.its[g.axis].Low}
	if !g.high {
		room[g.axis] = bodies.Span{Low: g.its[g.axis].High, High: g.mine[g.axis].Low}
	}
	for i := range j.Piece.Parts {
		if p := &j.Piece.Parts[i]; p != g.face && p != g.part && len(j.index.Wood(room, p)) > 0 {
			return true
		}
	}
	return false
}

func (j *judge) unknown(p *piece.Part) {
	m, _ := j.index.Material(p)
	j.out.Unknown(CodeUnknown, message.New("check.fronts.unknown", message.Text("mark", j.out.Mark(p.Address)), message.Text("wood", m.Species)), p.Address, p.Where, p.Address)
}
