package exposed

import (
	_ "embed" // the help

	"scantling/internal/address"
	"scantling/internal/analysis"
	"scantling/internal/analysis/check/bodies"
	"scantling/internal/analysis/check/verdict"
	"scantling/internal/analysis/marks"
	"scantling/internal/diag"
	"scantling/internal/joinery"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// Codes of the findings.
const (
	// CodeExposed: another cut runs into the hole of a dowel or loose tenon.
	//
	// Example: a groove 8 deep over a dowel of 8 in the middle of 20.
	CodeExposed diag.Code = "dowel-exposed"
	// CodeThin: too little wood is left between another cut and a dowel.
	//
	// Example: a groove 4.1 deep over a dowel of 8 in the middle of 20.
	CodeThin diag.Code = "dowel-barely-covered"
	// CodeCovered: all dowels and loose tenons stay inside the wood.
	//
	// Example: dowels in the half of the thickness away from the channels.
	CodeCovered diag.Code = "dowels-covered"
)

//go:embed doc.go
var source string

// Analysis is the check.
var Analysis = analysis.Declare(analysis.Info{
	Name: "exposed", Kind: analysis.Judge, Doc: verdict.Help(source), Requires: []analysis.Analysis{marks.Analysis},
}, func(c *analysis.Context) ([]plan.Finding, diag.List) {
	j := judge{Context: c, index: bodies.Of(c), out: verdict.Of("exposed", c), joints: map[address.Address]*piece.Joint{}}
	for i := range c.Piece.Joints {
		j.joints[c.Piece.Joints[i].Address] = &c.Piece.Joints[i]
	}
	j.limit = j.out.Limit("over a dowel", verdict.Practice("check.over-a-dowel", unit.MM(2)))
	for i := range c.Piece.Parts {
		j.part(&c.Piece.Parts[i])
	}
	return j.out.Done(CodeCovered, message.New("check.exposed.covered")), nil
})

type judge struct {
	*analysis.Context
	index  *bodies.Index
	out    *verdict.Findings
	joints map[address.Address]*piece.Joint
	limit  verdict.Limit
}

// hidden are the joints that are held by what goes into holes in the wood.
func hidden(j *piece.Joint) bool {
	return j != nil && (j.Kind == piece.DowelJoint || j.Kind == piece.LooseJoint)
}

// part holds the holes of a part against its other cuts; each cut is told once, at the
// hole that it comes nearest to.
func (j *judge) part(p *piece.Part) {
	var holes []*piece.Cut
	for _, c := range j.index.Cuts(p.Address) {
		joint := j.joints[c.Joint]
		if hidden(joint) && (c.Kind != piece.Hole || joint.Dowels != nil && c.Bore != nil && c.Bore.Diameter.Nm == joint.Dowels.Diameter.Nm) {
			holes = append(holes, c)
		}
	}
	if len(holes) == 0 {
		return
	}
	j.out.Judged()
	for _, c := range j.index.Cuts(p.Address) {
		if !j.counts(c) {
			continue
		}
		var worst *piece.Cut
		var least unit.Length
		var way piece.Local
		for _, h := range holes {
			if j.same(h, c) {
				continue
			}
			if left, axis, ok := between(p, h, c); ok && (worst == nil || left < least) {
				worst, least, way = h, left, axis
			}
		}
		if worst != nil && least < j.limit.Nm {
			j.tell(p, worst, c, least, way)
		}
	}
}

// counts reports whether a cut is one that must stay off dowels: not what is itself
// inside a joint, nor a slope or an edge.
func (j *judge) counts(c *piece.Cut) bool {
	if c.Slice != nil || c.Ease != nil || c.Bore != nil && c.Joint != "" {
		return false
	}
	switch joint := j.joints[c.Joint]; {
	case joint == nil:
		return true
	case hidden(joint):
		return false
	default:
		return joint.Kind != piece.TenonJoint && joint.Kind != piece.BridleJoint
	}
}

// same reports whether two cuts join the same two parts.
func (j *judge) same(a, b *piece.Cut) bool {
	x, y := j.joints[a.Joint], j.joints[b.Joint]
	return x != nil && y != nil && (x.A == y.A && x.B == y.B || x.A == y.B && x.B == y.A)
}

// between is how much wood is left between two cuts of a part, and along which of its
// axes; below nought they run into each other by so much.
func between(p *piece.Part, a, b *piece.Cut) (left unit.Length, way piece.Local, ok bool) {
	lowA, highA, okA := joinery.Limits(p, a)
	lowB, highB, okB := joinery.Limits(p, b)
	if !okA || !okB {
		return 0, 0, false
	}
	for k := range lowA {
		if gap := max(lowA[k]-highB[k], lowB[k]-highA[k]); k == 0 || gap > left {
			left, way = gap, piece.Local(k)
		}
	}
	return left, way, true
}

// tell tells of a cut that comes too near to a hole.
func (j *judge) tell(p *piece.Part, hole, c *piece.Cut, left unit.Length, way piece.Local) {
	joint := j.joints[hole.Joint]
	is := j.Ledger.Leaf(string(c.Address)+".wood before "+string(hole.Address), left, ledger.Derived, "")
	x := plan.Finding{Status: plan.Fail, Severity: diag.Warning, Code: CodeThin, Address: c.Address, Where: c.Where, Is: &is, Limit: &j.limit.Figure, Source: j.limit.Source}
	key, told := "check.exposed.thin", message.LengthRounded("is", left, unit.Down)
	if left < 0 {
		x.Severity, x.Code, key, told = diag.Error, CodeExposed, "check.exposed.open", message.LengthRounded("is", -left, unit.Up)
	}
	x.Text = message.New(key, message.Text("mark", j.out.Mark(p.Address)), message.Word("cut", "cut."+string(c.Kind)), message.Word("joint", "joint."+string(joint.Kind)),
		message.Text("other", j.out.Mark(other(joint, p.Address))), told, message.LengthRounded("limit", j.limit.Nm, unit.Up))
	if c.Slot != nil {
		if axis, _ := c.Slot.Open.Axis(); axis == way {
			if to := c.Slot.Depth.Nm - (j.limit.Nm - left); to > 0 {
				x.Remedy = []diag.Remedy{j.out.Rewrite(message.New("check.exposed.shallower", message.Word("cut", "cut."+string(c.Kind)), message.LengthRounded("to", to, unit.Down)), c.Slot.Depth, to, unit.Down)}
			}
		}
	}
	j.out.Add(x, p.Address)
}

// other is the part that a joint holds another one to.
func other(j *piece.Joint, a address.Address) address.Address {
	if j.A == a {
		return j.B
	}
	return j.A
}
