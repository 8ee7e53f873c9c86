package grip

import (
	_ "embed" // the help
	"strings"

	"scantling/internal/address"
	"scantling/internal/analysis"
	"scantling/internal/analysis/check/bodies"
	"scantling/internal/analysis/check/verdict"
	"scantling/internal/analysis/contents"
	"scantling/internal/analysis/marks"
	"scantling/internal/diag"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/proportion"
	"scantling/internal/unit"
)

// Codes of the findings.
const (
	// CodeNoGrip: a front has nothing to grip.
	//
	// Example: a drawer front without scoop and without knob.
	CodeNoGrip diag.Code = "grip-missing"
	// CodeNarrow: a scoop is too narrow for the fingers.
	//
	// Example: a scoop 30 wide.
	CodeNarrow diag.Code = "scoop-too-narrow"
	// CodeShallow: a scoop is too shallow for a finger.
	//
	// Example: a scoop 10 deep.
	CodeShallow diag.Code = "scoop-too-shallow"
	// CodeBelow: too little of the front is left below the scoop.
	//
	// Example: a scoop 16 deep in a front of 34.
	CodeBelow diag.Code = "front-below-scoop"
	// CodeBlocked: something behind the scoop is in the finger's way.
	//
	// Example: a tray that reaches 5 above the scoop's bottom, 1 behind the front.
	CodeBlocked diag.Code = "scoop-blocked"
	// CodeNoFront: nothing says which part is the front.
	//
	// Example: a drawer of which no part has show = "front".
	CodeNoFront diag.Code = "front-unknown"
	// CodeFits: every front can be gripped.
	//
	// Example: a scoop 64 wide and 16 deep, clear of the tray.
	CodeFits diag.Code = "grip-fits"
)

//go:embed doc.go
var source string

// Analysis is the check.
var Analysis = analysis.Declare(analysis.Info{
	Name: "grip", Kind: analysis.Judge, Doc: verdict.Help(source), Requires: []analysis.Analysis{marks.Analysis, contents.Analysis},
}, func(c *analysis.Context) ([]plan.Finding, diag.List) {
	j := judge{Context: c, index: bodies.Of(c), out: verdict.Of("grip", c), held: contents.Analysis.Get(c)}
	for _, m := range j.index.Moves() {
		fronts := m.Fronts()
		if len(fronts) == 0 {
			j.out.Unknown(CodeNoFront, message.New("check.grip.no-front", message.Address("group", m.Group.Address)), m.Group.Address, m.Group.Where)
		}
		for _, front := range fronts {
			j.out.Judged()
			j.front(m, front)
		}
	}
	return j.out.Done(CodeFits, message.New("check.grip.fits")), nil
})

type judge struct {
	*analysis.Context
	index *bodies.Index
	out   *verdict.Findings
	held  []plan.Held
}

// front judges one front: its scoops, or what is fixed to it.
func (j *judge) front(m bodies.Move, front *piece.Part) {
	top := front.Frame.SideToward(piece.ToUp)
	found := false
	for _, c := range j.index.Cuts(front.Address) {
		if c.Dip != nil && c.Dip.Open == top {
			found = true
			j.scoop(m, front, c)
		}
	}
	if found || j.knob(m, front) {
		return
	}
	j.out.Add(plan.Finding{Status: plan.Fail, Severity: diag.Warning, Code: CodeNoGrip, Address: front.Address, Where: front.Where,
		Text: message.New("check.grip.missing", message.Text("mark", j.out.Mark(front.Address))), Source: "check.grip (practice)"}, front.Address)
}

// knob reports whether something to hold is fixed to the front, or to the drawer
// without a word on where.
func (j *judge) knob(m bodies.Move, front *piece.Part) bool {
	for _, h := range j.Piece.Hardware {
		if h.On != front.Address && h.On != m.Group.Address && (h.On != "" || !m.Holds(h.Address)) {
			continue
		}
		for _, word := range bodies.PullWords() {
			if h.Count > 0 && strings.Contains(strings.ToLower(h.Kind), word) {
				return true
			}
		}
	}
	return false
}

// scoop judges one scoop in a front's top edge.
func (j *judge) scoop(m bodies.Move, front *piece.Part, c *piece.Cut) {
	rule := proportion.FingerScoop()
	width, depth := j.out.Limit("scoop width", rule.Width), j.out.Limit("scoop depth", rule.Depth)
	below := j.out.Limit("scoop below", rule.Below)
	high := j.Ledger.Less(string(front.Address)+".high", front.Extent[piece.Up].High, front.Extent[piece.Up].Low)
	left := j.Ledger.Less(string(c.Address)+".below", high, c.Dip.Depth)
	for _, t := range []struct {
		code  diag.Code
		is    piece.Figure
		limit verdict.Limit
		text  string
		wrote piece.Figure
		to    unit.Length
		side  unit.Rounding
	}{
		{CodeNarrow, c.Dip.Chord, width, "check.grip.narrow", c.Dip.Chord, width.Nm, unit.Up},
		{CodeShallow, c.Dip.Depth, depth, "check.grip.shallow", c.Dip.Depth, depth.Nm, unit.Up},
		{CodeBelow, left, below, "check.grip.below", c.Dip.Depth, high.Nm - below.Nm, unit.Down},
	} {
		if t.is.Nm >= t.limit.Nm {
			continue
		}
		x := plan.Finding{Status: plan.Fail, Severity: diag.Warning, Code: t.code, Address: c.Address, Where: c.Where,
			Is: verdict.Figure(t.is), Limit: &t.limit.Figure, Source: t.limit.Source,
			Text: message.New(t.text, message.Text("mark", j.out.Mark(front.Address)), message.LengthRounded("is", t.is.Nm, unit.Down), message.LengthRounded("limit", t.limit.Nm, unit.Up)),
		}
		if t.to > 0 {
			x.Remedy = []diag.Remedy{j.out.Rewrite(message.New("check.grip.write", message.LengthRounded("to", t.to, t.side)), t.wrote, t.to, t.side)}
		}
		j.out.Add(x, front.Address)
	}
	j.behind(m, front, c)
}

// behind judges what stands behind the scoop within a finger's reach.
func (j *judge) behind(m bodies.Move, front *piece.Part, c *piece.Cut) {
	reach := j.out.Limit("finger behind", verdict.Practice("check.finger-behind", unit.MM(20)))
	open, _ := c.Dip.Open.Axis()
	along := piece.AlongLength
	if open == piece.AlongLength {
		along = piece.AlongWidth
	}
	half := c.Dip.Chord.Nm / 2
	axis, span := bodies.Place(front, along, bodies.Span{Low: c.Dip.Centre.Nm - half, High: c.Dip.Centre.Nm + half})
	if axis != piece.Right {
		return
	}
	face, bottom := front.Extent[piece.Back].High, j.Ledger.Less(string(c.Address)+".bottom", front.Extent[piece.Up].High, c.Dip.Depth)
	room := bodies.Box{span, {Low: face.Nm, High: face.Nm + reach.Nm}, {Low: bottom.Nm, High: front.Extent[piece.Up].High.Nm}}
	var worst obstacle
	for _, p := range m.Parts {
		if p == front {
			continue
		}
		for _, w := range j.index.Wood(room, p) {
			worst = worst.higher(obstacle{part: p.Address, top: w[piece.Up].High})
		}
	}
	worst = worst.higher(j.things(m, room))
	if worst.part == "" {
		return
	}
	over := j.Ledger.Less(string(c.Address)+".over", j.figure(worst), bottom)
	none := j.Ledger.Leaf("nothing above the scoop's bottom", 0, ledger.HouseRule, reach.Source)
	j.out.Add(plan.Finding{Status: plan.Fail, Severity: diag.Warning, Code: CodeBlocked, Address: c.Address, Where: c.Where,
		Is: verdict.Figure(over), Limit: &none, Source: reach.Source,
		Text: message.New("check.grip.blocked", message.Text("mark", j.out.Mark(front.Address)), message.Text("other", j.out.Mark(worst.part)),
			message.LengthRounded("is", over.Nm, unit.Up), message.Length("reach", reach.Nm)),
	}, front.Address, worst.part)
}

// obstacle is what stands highest behind a scoop.
type obstacle struct {
	part address.Address
	top  unit.Length
}

func (o obstacle) higher(p obstacle) obstacle {
	if p.part != "" && (o.part == "" || p.top > o.top) {
		return p
	}
	return o
}

// figure is the height of an obstacle in the piece: its part's own top where that
// is it.
func (j *judge) figure(o obstacle) piece.Figure {
	if p := j.index.Part(o.part); p != nil && p.Extent[piece.Up].High.Nm == o.top {
		return p.Extent[piece.Up].High
	}
	return j.Ledger.Leaf(string(o.part)+".top", o.top, ledger.Derived, "")
}

// things returns the highest head that may lie in the room: at the end of its
// channel that is nearer to the front.
func (j *judge) things(m bodies.Move, room bodies.Box) obstacle {
	var worst obstacle
	for i := range j.Piece.Contents {
		for _, t := range j.Piece.Contents[i].Things {
			p, cut := j.index.Part(t.In), j.index.Cut(t.Cut)
			if p == nil || cut == nil || cut.Slot == nil || !m.Has(t.In) || cut.Slot.Open != p.Frame.SideToward(piece.ToUp) {
				continue
			}
			k := 0
			for k < len(j.held) && j.held[k].Cut != t.Cut {
				k++
			}
			if k == len(j.held) {
				continue
			}
			thick, long := t.Diameter.Nm, t.Length.Nm
			if t.HeadWidth.Nm > thick {
				thick, long = t.HeadWidth.Nm, t.HeadLength.Nm
			}
			axis := p.Extent[piece.Up].High.Nm - j.held[k].Sinks.Nm + t.Diameter.Nm/2
			mid := (cut.Slot.Near.Nm + cut.Slot.Far.Nm) / 2
			across, span := bodies.Place(p, cut.Slot.Across(), bodies.Span{Low: mid - thick/2, High: mid + thick/2})
			if across != piece.Right {
				continue
			}
			front := p.Extent[piece.Back].Low.Nm
			head := bodies.Box{span, {Low: front, High: front + long}, {Low: axis - thick/2, High: axis + thick/2}}
			if head.Overlaps(room) {
				worst = worst.higher(obstacle{t.In, axis + thick/2})
			}
		}
	}
	return worst
}
