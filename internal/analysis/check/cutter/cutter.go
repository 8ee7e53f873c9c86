package cutter

import (
	_ "embed" // the help

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
	"scantling/internal/shop"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// Codes of the findings.
const (
	// CodeNoCutter: no cutter in the shop makes the cut.
	//
	// Example: a channel of radius 8 where the round-nose cutters are 6.35 and 12.7
	// in diameter.
	CodeNoCutter diag.Code = "cutter-not-in-shop"
	// CodeNamed: the cutter that the document asks for is not in the shop.
	//
	// Example: cutter = "round-nose 16" in a shop that has none of that name.
	CodeNamed diag.Code = "cutter-name-unknown"
	// CodeReach: the cutters of the right shape do not reach the depth.
	//
	// Example: a channel 10 deep for a cutter with edges of 8.
	CodeReach diag.Code = "cutter-too-short"
	// CodeReachUnknown: nobody has said how deep the cutter reaches.
	//
	// Example: a channel for a cutter without cutting_length.
	CodeReachUnknown diag.Code = "cutter-reach-unknown"
	// CodeNoDrill: no drill of the hole's size is in the shop.
	//
	// Example: a hole of 5 in a shop with drills of 4 and 6.
	CodeNoDrill diag.Code = "drill-not-in-shop"
	// CodeNoTools: the shop names no cutters at all.
	//
	// Example: a shop document without cutter blocks.
	CodeNoTools diag.Code = "cutters-unknown"
	// CodeRides: a rod is thicker than its channel is round.
	//
	// Example: a rod of 10 in a channel cut by a 6.35 cutter.
	CodeRides diag.Code = "rod-rides-on-edges"
	// CodeShallow: a rod lies less than half its diameter deep.
	//
	// Example: a rod of 10 that lies 4 deep.
	CodeShallow diag.Code = "rod-lies-shallow"
	// CodeNowhere: nothing says where a rod lies.
	//
	// Example: contents with more things than there are channels.
	CodeNowhere diag.Code = "rod-lies-nowhere"
	// CodeRight: all cutters are there and all rods lie well.
	//
	// Example: rods that lie half in channels of their own radius.
	CodeRight diag.Code = "cutters-right"
)

//go:embed doc.go
var source string

// Analysis is the check.
var Analysis = analysis.Declare(analysis.Info{
	Name: "cutter", Kind: analysis.Judge, Doc: verdict.Help(source), Requires: []analysis.Analysis{marks.Analysis, contents.Analysis},
}, func(c *analysis.Context) ([]plan.Finding, diag.List) {
	j := judge{Context: c, index: bodies.Of(c), out: verdict.Of("cutter", c)}
	if c.Shop == nil || len(c.Shop.Cutters) == 0 {
		j.out.Unknown(CodeNoTools, message.New("check.cutter.none"), "", diag.Place{})
	} else {
		for i := range c.Piece.Parts {
			p := &c.Piece.Parts[i]
			for _, s := range j.index.Slots(p, piece.Channel, piece.Groove, piece.Housing, piece.Trough, piece.Recess) {
				j.slot(s)
			}
			for _, cut := range j.index.Cuts(p.Address) {
				j.hole(p, cut)
			}
		}
	}
	j.rods(contents.Analysis.Get(c))
	return j.out.Done(CodeRight, message.New("check.cutter.right")), nil
})

type judge struct {
	*analysis.Context
	index *bodies.Index
	out   *verdict.Findings
}

// slot looks for a cutter that makes a slot.
func (j *judge) slot(s bodies.Slot) {
	j.out.Judged()
	if s.Cut.Cutter != "" {
		if _, ok := j.Shop.Cutter(s.Cut.Cutter); !ok {
			j.add(s, diag.Error, CodeNamed, message.New("check.cutter.named", message.Text("mark", j.out.Mark(s.Part.Address)), j.word(s), message.Text("cutter", s.Cut.Cutter)), nil, nil)
			return
		}
	}
	if s.Corner.Nm == 0 && j.sawn(s) || s.LeanNear.Nm != 0 || s.LeanFar.Nm != 0 { // leaning walls are cut by hand
		return
	}
	width := s.Far.Nm - s.Near.Nm
	var shaped []shop.Cutter
	for _, c := range j.Shop.Cutters {
		if s.Corner.Nm > 0 && c.Tool.Shape == tool.RoundNose && (c.Tool.NoseRadius()-s.Corner.Nm).Abs() <= unit.Micrometre ||
			s.Corner.Nm == 0 && c.Tool.Shape == tool.Straight && c.Tool.Diameter <= width {
			shaped = append(shaped, c)
		}
	}
	if len(shaped) == 0 {
		is, key := j.Ledger.Less(string(s.Cut.Address)+".width", s.Far, s.Near), "check.cutter.no-straight"
		if s.Corner.Nm > 0 {
			is, key = j.Ledger.Times(string(s.Cut.Address)+".diameter", s.Corner, 2, 1), "check.cutter.no-round-nose"
		}
		nearest, text := j.nearest(s, is), message.Message{}
		args := []message.Arg{message.Text("mark", j.out.Mark(s.Part.Address)), j.word(s), message.Length("is", is.Nm), message.Length("nearest", nearest.Nm)}
		if key == "check.cutter.no-straight" {
			text = message.New("check.cutter.no-straight", args...)
		} else {
			text = message.New("check.cutter.no-round-nose", args...)
		}
		j.add(s, diag.Error, CodeNoCutter, text, &is, &nearest)
		return
	}
	j.reach(s, shaped)
}

// reach judges whether one of the cutters of the right shape is long enough.
func (j *judge) reach(s bodies.Slot, shaped []shop.Cutter) {
	longest, unstated := shaped[0], ""
	for _, c := range shaped {
		if c.Tool.CuttingLength >= s.Depth.Nm {
			return
		}
		if c.Tool.CuttingLength == 0 {
			unstated = c.ID
		}
		if c.Tool.CuttingLength > longest.Tool.CuttingLength {
			longest = c
		}
	}
	mark := message.Text("mark", j.out.Mark(s.Part.Address))
	if unstated != "" {
		j.out.Unknown(CodeReachUnknown, message.New("check.cutter.reach-unknown", mark, j.word(s), message.Text("cutter", unstated), message.Length("depth", s.Depth.Nm)),
			s.Cut.Address, s.Cut.Where, s.Part.Address)
		return
	}
	reach := j.owned(longest.ID+".cutting length", longest.Tool.CuttingLength)
	depth := s.Depth
	j.add(s, diag.Error, CodeReach, message.New("check.cutter.too-short", mark, j.word(s), message.Text("cutter", longest.ID),
		message.LengthRounded("depth", depth.Nm, unit.Up), message.LengthRounded("reach", reach.Nm, unit.Down)), &depth, &reach)
}

// sawn reports whether a square slot that runs through can be made by a saw.
func (j *judge) sawn(s bodies.Slot) bool {
	if !s.StartOpen || !s.EndOpen || s.Cut.Kind == piece.Recess {
		return false
	}
	for _, m := range j.Shop.Of(tool.TableSaw) {
		if k := m.Tool.Completed().Kerf; k.Known() && k.Value <= s.Far.Nm-s.Near.Nm {
			return true
		}
	}
	return false
}

// nearest returns the diameter in the shop that comes nearest to what is wanted:
// of round-nose cutters any, of straight ones the least.
func (j *judge) nearest(s bodies.Slot, want piece.Figure) plan.Figure {
	var best *shop.Cutter
	for i := range j.Shop.Cutters {
		c := &j.Shop.Cutters[i]
		shape := tool.Straight
		if s.Corner.Nm > 0 {
			shape = tool.RoundNose
		}
		if c.Tool.Shape == shape && (best == nil || (c.Tool.Diameter-want.Nm).Abs() < (best.Tool.Diameter-want.Nm).Abs()) {
			best = c
		}
	}
	if best == nil {
		return j.owned("no such cutter", 0)
	}
	return j.owned(best.ID+".diameter", best.Tool.Diameter)
}

func (j *judge) owned(name string, l unit.Length) plan.Figure {
	return j.Ledger.Leaf(name, l, ledger.Bought, "the shop's cutters")
}

func (j *judge) word(s bodies.Slot) message.Arg {
	return message.Word("cut", "cut."+string(s.Cut.Kind))
}

func (j *judge) add(s bodies.Slot, severity diag.Severity, code diag.Code, text message.Message, is, limit *plan.Figure) {
	j.out.Add(plan.Finding{Status: plan.Fail, Severity: severity, Code: code, Text: text, Address: s.Cut.Address, Where: s.Cut.Where,
		Is: is, Limit: limit, Source: "tool.cutters (stated)"}, s.Part.Address)
}

// hole looks for a drill.
func (j *judge) hole(p *piece.Part, cut *piece.Cut) {
	if cut.Bore == nil || cut.Kind != piece.Hole {
		return
	}
	j.out.Judged()
	want, best := cut.Bore.Diameter, plan.Figure{}
	for _, c := range j.Shop.Cutters {
		if c.Tool.Shape != tool.Drill {
			continue
		}
		if c.Tool.Diameter == want.Nm {
			return
		}
		if best.Entry == 0 || (c.Tool.Diameter-want.Nm).Abs() < (best.Nm-want.Nm).Abs() {
			best = j.owned(c.ID+".diameter", c.Tool.Diameter)
		}
	}
	if best.Entry == 0 {
		best = j.owned("no such cutter", 0)
	}
	j.out.Add(plan.Finding{Status: plan.Fail, Severity: diag.Warning, Code: CodeNoDrill, Address: cut.Address, Where: cut.Where,
		Text: message.New("check.cutter.no-drill", message.Text("mark", j.out.Mark(p.Address)), message.Length("is", want.Nm), message.Length("nearest", best.Nm)),
		Is:   verdict.Figure(want), Limit: &best, Source: "tool.cutters (stated)"}, p.Address)
}
