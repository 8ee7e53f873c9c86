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

// hairline is the width below which an opening is a joint's clearance.
const hairline = unit.Millimetre / 2

//go:embed doc.go
var source string

// Analysis is the check.
var Analysis = analysis.Declare(analysis.Info{
	Name: "hidden", Kind: analysis.Judge, Doc: verdict.Help(source), Requires: []analysis.Analysis{marks.Analysis},
}, func(c *analysis.Context) ([]plan.Finding, diag.List) {
	j := judge{Context: c, index: bodies.Of(c), out: verdict.Of("hidden", c), moves: map[address.Address]int{}, together: map[int][]*piece.Part{}}
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
	open := j.less([]bodies.Box{layer}, s.Part)
	_, sign := s.Part.Frame.Directions()[s.Run].Axis()
	shift := unit.Nanometre
	if (sign > 0) != high {
		shift = -shift
	}
	for i := range open {
		open[i][along].Low += shift
		open[i][along].High += shift
	}
	open = j.less(open, s.Part)
	var worst bodies.Box
	for _, o := range open {
		if min(o[a].Size(), o[b].Size()) >= hairline && area(o, a, b) > area(worst, a, b) {
			worst = o
		}
	}
	if worst[a].Size() <= 0 {
		return
	}
	wide := j.Ledger.Leaf(string(s.Cut.Address)+".opening at "+string(side), worst[a].Size(), ledger.Derived, "")
	none := j.Ledger.Leaf("no opening", hairline, ledger.HouseRule, "check.hairline (practice)")
	j.out.Add(plan.Finding{Status: plan.Fail, Severity: diag.Warning, Code: CodeShows, Address: s.Cut.Address, Where: s.Cut.Where,
		Is: &wide, Limit: &none, Source: "check.hairline (practice)",
		Text: message.New("check.hidden.shows", message.Text("mark", j.out.Mark(s.Part.Address)), message.Word("cut", "cut."+string(s.Cut.Kind)), message.Word("side", "side."+string(side)),
			message.Length("is", wide.Nm), message.Length("deep", worst[b].Size())),
	}, s.Part.Address)
}

// area compares openings; whole square micrometres stay in range.
func area(b bodies.Box, a, c piece.Axis) int64 {
	return int64(b[a].Size()/unit.Micrometre) * int64(b[c].Size()/unit.Micrometre)
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
