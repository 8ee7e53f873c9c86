package joints

import (
	_ "embed" // the help

	"math"
	"slices"
	"strings"

	"scantling/internal/address"
	"scantling/internal/analysis"
	"scantling/internal/analysis/check/bodies"
	"scantling/internal/analysis/check/verdict"
	"scantling/internal/analysis/marks"
	"scantling/internal/analysis/strength"
	"scantling/internal/diag"
	"scantling/internal/joinery"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
)

// Codes of the findings.
const (
	// CodeWeak: the screws or nails of a joint bear less than hangs on them.
	//
	// Example: 60 kg on a shelf that two panel pins hold at each end.
	CodeWeak diag.Code = "joint-overloaded"
	// CodeUnknown: what joints bear, or carry, is not known.
	//
	// Example: a shelf held by screws of no size that is known.
	CodeUnknown diag.Code = "joint-load-unknown"
	// CodeBear: all joints bear what hangs on them.
	//
	// Example: shelves in housings.
	CodeBear diag.Code = "joints-bear"
)

//go:embed doc.go
var source string

// Analysis is the check.
var Analysis = analysis.Declare(analysis.Info{
	Name: "joints", Kind: analysis.Judge, Doc: verdict.Help(source), Requires: []analysis.Analysis{marks.Analysis, strength.Analysis},
}, func(c *analysis.Context) ([]plan.Finding, diag.List) {
	all := strength.Analysis.Get(c)
	j := judge{Context: c, index: bodies.Of(c), out: verdict.Of("joints", c), holds: map[address.Address]plan.JointHold{}, joints: map[address.Address]*piece.Joint{}}
	for _, h := range all.Joints {
		j.holds[h.Joint] = h
	}
	for i := range c.Piece.Joints {
		j.joints[c.Piece.Joints[i].Address] = &c.Piece.Joints[i]
	}
	for _, s := range all.Shelves {
		j.shelf(s)
	}
	j.unknown()
	return j.out.Done(CodeBear, message.New("check.joints.bear")), nil
})

type judge struct {
	*analysis.Context
	index  *bodies.Index
	out    *verdict.Findings
	holds  map[address.Address]plan.JointHold
	joints map[address.Address]*piece.Joint
	// open are the joints of which something is missing, and lacks what.
	open  []*joinery.Lowered
	lacks []plan.Datum
}

// sideways ends the name of the way in which the weight of a shelf loads the fasteners
// through an upright into its end.
const sideways = " pushed sideways"

// side is an end of a part: an axis, and whether its far one.
type side struct {
	axis piece.Axis
	far  bool
}

// shelf judges the joints that one shelf hangs by.
func (j *judge) shelf(s plan.Shelf) {
	p := j.index.Part(s.Part)
	if p == nil {
		return
	}
	sides := j.supports(p)
	load, known := loadOf(s)
	for _, at := range []side{{piece.Right, false}, {piece.Right, true}, {piece.Back, false}, {piece.Back, true}} {
		for _, l := range sides[at] {
			j.joint(s, p, l, load, known, 1/float64(len(sides)*len(sides[at])))
		}
	}
}

// supports are the joints at sides of a part that have a counterpart at the other.
func (j *judge) supports(p *piece.Part) map[side][]*joinery.Lowered {
	out := map[side][]*joinery.Lowered{}
	for i := range j.Joints {
		l := &j.Joints[i]
		if l.A != p.Address && l.B != p.Address {
			continue
		}
		for _, a := range []piece.Axis{piece.Right, piece.Back} {
			middle := (p.Extent[a].Low.Nm + p.Extent[a].High.Nm) / 2
			if l.Region[a].High.Nm < middle || l.Region[a].Low.Nm > middle {
				at := side{a, l.Region[a].Low.Nm > middle}
				out[at] = append(out[at], l)
				break
			}
		}
	}
	for _, a := range []piece.Axis{piece.Right, piece.Back} {
		if len(out[side{a, false}]) == 0 || len(out[side{a, true}]) == 0 {
			delete(out, side{a, false})
			delete(out, side{a, true})
		}
	}
	return out
}

// joint judges one joint that takes a share of a load.
func (j *judge) joint(s plan.Shelf, p *piece.Part, l *joinery.Lowered, load plan.ShelfSag, known bool, share float64) {
	hold := j.holds[l.Joint]
	if !j.hangs(l) || slices.Contains(hold.Missing, plan.NoJointFormula) {
		return
	}
	at := slices.IndexFunc(hold.Ways, func(h plan.Holding) bool { return strings.HasSuffix(h.Way, sideways) })
	switch {
	case at < 0 || !hold.Ways[at].Allowed.Known():
		missing := hold.Missing
		if at >= 0 {
			missing = hold.Ways[at].Allowed.Missing
		}
		j.ask(l, missing)
		return
	case !load.Load.Known():
		if slices.ContainsFunc(s.Loads, func(x plan.ShelfSag) bool { return slices.Contains(x.Load.Missing, plan.NoMass) }) {
			j.ask(l, []plan.Datum{plan.NoMass})
		}
		return
	}
	j.out.Judged()
	bears := hold.Ways[at].Allowed
	carries := load.Load.High.Float()
	if load.Upright.Known() {
		carries += load.Upright.High.Float()
	}
	switch carries *= share; {
	case carries <= bears.Low.Float():
	case !known:
		j.ask(l, []plan.Datum{plan.NoLoad})
	default:
		j.weak(p, l, hold.Ways[at], load, carries)
	}
}

// hangs reports whether a part hangs by the fasteners of a joint at its end, pushed
// sideways: where it does not bear on wood, and long grain is not glued.
func (j *judge) hangs(l *joinery.Lowered) bool {
	own := j.joints[l.Joint]
	if l.Kind != piece.ButtJoint || own == nil || own.Fasteners == nil || own.Fasteners.Count == 0 || l.Glued && l.LongGrain.Float() > 0 {
		return false
	}
	entry, _ := l.Entry.Axis()
	return entry != piece.Up
}

// weak adds the finding about a joint that carries more than it bears.
func (j *judge) weak(p *piece.Part, l *joinery.Lowered, way plan.Holding, load plan.ShelfSag, carries float64) {
	bears := way.Allowed
	x := plan.Finding{Status: plan.Fail, Severity: diag.Warning, Code: CodeWeak, Address: l.Joint, Where: j.joints[l.Joint].Where,
		Figures: []plan.Quantity{verdict.Quantity(plan.RoleLoad, load.Load), verdict.Quantity(plan.RoleLimit, bears)},
		Source:  verdict.Cite(load.Load.Source) + "; " + verdict.Cite(bears.Source)}
	key := "check.joints.weak"
	if carries <= bears.Value.Float() { // only at the ends of the ranges
		x.Severity, key = diag.Note, "check.joints.may-be-weak"
	}
	other := l.A
	if other == p.Address {
		other = l.B
	}
	x.Text = message.New(key, message.Text("mark", j.out.Mark(p.Address)), message.Text("other", j.out.Mark(other)), message.Count("count", way.Count),
		message.Word("way", "load.way."+strings.ReplaceAll(way.Way, " ", "-")), message.Ratio("is", math.Ceil(carries)),
		message.Ratio("limit", math.Floor(bears.Value.Float())), message.Ratio("least", math.Floor(bears.Low.Float())))
	j.out.Add(x, p.Address, other)
}

func (j *judge) ask(l *joinery.Lowered, missing []plan.Datum) {
	j.open, j.lacks = append(j.open, l), append(j.lacks, missing...)
}

// unknown tells once of all joints that something is missing of, and what.
func (j *judge) unknown() {
	if len(j.open) == 0 {
		return
	}
	slices.Sort(j.lacks)
	var lacks []message.Arg
	for _, d := range slices.Compact(j.lacks) {
		lacks = append(lacks, message.Word("", "datum."+strings.ReplaceAll(string(d), " ", "-")))
	}
	var parts []address.Address
	for _, l := range j.open {
		parts = append(parts, l.A, l.B)
	}
	first := j.open[0]
	j.out.Unknown(CodeUnknown, message.New("check.joints.unknown", message.Text("mark", j.out.Mark(first.A)), message.Text("other", j.out.Mark(first.B)),
		message.Count("count", len(j.open)), message.List("lacks", lacks...)), first.Joint, j.joints[first.Joint].Where, parts...)
}

// loadOf picks the load that a shelf is judged by, and whether it is what it will carry.
func loadOf(s plan.Shelf) (plan.ShelfSag, bool) {
	for _, want := range []string{"contents", "shelf load", "books"} {
		for _, l := range s.Loads {
			if l.Case == want && l.Load.Known() {
				return l, want != "books"
			}
		}
	}
	return plan.ShelfSag{}, false
}
