package hidden

import (
	_ "embed" // the help

	"scantling/internal/address"
	"scantling/internal/analysis"
	"scantling/internal/analysis/check/bodies"
	"scantling/internal/analysis/check/verdict"
	"scantling/internal/analysis/marks"
	"scantling/internal/diag"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// Codes of the findings.
const (
	// CodeShows: a groove or rebate shows at an end.
	//
	// Example: a groove for a bottom that runs through the pins of a box joint.
	CodeShows diag.Code = "groove-shows"
	// CodeMate: what goes into a cut is not known.
	//
	// Example: a groove for a bottom that the piece does not have.
	CodeMate diag.Code = "groove-for-nothing"
	// CodeHidden: no groove or rebate shows at an end.
	//
	// Example: grooves that run out into the rebates of the corners.
	CodeHidden diag.Code = "grooves-hidden"
)

// hairline is how wide an opening may be before it is seen, unless the house says
// otherwise.
var hairline = verdict.Practice("check.hairline", unit.Millimetre/2)

//go:embed doc.go
var source string

// Analysis is the check.
var Analysis = analysis.Declare(analysis.Info{
	Name: "hidden", Kind: analysis.Judge, Doc: verdict.Help(source), Requires: []analysis.Analysis{marks.Analysis},
}, func(c *analysis.Context) ([]plan.Finding, diag.List) {
	j := judge{Context: c, index: bodies.Of(c), out: verdict.Of("hidden", c), moves: map[address.Address]int{}, together: map[int][]*piece.Part{}}
	j.limit = j.out.Limit("hairline", hairline)
	for i, m := range j.index.Moves() {
		for _, p := range m.Parts {
			j.moves[p.Address] = i + 1
		}
	}
	for i := range c.Piece.Parts {
		p := &c.Piece.Parts[i]
		j.together[j.moves[p.Address]] = append(j.together[j.moves[p.Address]], p)
	}
	for i := range c.Piece.Parts {
		for _, s := range j.index.Slots(&c.Piece.Parts[i], piece.Groove, piece.Rebate) {
			if s.Cut.Joint == "" {
				continue
			}
			if j.index.Part(s.Cut.With) == nil {
				j.out.Unknown(CodeMate, message.New("check.hidden.mate", message.Text("mark", j.out.Mark(s.Part.Address)), message.Word("cut", "cut."+string(s.Cut.Kind)), message.Address("with", s.Cut.With)),
					s.Cut.Address, s.Cut.Where, s.Part.Address)
				continue
			}
			j.out.Judged()
			if s.StartOpen {
				j.end(s, false)
			}
			if s.EndOpen {
				j.end(s, true)
			}
		}
	}
	return j.out.Done(CodeHidden, message.New("check.hidden.hidden")), nil
})

type judge struct {
	*analysis.Context
	index *bodies.Index
	out   *verdict.Findings
	limit verdict.Limit
	// moves tells what moves together; 0 stands still.
	moves map[address.Address]int
	// together are the parts of each such number.
	together map[int][]*piece.Part
}

// end judges the opening of a slot at one end of its run.
func (j *judge) end(s bodies.Slot, high bool) {
	side := piece.SideOf(s.Run, high)
	if j.sliced(s, side) {
		return
	}
	run := bodies.Span{Low: 0, High: unit.Nanometre}
	if high {
		whole := s.Whole(s.Run)
		run = bodies.Span{Low: whole - unit.Nanometre, High: whole}
	}
	_, across := s.Footprint()
	deep := bodies.Span{Low: 0, High: s.Depth.Nm}
	if s.High {
		whole := s.Whole(s.Axis)
		deep = bodies.Span{Low: whole - s.Depth.Nm, High: whole}
	}
	var layer bodies.Box
	along, span := bodies.Place(s.Part, s.Run, run)
	layer[along] = span
	a, span := bodies.Place(s.Part, s.Across, across)
	layer[a] = span
	b, span := bodies.Place(s.Part, s.Axis, deep)
	layer[b] = span

	// What nothing fills just inside, and then what nothing covers just outside.
	open := j.outside(j.less([]bodies.Box{layer}, s.Part), s, along, high)
	hole, wide := widest(j.outside(j.less(j.beside(layer, s, along), s.Part), s, along, high), a, b, j.limit.Nm)
	if !wide {
		return
	}
	counts := min(hole[a].Size(), hole[b].Size())
	if seen, ok := widest(open, a, b, j.limit.Nm); ok {
		hole = seen
	}
	j.shows(s, side, counts, hole[a].Size(), hole[b].Size())
}

// outside returns what of openings inside an end nothing covers just beyond it.
func (j *judge) outside(open []bodies.Box, s bodies.Slot, along piece.Axis, high bool) []bodies.Box {
	_, sign := s.Part.Frame.Directions()[s.Run].Axis()
	shift := unit.Nanometre
	if (sign > 0) != high {
		shift = -shift
	}
	for i := range open {
		open[i][along].Low += shift
		open[i][along].High += shift
	}
	return j.less(open, s.Part)
}

// beside takes the joint's own clearance away from an opening: what lies beside the
// wood that fills it, as far as the joint leaves clearance there, and a hairline at
// most.
func (j *judge) beside(layer bodies.Box, s bodies.Slot, along piece.Axis) []bodies.Box {
	open := []bodies.Box{layer}
	joint, mate := j.joint(s.Cut.Joint), j.index.Part(s.Cut.With)
	if joint == nil {
		return open
	}
	across, _ := bodies.Place(s.Part, s.Across, bodies.Span{})
	deep, _ := bodies.Place(s.Part, s.Axis, bodies.Span{})
	for _, w := range j.index.WoodOf(mate) {
		if !w[along].Overlaps(layer[along]) {
			continue
		}
		w[across] = wider(w[across], min(joint.ClearAcross.Nm, j.limit.Nm))
		w[deep] = wider(w[deep], min(joint.ClearDeep.Nm, j.limit.Nm))
		open = bodies.LessAll(open, w)
	}
	return open
}

func wider(s bodies.Span, by unit.Length) bodies.Span {
	return bodies.Span{Low: s.Low - by, High: s.High + by}
}

// joint returns a joint, or nil.
func (j *judge) joint(a address.Address) *piece.Joint {
	for i := range j.Piece.Joints {
		if j.Piece.Joints[i].Address == a {
			return &j.Piece.Joints[i]
		}
	}
	return nil
}

// shows tells of an opening that is seen, of which so much counts.
func (j *judge) shows(s bodies.Slot, side piece.Side, counts, across, deep unit.Length) {
	is := j.Ledger.Leaf(string(s.Cut.Address)+".opening beyond its clearance at "+string(side), counts, ledger.Derived, "")
	x := plan.Finding{Status: plan.Fail, Severity: diag.Warning, Code: CodeShows, Address: s.Cut.Address, Where: s.Cut.Where,
		Is: &is, Limit: &j.limit.Figure, Source: j.limit.Source,
		Text: message.New("check.hidden.shows", message.Text("mark", j.out.Mark(s.Part.Address)), message.Word("cut", "cut."+string(s.Cut.Kind)), message.Word("side", "side."+string(side)),
			message.Length("is", across), message.Length("deep", deep)),
	}
	if r, ok := j.closer(s, deep); ok {
		x.Remedy = []diag.Remedy{r}
	}
	j.out.Add(x, s.Part.Address)
}

// closer is the remedy where nothing but a joint's clearance at the bottom of the cut
// shows: less of it.
func (j *judge) closer(s bodies.Slot, deep unit.Length) (diag.Remedy, bool) {
	joint := j.joint(s.Cut.Joint)
	if joint == nil || joint.ClearDeep.Nm != deep || deep <= j.limit.Nm {
		return diag.Remedy{}, false
	}
	return j.out.Rewrite(message.New("check.hidden.closer", message.LengthRounded("to", j.limit.Nm, unit.Down)), joint.ClearDeep, j.limit.Nm, unit.Down), true
}

// less takes the wood of all parts that move with the slot's part, or stand still
// with it, away.
func (j *judge) less(list []bodies.Box, own *piece.Part) []bodies.Box {
	for _, p := range j.together[j.moves[own.Address]] {
		if len(list) == 0 {
			return nil
		}
		list = j.index.Without(list, p)
	}
	return list
}
