package lids

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
	// CodeThrough: what holds a corner lies in the way of the saw that takes a lid off.
	//
	// Example: a key 3 thick in the middle of a box of 85.2, of which 40 are to be the base.
	CodeThrough diag.Code = "lid-cuts-joint"
	// CodeNear: what holds a corner comes nearer to the line of a lid than whole wood
	// should stand there.
	//
	// Example: a key that ends 4.9 below the line.
	CodeNear diag.Code = "joint-near-lid"
	// CodeSliver: sawing a lid off leaves a sliver of a finger or a tail.
	//
	// Example: fingers of 12 and a line 2 above where one ends.
	CodeSliver diag.Code = "lid-leaves-sliver"
	// CodeGroove: a groove, housing or rebate along the line of a lid, or near it.
	//
	// Example: a groove for the top that ends 3 above the line.
	CodeGroove diag.Code = "groove-at-lid"
	// CodeShallow: a lid too low to be taken hold of and hinged.
	//
	// Example: a lid of 11.9.
	CodeShallow diag.Code = "lid-shallow"
	// CodeClear: lids come off clear of all that holds their boxes.
	//
	// Example: three keys, none within 5 of the line.
	CodeClear diag.Code = "lids-clear"
)

//go:embed doc.go
var source string

// Analysis is the check.
var Analysis = analysis.Declare(analysis.Info{
	Name: "lids", Kind: analysis.Judge, Doc: verdict.Help(source), Requires: []analysis.Analysis{marks.Analysis},
}, func(c *analysis.Context) ([]plan.Finding, diag.List) {
	j := judge{Context: c, index: bodies.Of(c), out: verdict.Of("lids", c)}
	j.beside = j.out.Limit("beside a lid's line", verdict.Practice("check.beside-a-lid", unit.MM(5)))
	j.least = j.out.Limit("least lid", verdict.Practice("check.least-lid", unit.MM(12)))
	for i := range c.Piece.Sawn {
		j.out.Judged()
		j.lid(&c.Piece.Sawn[i])
	}
	return j.out.Done(CodeClear, message.New("check.lids.clear")), nil
})

type judge struct {
	*analysis.Context
	index         *bodies.Index
	out           *verdict.Findings
	beside, least verdict.Limit
}

// lid judges one lid.
func (j *judge) lid(s *piece.Sawn) {
	if s.Lid.Nm < j.least.Nm {
		j.out.Add(plan.Finding{Status: plan.Fail, Severity: diag.Warning, Code: CodeShallow, Address: s.Address, Where: s.Where, Is: &s.Lid, Limit: &j.least.Figure, Source: j.least.Source,
			Text: message.New("check.lids.shallow", message.Text("name", s.Name), message.LengthRounded("is", s.Lid.Nm, unit.Down), message.LengthRounded("limit", j.least.Nm, unit.Up))}, s.Walls...)
	}
	for _, w := range s.Walls {
		p := j.index.Part(w)
		for _, c := range j.index.Cuts(w) {
			j.cut(s, p, c)
		}
	}
	for i := range j.Piece.Joints {
		j.metal(s, &j.Piece.Joints[i])
	}
}

// cut judges another cut of a wall by where it lies along up.
func (j *judge) cut(s *piece.Sawn, p *piece.Part, c *piece.Cut) {
	if c.Slice != nil || c.Ease != nil || c.Kind == piece.LidKerf {
		return
	}
	lo, hi, ok := joinery.Limits(p, c)
	if !ok {
		return
	}
	at, same := p.Frame.LocalOf(piece.Up)
	e := p.Extent[piece.Up]
	from, to := e.Low.Nm+lo[at], e.Low.Nm+hi[at]
	if same < 0 {
		from, to = e.High.Nm-hi[at], e.High.Nm-lo[at]
	}
	switch c.Kind {
	case piece.Socket, piece.Tail, piece.Pin:
		j.sliver(s, p, c, from)
		j.sliver(s, p, c, to)
	case piece.KeySlot, piece.Hole, piece.Mortise, piece.Recess, piece.ScrewSlot:
		j.near(s, p, c, from, to, CodeThrough, CodeNear)
	default:
		if c.Slot != nil && c.Slot.Run != at { // what runs through the line stands on both sides of it
			j.near(s, p, c, from, to, CodeGroove, CodeGroove)
		}
	}
}

// near judges a cut that must stay clear of the line.
func (j *judge) near(s *piece.Sawn, p *piece.Part, c *piece.Cut, from, to unit.Length, through, near diag.Code) {
	left := max(s.Lost.Low.Nm-to, from-s.Lost.High.Nm)
	if left >= j.beside.Nm {
		return
	}
	j.tell(s, c.Address, c.Where, left, through, near, message.Word("cut", "cut."+string(c.Kind)), p.Address)
}

// tell tells of something in the line or near it.
func (j *judge) tell(s *piece.Sawn, at address.Address, where diag.Place, left unit.Length, through, near diag.Code, what message.Arg, parts ...address.Address) {
	is := j.Ledger.Leaf(string(at)+".beside the line", left, ledger.Derived, "")
	x := plan.Finding{Status: plan.Fail, Severity: diag.Warning, Code: near, Address: at, Where: where, Is: &is, Limit: &j.beside.Figure, Source: j.beside.Source}
	key := "check.lids.near"
	if left < 0 {
		x.Severity, x.Code, key = diag.Error, through, "check.lids.through"
	}
	foot := s.Extent[piece.Up].Low.Nm
	x.Text = message.New(key, message.Text("name", s.Name), message.Text("mark", j.out.Mark(parts[0])), what, message.LengthRounded("is", left.Abs(), unit.Down),
		message.LengthRounded("limit", j.beside.Nm, unit.Up), message.Length("from", s.Lost.Low.Nm-foot), message.Length("to", s.Lost.High.Nm-foot))
	x.Remedy = []diag.Remedy{{Text: message.New("check.lids.move")}}
	x.Near = append(x.Near, string(s.Address))
	j.out.Add(x, parts...)
}

// sliver judges where a finger or tail begins or ends: right in the kerf is as good as
// well clear of it.
func (j *judge) sliver(s *piece.Sawn, p *piece.Part, c *piece.Cut, edge unit.Length) {
	left := max(s.Lost.Low.Nm-edge, edge-s.Lost.High.Nm)
	if e := p.Extent[piece.Up]; left <= 0 || left >= j.beside.Nm || edge <= e.Low.Nm || edge >= e.High.Nm {
		return
	}
	is := j.Ledger.Leaf(string(c.Address)+".sliver", left, ledger.Derived, "")
	j.out.Add(plan.Finding{Status: plan.Fail, Severity: diag.Warning, Code: CodeSliver, Address: c.Address, Where: c.Where, Is: &is, Limit: &j.beside.Figure, Source: j.beside.Source, Near: []string{string(s.Address)},
		Text:   message.New("check.lids.sliver", message.Text("name", s.Name), message.Text("mark", j.out.Mark(p.Address)), message.LengthRounded("is", left, unit.Down), message.LengthRounded("limit", j.beside.Nm, unit.Up)),
		Remedy: []diag.Remedy{{Text: message.New("check.lids.move-line")}}}, p.Address)
}

// metal judges pins, nails and screws of a corner that have no holes of their own, which
// lie as they are shared out: the first and the last by the margin, even between.
func (j *judge) metal(s *piece.Sawn, k *piece.Joint) {
	f := k.Fasteners
	if f == nil || f.Pilot.Nm > 0 || f.Clearance.Nm > 0 || !s.Wall(k.A) || !s.Wall(k.B) {
		return
	}
	a, b := j.index.Part(k.A).Extent[piece.Up], j.index.Part(k.B).Extent[piece.Up]
	low, high := max(a.Low.Nm, b.Low.Nm), min(a.High.Nm, b.High.Nm)
	for n := range f.Count {
		at := (low + high) / 2
		if f.Count > 1 {
			at = low + f.Margin.Nm + (high-low-2*f.Margin.Nm)*unit.Length(n)/unit.Length(f.Count-1)
		}
		if left := max(s.Lost.Low.Nm-at, at-s.Lost.High.Nm); left < j.beside.Nm {
			j.tell(s, k.Address, k.Where, left, CodeThrough, CodeNear, message.Word("cut", "cut.fastener"), k.A, k.B)
		}
	}
}
