package pulls

import (
	_ "embed" // the help
	"slices"
	"strings"

	"scantling/internal/address"
	"scantling/internal/analysis"
	"scantling/internal/analysis/check/bodies"
	"scantling/internal/analysis/check/reach"
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
	// CodeFlat: a pull does not stand off far enough to be gripped.
	//
	// Example: a knob that stands off 12.
	CodeFlat diag.Code = "pull-too-flat"
	// CodeNoRoom: fingers do not get in beside a pull.
	//
	// Example: a knob in a slot between two battens, 10 from either.
	CodeNoRoom diag.Code = "pull-without-room"
	// CodeBlocks: a pull stands in the way of a drawer, or its own cannot come out.
	//
	// Example: a knob at the lower edge of a front that hangs before the drawer below.
	CodeBlocks diag.Code = "pull-blocks"
	// CodeUnknown: nobody says where a pull sits.
	//
	// Example: a knob for a drawer, without a side.
	CodeUnknown diag.Code = "pull-place-unknown"
	// CodeRight: every pull can be gripped and blocks nothing.
	//
	// Example: a knob in the middle of a front.
	CodeRight diag.Code = "pulls-right"
)

var (
	standsOff = verdict.Practice("check.pull-stands-off", unit.MM(15))
	finger    = verdict.Practice("check.finger-between", unit.MM(13))
)

// MaxLooks bounds the work, counted in looks at two bodies.
const MaxLooks = 20_000_000

//go:embed doc.go
var source string

// Analysis is the check.
var Analysis = analysis.Declare(analysis.Info{
	Name: "pulls", Kind: analysis.Judge, Doc: verdict.Help(source), Requires: []analysis.Analysis{marks.Analysis},
}, func(c *analysis.Context) ([]plan.Finding, diag.List) {
	j := judge{Context: c, index: bodies.Of(c), out: verdict.Of("pulls", c)}
	j.leaves = j.index.Leaves()
	j.off, j.finger = j.out.Limit("pull stands off", standsOff), j.out.Limit("finger between", finger)
	j.collect()
	if looks := len(j.pulls) * (len(j.pulls) + len(j.Piece.Parts)); looks > MaxLooks {
		j.out.Unknown(CodeUnknown, message.New("check.pulls.too-many", message.Count("pulls", len(j.pulls)), message.Count("parts", len(j.Piece.Parts))), "", diag.Place{})
		return j.out.Done(CodeRight, message.New("check.pulls.right")), nil
	}
	for i := range j.pulls {
		p := &j.pulls[i]
		j.out.Judged()
		if j.flat(p) || j.blocks(p) {
			continue
		}
		j.room(p)
	}
	return j.out.Done(CodeRight, message.New("check.pulls.right")), nil
})

// pull is one knob or pull where it sits.
type pull struct {
	of   *piece.Hardware
	on   *piece.Part
	leaf *bodies.Leaf
	at   [3]piece.Extent
	box  bodies.Box
}

type judge struct {
	*analysis.Context
	index  *bodies.Index
	out    *verdict.Findings
	leaves []bodies.Leaf
	pulls  []pull
	off    verdict.Limit
	finger verdict.Limit
}

// is reports whether a fitting is held by the hand.
func is(kind string) bool {
	words := strings.Fields(strings.ToLower(kind))
	return slices.ContainsFunc(bodies.PullWords(), func(word string) bool { return slices.Contains(words, word) })
}

// collect lists the pulls, and asks where those sit that have no side.
func (j *judge) collect() {
	for i := range j.Piece.Hardware {
		h := &j.Piece.Hardware[i]
		if !is(h.Kind) || h.Count == 0 {
			continue
		}
		on := j.index.Part(h.On)
		if on == nil || len(h.Bodies) == 0 {
			if leaf := j.leafOf(h.On); leaf != nil || h.On == "" {
				j.out.Unknown(CodeUnknown, message.New("check.pulls.unknown", message.Address("pull", h.Address), message.Text("kind", h.Kind)), h.Address, h.Where, h.On)
			}
			continue
		}
		leaf := j.leafOf(h.On)
		for of := 1; of <= h.Count; of++ {
			if at, ok := around(h, of); ok {
				j.pulls = append(j.pulls, pull{of: h, on: on, leaf: leaf, at: at, box: bodies.BoxOf(at)})
			}
		}
	}
}

// leafOf returns the leaf that a part or a group belongs to, or nil.
func (j *judge) leafOf(a address.Address) *bodies.Leaf {
	for i := range j.leaves {
		if l := &j.leaves[i]; l.Has(a) || a != "" && l.Address == a {
			return l
		}
	}
	return nil
}

// around is the box around the bodies of one piece of hardware.
func around(h *piece.Hardware, of int) (e [3]piece.Extent, ok bool) {
	for _, b := range h.Bodies {
		switch {
		case b.Of != of:
		case !ok:
			e, ok = b.Extent, true
		default:
			e = bodies.Around(e, b.Extent)
		}
	}
	return e, ok
}

// flat judges how far a pull stands off.
func (j *judge) flat(p *pull) bool {
	side, _ := p.of.Side.Axis()
	is := j.Ledger.Less(string(p.of.Address)+".off", p.at[side].High, p.at[side].Low)
	if is.Nm >= j.off.Nm {
		return false
	}
	j.out.Add(plan.Finding{Status: plan.Fail, Severity: diag.Warning, Code: CodeFlat, Address: p.of.Address, Where: p.of.Where, Is: &is, Limit: &j.off.Figure, Source: j.off.Source,
		Text: message.New("check.pulls.flat", message.Text("mark", j.out.Mark(p.on.Address)), message.Text("kind", p.of.Kind), message.LengthRounded("is", is.Nm, unit.Down), message.Length("limit", j.off.Nm)),
	}, p.on.Address)
	return true
}

// blocks judges whether a drawer, or a pull on it, would pass through the pull, and
// whether its own drawer can bring it out.
func (j *judge) blocks(p *pull) bool {
	for i := range j.leaves {
		l := &j.leaves[i]
		if l.Move == nil || l == p.leaf || p.leaf != nil && p.leaf.Move == nil {
			continue // a door is opened first
		}
		for _, m := range l.Move.Parts {
			if m.Tilt != nil {
				continue
			}
			for _, w := range j.index.WoodOf(m) {
				if way := l.Ahead(w); way.Overlaps(p.box) {
					return j.told(p, way.Common(p.box), "check.pulls.before", message.Address("drawer", l.Address), m.Address)
				}
			}
		}
	}
	if p.leaf == nil || p.leaf.Move == nil {
		return false
	}
	way := p.leaf.Ahead(p.box)
	for i := range j.Piece.Parts {
		c := &j.Piece.Parts[i]
		if p.leaf.Has(c.Address) || c.Tilt != nil || j.door(c.Address) {
			continue
		}
		if w := j.index.Wood(way, c); len(w) > 0 {
			return j.told(p, w[0], "check.pulls.caught", message.Text("other", j.out.Mark(c.Address)), c.Address)
		}
	}
	for i := range j.pulls {
		if q := &j.pulls[i]; q.leaf != p.leaf && way.Overlaps(q.box) {
			return j.told(p, way.Common(q.box), "check.pulls.caught", message.Text("other", string(q.of.Address)), q.on.Address)
		}
	}
	return false
}

// door reports whether a part belongs to what turns on hinges.
func (j *judge) door(a address.Address) bool {
	l := j.leafOf(a)
	return l != nil && l.Move == nil
}

// told tells of a pull in the way: by how much, the less of the two sizes that both share.
func (j *judge) told(p *pull, common bodies.Box, key string, other message.Arg, part address.Address) bool {
	way, size := piece.Right, common[piece.Right].Size()
	if up := common[piece.Up].Size(); up < size {
		way, size = piece.Up, up
	}
	is := j.Ledger.Leaf(string(p.of.Address)+".in the way of "+string(part), size, ledger.Derived, "")
	none := j.Ledger.Leaf("nothing before a pull", 0, ledger.HouseRule, "check.pulls (practice)")
	x := plan.Finding{Status: plan.Fail, Severity: diag.Error, Code: CodeBlocks, Address: p.of.Address, Where: p.of.Where, Is: &is, Limit: &none, Source: "check.pulls (practice)",
		Text: message.New(key, message.Text("mark", j.out.Mark(p.on.Address)), message.Text("kind", p.of.Kind), message.LengthRounded("is", size, unit.Up), other)}
	edge, to, side := p.at[way].Low, p.at[way].Low.Nm+size, unit.Up
	if common[way].Low > p.box[way].Low {
		edge, to, side = p.at[way].High, p.at[way].High.Nm-size, unit.Down
	}
	x.Remedy = []diag.Remedy{reach.Rewrite(j.Context, message.New("check.pulls.move", message.LengthRounded("by", size, unit.Up)), edge, to, side)}
	j.out.Add(x, p.on.Address, part)
	return true
}
