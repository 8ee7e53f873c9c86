package backtoback

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
	"scantling/internal/proportion"
	"scantling/internal/unit"
)

// Codes of the findings.
const (
	// CodeBetween: too little wood is left between cuts from two sides.
	//
	// Example: housings 6 deep from both faces of a board of 18 leave 6.
	CodeBetween diag.Code = "wood-between-too-thin"
	// CodeTongue: the tongue beside a rebate is too thin.
	//
	// Example: a rebate 8 deep in a board of 10 leaves a tongue of 2.
	CodeTongue diag.Code = "tongue-too-thin"
	// CodeWall: the wall behind a groove or housing is too thin.
	//
	// Example: a groove 5 deep in a side of 6 leaves 1.
	CodeWall diag.Code = "wall-too-thin"
	// CodeDepth: the depth of a cut is not known.
	//
	// Example: a groove without depth.
	CodeDepth diag.Code = "depth-unknown"
	// CodeThick: all webs, tongues and walls are thick enough.
	//
	// Example: housings 4.5 deep in boards of 14, from one face.
	CodeThick diag.Code = "between-enough"
)

//go:embed doc.go
var source string

// Analysis is the check.
var Analysis = analysis.Declare(analysis.Info{
	Name: "back to back", Kind: analysis.Judge, Doc: verdict.Help(source), Requires: []analysis.Analysis{marks.Analysis},
}, func(c *analysis.Context) ([]plan.Finding, diag.List) {
	j := judge{Context: c, out: verdict.Of("back to back", c)}
	index := bodies.Of(c)
	for i := range c.Piece.Parts {
		p := &c.Piece.Parts[i]
		var known []bodies.Slot
		for _, s := range index.Slots(p, piece.Groove, piece.Housing, piece.Rebate, piece.Channel, piece.Trough, piece.Recess) {
			if s.Depth.Nm <= 0 {
				j.out.Unknown(CodeDepth, message.New("check.between.depth", j.mark(p), cutWord("cut", s)), s.Cut.Address, s.Cut.Where, p.Address)
				continue
			}
			if !s.Through {
				known = append(known, s)
				j.wall(s)
			}
		}
		for k, s := range known {
			for _, t := range known[k+1:] {
				if s.Axis == t.Axis && s.High != t.High && s.Meets(t) {
					j.between(s, t)
				}
			}
		}
	}
	return j.out.Done(CodeThick, message.New("check.between.enough")), nil
})

type judge struct {
	*analysis.Context
	out *verdict.Findings
}

func (j *judge) mark(p *piece.Part) message.Arg { return message.Text("mark", j.out.Mark(p.Address)) }

func cutWord(name string, s bodies.Slot) message.Arg {
	return message.Word(name, "cut."+string(s.Cut.Kind))
}

// between judges the web between two cuts from opposite sides.
func (j *judge) between(s, t bodies.Slot) {
	whole := s.Part.Sizes()[s.Axis]
	web := j.Ledger.Less(string(s.Cut.Address)+".web", whole, s.Depth, t.Depth)
	usual, err := proportion.LeastBetween(whole.Nm, j.step())
	if err != nil {
		return // thinner than any board: the wall says so
	}
	limit := j.out.Limit("least between", usual)
	j.out.Judged()
	if web.Nm >= limit.Nm {
		return
	}
	x := plan.Finding{Status: plan.Fail, Severity: diag.Warning, Code: CodeBetween, Address: s.Cut.Address, Where: s.Cut.Where,
		Is: verdict.Figure(web), Limit: &limit.Figure, Source: limit.Source}
	args := []message.Arg{j.mark(s.Part), cutWord("cut", s), cutWord("other", t), message.LengthRounded("limit", limit.Nm, unit.Up), message.Length("thick", whole.Nm)}
	if web.Nm <= 0 {
		x.Severity = diag.Error
		x.Text = message.New("check.between.none", append(args, message.LengthRounded("over", -web.Nm, unit.Up))...)
	} else {
		x.Text = message.New("check.between.thin", append(args, message.LengthRounded("is", web.Nm, unit.Down))...)
	}
	deeper := s
	if t.Depth.Nm > s.Depth.Nm {
		deeper = t
	}
	if to := deeper.Depth.Nm - (limit.Nm - web.Nm); to > 0 {
		x.Remedy = []diag.Remedy{j.out.Rewrite(message.New("check.between.shallower-of", cutWord("cut", deeper), message.LengthRounded("to", to, unit.Down)), deeper.Depth, to, unit.Down)}
	}
	j.out.Add(x, s.Part.Address)
}

// wall judges what is left behind one cut.
func (j *judge) wall(s bodies.Slot) {
	left := j.Ledger.Less(string(s.Cut.Address)+".left", s.Part.Sizes()[s.Axis], s.Depth)
	code, limit := CodeWall, j.out.Limit("least wall", verdict.Practice("check.least-wall", unit.MM(2)))
	switch s.Cut.Kind {
	case piece.Rebate:
		code, limit = CodeTongue, j.out.Limit("least tongue", verdict.Practice("check.least-tongue", unit.MM(3)))
	case piece.Groove, piece.Housing:
	default:
		return
	}
	j.out.Judged()
	if left.Nm >= limit.Nm {
		return
	}
	args := []message.Arg{j.mark(s.Part), cutWord("cut", s), message.LengthRounded("is", left.Nm, unit.Down), message.LengthRounded("limit", limit.Nm, unit.Up), message.Length("depth", s.Depth.Nm)}
	text := message.New("check.between.wall", args...)
	if code == CodeTongue {
		text = message.New("check.between.tongue", args...)
	}
	j.out.Add(plan.Finding{Status: plan.Fail, Severity: diag.Warning, Code: code, Text: text, Address: s.Cut.Address, Where: s.Cut.Where,
		Is: verdict.Figure(left), Limit: &limit.Figure, Source: limit.Source,
		Remedy: []diag.Remedy{j.out.Rewrite(message.New("check.between.shallower", message.LengthRounded("to", s.Depth.Nm-limit.Nm+left.Nm, unit.Down)),
			s.Depth, s.Depth.Nm-limit.Nm+left.Nm, unit.Down)},
	}, s.Part.Address)
}

func (j *judge) step() unit.Length {
	if j.Shop == nil {
		return proportion.MetricStep
	}
	return j.Shop.Step()
}
