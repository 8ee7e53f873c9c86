package gluejoint

import (
	_ "embed" // the help
	"slices"

	"scantling/internal/analysis"
	"scantling/internal/analysis/check/bodies"
	"scantling/internal/analysis/check/verdict"
	"scantling/internal/analysis/cutting"
	"scantling/internal/analysis/marks"
	"scantling/internal/diag"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
)

// Codes of the findings.
const (
	// CodeInCut: a joint between strips runs along in a cut.
	//
	// Example: a joint at 88 of a panel with a channel from 85 to 92.
	CodeInCut diag.Code = "strip-joint-in-cut"
	// CodeJoints: the joints of a panel are not known.
	//
	// Example: a panel of three strips with one joint.
	CodeJoints diag.Code = "strip-joints-unknown"
	// CodeOnLand: all joints between strips lie on lands.
	//
	// Example: a joint at 88 of a panel with channels up to 85 and from 92.
	CodeOnLand diag.Code = "strip-joints-on-lands"
)

//go:embed doc.go
var source string

// Analysis is the check.
var Analysis = analysis.Declare(analysis.Info{
	Name: "glue joint", Kind: analysis.Judge, Doc: verdict.Help(source), Requires: []analysis.Analysis{marks.Analysis, cutting.Strips},
}, func(c *analysis.Context) ([]plan.Finding, diag.List) {
	return judge(c, cutting.Strips.Get(c).Workpieces), nil
})

func judge(c *analysis.Context, pieces []plan.Workpiece) []plan.Finding {
	out, index := verdict.Of("glue joint", c), bodies.Of(c)
	for _, w := range pieces {
		if w.Kind != plan.PanelPiece {
			continue
		}
		for _, a := range w.Parts {
			p := index.Part(a)
			switch {
			case p == nil:
			case len(w.Joints) != strips(pieces, w)-1:
				out.Unknown(CodeJoints, message.New("check.glue-joint.unknown", message.Text("mark", out.Mark(a)), message.Count("count", strips(pieces, w))), a, p.Where, a)
			default:
				out.Judged()
				for _, at := range w.Joints {
					one(c.Ledger, index, out, p, at)
				}
			}
		}
	}
	return out.Done(CodeOnLand, message.New("check.glue-joint.on-land"))
}

// strips counts what a panel is glued up from, strip by strip.
func strips(pieces []plan.Workpiece, panel plan.Workpiece) int {
	n := len(panel.From)
	for _, w := range pieces {
		if w.Kind == plan.NarrowPanel && slices.Contains(panel.From, w.ID) {
			n += len(w.From) - 1
		}
	}
	return n
}

// one holds a joint against the cuts of a part; the first that it runs in is told.
func one(l *ledger.Ledger, index *bodies.Index, out *verdict.Findings, p *piece.Part, at piece.Figure) {
	for _, c := range index.Cuts(p.Address) {
		near, far, ok := across(l, c)
		if !ok || at.Nm < near.Nm || at.Nm > far.Nm {
			continue
		}
		edge := near // the nearer way out
		if far.Nm-at.Nm < at.Nm-near.Nm {
			edge = far
		}
		out.Add(plan.Finding{Status: plan.Fail, Severity: diag.Warning, Code: CodeInCut, Address: c.Address, Where: c.Where,
			Is: verdict.Figure(at), Limit: verdict.Figure(edge), Source: "check.strip-joint (practice)",
			Text: message.New("check.glue-joint.in-cut", message.Text("mark", out.Mark(p.Address)), message.Word("cut", "cut."+string(c.Kind)), message.Length("is", at.Nm), message.Length("limit", edge.Nm)),
		}, p.Address)
		return
	}
}

// across returns the stretch of a cut across its part's width, if strip joints
// should stay out of it.
func across(l *ledger.Ledger, c *piece.Cut) (near, far piece.Figure, ok bool) {
	switch {
	case c.Slot != nil && c.Slot.Across() == piece.AlongWidth && c.Slot.Run == piece.AlongLength: // sockets at an end run through the thickness
		return c.Slot.Near, c.Slot.Far, true
	case c.Slot != nil && c.Kind == piece.Recess && c.Slot.Run == piece.AlongWidth:
		return c.Slot.From, c.Slot.To, true
	case c.Bore != nil:
		axis, _ := c.Bore.Open.Axis()
		if axis == piece.AlongWidth {
			return near, far, false
		}
		mid := c.Bore.At[0]
		if axis == piece.AlongThickness {
			mid = c.Bore.At[1]
		}
		name := string(c.Address) + ".edge"
		half := l.Half(name, c.Bore.Diameter)
		return l.Less(name, mid, half), l.Sum(name, mid, half), mid.Nm > 0
	}
	return near, far, false
}
