package land

import (
	_ "embed" // the help

	"scantling/internal/address"
	"scantling/internal/analysis"
	"scantling/internal/analysis/check/bodies"
	"scantling/internal/analysis/check/verdict"
	"scantling/internal/analysis/marks"
	"scantling/internal/diag"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/share"
	"scantling/internal/unit"
)

// Codes of the findings.
const (
	// CodeLand: the land between two mouths is too thin.
	//
	// Example: channels 9.525 wide at a pitch of 10 leave 0.475.
	CodeLand diag.Code = "land-too-thin"
	// CodeMargin: the wood beyond the outer mouth is too thin.
	//
	// Example: a channel 6 wide whose centre lies 4 from the edge leaves 1.
	CodeMargin diag.Code = "margin-too-thin"
	// CodeFloor: the wood under a channel, trough or recess is too thin.
	//
	// Example: a trough 9 deep in a tray of 12 leaves 3.
	CodeFloor diag.Code = "floor-too-thin"
	// CodeRow: the sum of a row is not known.
	//
	// Example: a series without terms.
	CodeRow diag.Code = "row-not-known"
	// CodeEnough: all lands, margins and floors are thick enough.
	//
	// Example: channels 6.4 wide at a pitch of 20.
	CodeEnough diag.Code = "land-enough"
)

//go:embed doc.go
var source string

// Analysis is the check.
var Analysis = analysis.Declare(analysis.Info{
	Name: "land", Kind: analysis.Judge, Doc: verdict.Help(source), Requires: []analysis.Analysis{marks.Analysis},
}, func(c *analysis.Context) ([]plan.Finding, diag.List) {
	j := judge{Context: c, index: bodies.Of(c), out: verdict.Of("land", c)}
	for i := range c.Piece.Series {
		j.row(&c.Piece.Series[i])
	}
	for i := range c.Piece.Parts {
		p := &c.Piece.Parts[i]
		j.alone(p)
		j.floors(p)
	}
	return j.out.Done(CodeEnough, message.New("check.land.enough")), nil
})

type judge struct {
	*analysis.Context
	index *bodies.Index
	out   *verdict.Findings
}

// gap is a stretch of wood beside cuts of a depth.
type gap struct {
	wood  piece.Figure
	depth unit.Length
	cut   *piece.Cut
}

// row judges the thinnest land and the thinner margin of a series.
func (j *judge) row(s *piece.Series) {
	if len(s.Terms) == 0 {
		j.out.Unknown(CodeRow, message.New("check.land.row-not-known", message.Text("mark", j.out.Mark(s.Part))), s.Address, s.Where, s.Part)
		return
	}
	var lands, margins []gap
	var before *piece.Cut
	for i, t := range s.Terms {
		if t.Air {
			before = j.index.Cut(t.Of)
			continue
		}
		g := gap{wood: t.Figure, cut: before, depth: depthOf(before)}
		if i+1 < len(s.Terms) {
			next := j.index.Cut(s.Terms[i+1].Of)
			g.depth = max(g.depth, depthOf(next))
			if g.cut == nil {
				g.cut = next
			}
		}
		if i == 0 || i == len(s.Terms)-1 {
			margins = append(margins, g)
		} else {
			lands = append(lands, g)
		}
	}
	j.thin(CodeLand, lands, s.Address, s.Where, s.Part)
	j.thin(CodeMargin, margins, s.Address, s.Where, s.Part)
}

func depthOf(c *piece.Cut) unit.Length {
	if c == nil || c.Slot == nil {
		return 0
	}
	return c.Slot.Depth.Nm
}

// thin adds one finding for the gap that misses its limit by most.
func (j *judge) thin(code diag.Code, gaps []gap, at address.Address, where diag.Place, part address.Address) {
	worst, count := -1, 0
	var miss unit.Length
	for i, g := range gaps {
		j.out.Judged()
		limit := j.out.Limit("least land", share.LeastLand(g.depth))
		if limit.Nm <= g.wood.Nm {
			continue
		}
		count++
		if worst < 0 || limit.Nm-g.wood.Nm > miss {
			worst, miss = i, limit.Nm-g.wood.Nm
		}
	}
	if worst < 0 {
		return
	}
	g := gaps[worst]
	limit := j.out.Limit("least land", share.LeastLand(g.depth))
	args := []message.Arg{
		message.Text("mark", j.out.Mark(part)), message.LengthRounded("is", g.wood.Nm, unit.Down),
		message.LengthRounded("limit", limit.Nm, unit.Up), message.LengthRounded("miss", miss, unit.Up), message.Count("count", count),
	}
	text, severity := message.New("check.land.too-thin", args...), diag.Warning
	if code == CodeMargin {
		text = message.New("check.land.margin-too-thin", args...)
	}
	if g.wood.Nm <= 0 {
		severity = diag.Error
	}
	j.out.Add(plan.Finding{
		Status: plan.Fail, Severity: severity, Code: code, Text: text, Address: at, Where: where,
		Is: verdict.Figure(g.wood), Limit: &limit.Figure, Source: limit.Source,
	}, part)
}

// alone judges grooves, housings and channels that belong to no row, against each
// other and against the edges beside them.
func (j *judge) alone(p *piece.Part) {
	slots := j.index.Slots(p, piece.Channel, piece.Groove, piece.Housing)
	for i, s := range slots {
		if s.Cut.Series != "" {
			continue
		}
		name := string(s.Cut.Address)
		whole := p.Sizes()[s.Across]
		var margins []gap
		for _, m := range [2]piece.Figure{s.Near, j.Ledger.Less(name+".margin", whole, s.Far)} {
			if m.Nm > 0 {
				margins = append(margins, gap{m, s.Depth.Nm, s.Cut})
			}
		}
		j.thin(CodeMargin, margins, s.Cut.Address, s.Cut.Where, p.Address)
		var lands []gap
		for _, t := range slots[i+1:] {
			if t.Cut.Series == "" && beside(s, t) {
				low, high := s, t
				if low.Near.Nm > high.Near.Nm {
					low, high = t, s
				}
				if high.Near.Nm > low.Far.Nm {
					lands = append(lands, gap{j.Ledger.Less(name+".land", high.Near, low.Far), max(s.Depth.Nm, t.Depth.Nm), s.Cut})
				}
			}
		}
		j.thin(CodeLand, lands, s.Cut.Address, s.Cut.Where, p.Address)
	}
}

// beside reports whether two slots go into the same side and run beside each
// other.
func beside(s, t bodies.Slot) bool {
	a, _ := s.Footprint()
	b, _ := t.Footprint()
	return s.Open == t.Open && s.Run == t.Run && a.Overlaps(b)
}

// floors judges the wood under the deepest channel, trough and recess of each
// kind and side.
func (j *judge) floors(p *piece.Part) {
	type place struct {
		kind piece.CutKind
		open piece.Side
	}
	deepest := map[place]bodies.Slot{}
	var order []place
	for _, s := range j.index.Slots(p, piece.Channel, piece.Trough, piece.Recess) {
		k := place{s.Cut.Kind, s.Open}
		d, known := deepest[k]
		if !known {
			order = append(order, k)
		}
		if !s.Through && (!known || s.Depth.Nm > d.Depth.Nm) {
			deepest[k] = s
		}
	}
	for _, k := range order {
		s, ok := deepest[k]
		if !ok {
			continue
		}
		j.out.Judged()
		floor := j.Ledger.Less(string(s.Cut.Address)+".floor", p.Sizes()[s.Axis], s.Depth)
		limit := j.out.Limit("least floor", share.LeastFloor(s.Depth.Nm))
		if floor.Nm >= limit.Nm {
			continue
		}
		j.out.Add(plan.Finding{
			Status: plan.Fail, Severity: diag.Warning, Code: CodeFloor, Address: s.Cut.Address, Where: s.Cut.Where,
			Text: message.New("check.land.floor-too-thin", message.Text("mark", j.out.Mark(p.Address)), message.Word("cut", "cut."+string(s.Cut.Kind)),
				message.LengthRounded("is", floor.Nm, unit.Down), message.LengthRounded("limit", limit.Nm, unit.Up), message.Length("depth", s.Depth.Nm)),
			Is: verdict.Figure(floor), Limit: &limit.Figure, Source: limit.Source,
			Remedy: j.shallower(s, limit.Nm-floor.Nm),
		}, p.Address)
	}
}

// shallower is the remedy of a depth that the document states.
func (j *judge) shallower(s bodies.Slot, by unit.Length) []diag.Remedy {
	to := s.Depth.Nm - by
	if s.Cut.Kind == piece.Channel || to <= 0 {
		return nil
	}
	return []diag.Remedy{j.out.Rewrite(message.New("check.land.shallower", message.LengthRounded("to", to, unit.Down)), s.Depth, to, unit.Down)}
}
