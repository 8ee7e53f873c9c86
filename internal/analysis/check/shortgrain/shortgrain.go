package shortgrain

import (
	_ "embed" // the help

	"scantling/internal/analysis"
	"scantling/internal/analysis/check/bodies"
	"scantling/internal/analysis/check/verdict"
	"scantling/internal/analysis/marks"
	"scantling/internal/diag"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// Codes of the findings.
const (
	// CodeEnd: too little wood is left between a cut and an end.
	//
	// Example: a housing 6 deep that begins 5 from the end of a side.
	CodeEnd diag.Code = "short-grain-at-end"
	// CodeNeck: wood runs across the grain over a neck that is too narrow.
	//
	// Example: a hook that stands 60 out across the grain and is 20 wide along it.
	CodeNeck diag.Code = "short-grain-neck"
	// CodeNeckUnknown: the outline is too long to be gone through.
	//
	// Example: an outline of more than a thousand corners.
	CodeNeckUnknown diag.Code = "short-grain-unknown"
	// CodeLong: everything has enough grain to stand on.
	//
	// Example: a housing 6 deep that begins 40 from the end.
	CodeLong diag.Code = "grain-long-enough"
)

//go:embed doc.go
var source string

// Analysis is the check.
var Analysis = analysis.Declare(analysis.Info{
	Name: "short grain", Kind: analysis.Judge, Doc: verdict.Help(source), Requires: []analysis.Analysis{marks.Analysis},
}, func(c *analysis.Context) ([]plan.Finding, diag.List) {
	j := judge{Context: c, index: bodies.Of(c), out: verdict.Of("short grain", c)}
	for i := range c.Piece.Parts {
		p := &c.Piece.Parts[i]
		if j.index.Sheet(p) || p.Form == piece.Bought || p.Form == piece.Round {
			continue
		}
		for _, s := range j.index.Slots(p) {
			j.slot(s)
		}
		for _, cut := range j.index.Cuts(p.Address) {
			j.hole(p, cut)
		}
		j.neck(p)
	}
	return j.out.Done(CodeLong, message.New("check.short-grain.enough")), nil
})

type judge struct {
	*analysis.Context
	index *bodies.Index
	out   *verdict.Findings
}

// least is what is left beyond any cut at least.
const least = 3 * unit.Millimetre

// wall is the wood between a cut and an end: how long its grain is, and how long it
// should be.
type wall struct {
	cut   *piece.Cut
	part  *piece.Part
	is    piece.Figure
	usual unit.Length
	// of is what the wall's length is held against: how deep or wide the cut is.
	of     piece.Figure
	remedy []diag.Remedy
}

// slot judges both ends of a straight cut that opens into a face or edge.
func (j *judge) slot(s bodies.Slot) {
	oblique := s.LeanNear.Nm != 0 && (s.LeanNear.Nm > 0) != (s.LeanFar.Nm > 0) // for a feather in a mitre
	if oblique || s.Axis == piece.AlongLength || s.Cut.Kind == piece.Tail || s.Cut.Kind == piece.Pin || s.Cut.Kind == piece.KeySlot {
		return
	}
	low, high, of := s.Near, s.Far, s.Depth
	usual := min(s.Depth.Nm, s.Whole(s.Axis))
	if s.Run == piece.AlongLength { // a mortise or recess: what is levered in it splits the end off
		if s.Cut.Kind != piece.Mortise && s.Cut.Kind != piece.ScrewSlot {
			return
		}
		low, high = s.From, s.To
		usual = s.Far.Nm - s.Near.Nm
		of = j.Ledger.Less(string(s.Cut.Address)+".wide", s.Far, s.Near)
	} else { // undercut walls are nearer to the end at their foot
		name := string(s.Cut.Address)
		if s.LeanNear.Nm < 0 {
			low = j.Ledger.Sum(name+".foot", low, s.LeanNear)
		}
		if s.LeanFar.Nm < 0 {
			high = j.Ledger.Less(name+".foot", high, s.LeanFar)
		}
	}
	w := wall{cut: s.Cut, part: s.Part, usual: usual, of: of}
	limit := j.limit(w)
	if w.is = low; w.is.Nm > 0 {
		if w.is.Nm < limit.Nm && limit.Nm-w.is.Nm < s.Whole(piece.AlongLength)-high.Nm {
			w.remedy = append(w.remedy, j.out.Rewrite(message.New("check.short-grain.move", message.LengthRounded("to", low.Nm+limit.Nm-w.is.Nm, unit.Up)), low, limit.Nm, unit.Up))
		}
		j.judge(w, j.shallower(s, w))
	}
	w.remedy = nil
	if w.is = j.Ledger.Less(string(s.Cut.Address)+".beyond", s.Part.Length, high); w.is.Nm > 0 {
		j.judge(w, j.shallower(s, w))
	}
}

// shallower is the remedy of a cut across the grain: no deeper than the wall is long.
func (j *judge) shallower(s bodies.Slot, w wall) []diag.Remedy {
	if s.Run == piece.AlongLength || w.is.Nm < least || w.is.Nm >= s.Depth.Nm {
		return nil
	}
	return []diag.Remedy{j.out.Rewrite(message.New("check.short-grain.shallower", message.LengthRounded("to", w.is.Nm, unit.Down)), s.Depth, w.is.Nm, unit.Down)}
}

// hole judges a hole of the document's own beside an end.
func (j *judge) hole(p *piece.Part, cut *piece.Cut) {
	if cut.Bore == nil || cut.Kind != piece.Hole || cut.Joint != "" {
		return
	}
	if axis, _ := cut.Bore.Open.Axis(); axis == piece.AlongLength {
		return
	}
	name := string(cut.Address)
	radius := j.Ledger.Half(name+".radius", cut.Bore.Diameter)
	for _, is := range []piece.Figure{
		j.Ledger.Less(name+".beyond", cut.Bore.At[0], radius),
		j.Ledger.Less(name+".beyond", p.Length, cut.Bore.At[0], radius),
	} {
		j.judge(wall{cut: cut, part: p, is: is, usual: cut.Bore.Diameter.Nm, of: cut.Bore.Diameter}, nil)
	}
}

func (j *judge) limit(w wall) verdict.Limit {
	return j.out.Limit("short grain", verdict.Practice("check.short-grain", max(w.usual, least)))
}

// judge adds a finding where the wall is too short along its grain.
func (j *judge) judge(w wall, more []diag.Remedy) {
	limit := j.limit(w)
	j.out.Judged()
	if w.is.Nm <= 0 || w.is.Nm >= limit.Nm {
		return
	}
	j.out.Add(plan.Finding{
		Status: plan.Fail, Severity: diag.Warning, Code: CodeEnd, Address: w.cut.Address, Where: w.cut.Where,
		Text: message.New("check.short-grain.at-end", message.Text("mark", j.out.Mark(w.part.Address)), message.Word("cut", "cut."+string(w.cut.Kind)),
			message.LengthRounded("is", w.is.Nm, unit.Down), message.LengthRounded("limit", limit.Nm, unit.Up)),
		Is: verdict.Figure(w.is), Limit: &limit.Figure, Source: limit.Source,
		Figures: j.ratios(string(w.cut.Address)+".grain to depth", w.is, w.of, limit), Remedy: append(w.remedy, more...),
	}, w.part.Address)
}

// ratios are how a wall's grain stands to what is held against it, and how it should.
func (j *judge) ratios(name string, is, of piece.Figure, limit verdict.Limit) []plan.Quantity {
	out := j.out.Ratio(plan.RoleRatio, name, is, of, verdict.OfPiece)
	return append(out, j.out.Ratio(plan.RoleAsked, name+" asked", limit.Figure, of, limit.From)...)
}
