package setups

import (
	"cmp"
	"slices"

	"scantling/internal/analysis/operations"
	"scantling/internal/piece"
	"scantling/internal/plan"
)

// byHand marks out each cut that the hand makes: where it lies from the low
// sides of the part, how deep.
func (d *decider) byHand(jobs []*operations.Job) []plan.Placement {
	var out []plan.Placement
	for _, j := range jobs {
		p := plan.Placement{Mark: j.Row.Mark, Pieces: j.Row.Quantity()}
		p.Cuts = append(p.Cuts, j.Cut.Address)
		switch {
		case j.Cut.Slot != nil:
			p.Settings = d.slotMarks(j.Cut.Slot)
			p.Note = d.handNote(j)
		case j.Cut.Bore != nil:
			p.Settings = d.holeMarks(j)
			if s := j.Cut.Bore.Sink; s != nil && s.Flat {
				p.Note = words("setups.counterbore")
			} else if s != nil {
				p.Note = words("setups.countersink")
			}
		case j.Cut.Dip != nil:
			p.Settings = d.dipMarks(j.Cut.Dip)
		case j.Cut.Slice != nil:
			d.sliceMarks(&p, j.Cut)
		case j.Cut.Ease != nil:
			p.Settings = easeMarks(j.Cut.Ease)
		case j.Cut.Pocket != nil:
			if !j.Cut.Pocket.Through {
				p.Settings = []plan.Setting{{Word: "depth", Figure: j.Cut.Pocket.Depth}}
			}
			if j.Cut.Kind == piece.Curve {
				p.Note = words("setups.hand.curve")
			}
		}
		p.Feed = d.lie(j, seen(j.Cut))
		out = append(out, p)
	}
	return out
}

// easeMarks gives the radius of a round or a cove or the leg of a chamfer, and where
// it begins and ends.
func easeMarks(e *piece.Ease) []plan.Setting {
	word := "radius"
	if e.Chamfer {
		word = "leg of the chamfer"
	}
	out := []plan.Setting{{Word: word, Figure: e.Radius}}
	if e.To.Nm != 0 {
		out = append(out, plan.Setting{Word: "begins along the edge", Figure: e.From}, plan.Setting{Word: "ends along the edge", Figure: e.To})
	}
	return out
}

// seen is the side that a cut is seen from.
func seen(c piece.Cut) piece.Side {
	switch {
	case c.Slice != nil:
		return c.Slice.Off
	case c.Ease != nil:
		return c.Ease.Sides[0]
	}
	return c.Open()
}

func (d *decider) slotMarks(s *piece.Slot) []plan.Setting {
	across, run := piece.SideOf(s.Across(), false), piece.SideOf(s.Run, false)
	out := []plan.Setting{
		{Word: "from " + string(across), Figure: s.Near}, {Word: "far side from " + string(across), Figure: s.Far},
	}
	if !s.StartOpen {
		out = append(out, plan.Setting{Word: "from " + string(run), Figure: s.From})
	}
	if !s.EndOpen {
		out = append(out, plan.Setting{Word: "far side from " + string(run), Figure: s.To})
	}
	if s.LeanNear.Nm != 0 {
		out = append(out, plan.Setting{Word: "near wall at the foot", Figure: d.l.Sum("foot", s.Near, s.LeanNear)})
	}
	if s.LeanFar.Nm != 0 {
		out = append(out, plan.Setting{Word: "far wall at the foot", Figure: d.l.Less("foot", s.Far, s.LeanFar)})
	}
	return append(out, plan.Setting{Word: "depth", Figure: s.Depth})
}

// holeMarks gives a hole's centre, drill and depth.
func (d *decider) holeMarks(j *operations.Job) []plan.Setting {
	b := j.Cut.Bore
	out := []plan.Setting{}
	open, _ := b.Open.Axis()
	n := 0
	for _, axis := range []piece.Local{piece.AlongLength, piece.AlongWidth, piece.AlongThickness} {
		if axis == open {
			continue
		}
		out = append(out, plan.Setting{Word: "centre from " + string(piece.SideOf(axis, false)), Figure: b.At[n]})
		n++
	}
	out = append(out, plan.Setting{Word: "drill", Figure: b.Diameter})
	if !b.Through {
		out = append(out, plan.Setting{Word: "depth", Figure: b.Depth})
	}
	if s := b.Sink; s != nil {
		word := "countersink"
		if s.Flat {
			word = "counterbore"
		}
		out = append(out, plan.Setting{Word: word, Figure: s.Diameter}, plan.Setting{Word: word + " depth", Figure: s.Depth})
	}
	return out
}

// dipMarks gives a scoop's middle, width and depth, and the radius of the
// sanding block: (chord² + 4 depth²) / (8 depth), the circle through three
// points.
func (d *decider) dipMarks(dip *piece.Dip) []plan.Setting {
	open, _ := dip.Open.Axis()
	along := piece.EndLow
	if open == piece.AlongLength {
		along = piece.EdgeLow
	}
	out := []plan.Setting{
		{Word: "middle from " + string(along), Figure: dip.Centre}, {Word: "width", Figure: dip.Chord}, {Word: "depth", Figure: dip.Depth},
	}
	if r, ok := d.arcRadius(dip.Chord, dip.Depth); ok {
		out = append(out, plan.Setting{Word: "radius of the sanding block", Figure: r})
	}
	return out
}

// arcRadius returns half the depth and an eighth of the chord's square over the
// depth.
func (d *decider) arcRadius(chord, depth piece.Figure) (piece.Figure, bool) {
	if depth.Nm <= 0 {
		return piece.Figure{}, false
	}
	ratio, err := d.l.Make("scoop.ratio", "div", "", chord.Entry, depth.Entry)
	if err != nil {
		return piece.Figure{}, false
	}
	part, err := d.l.Make("scoop.part", "mul", "", chord.Entry, ratio)
	if err != nil {
		return piece.Figure{}, false
	}
	eighth := d.l.Times("scoop.eighth", d.l.Figure(part), 1, 8)
	return d.l.Sum("scoop.radius", eighth, d.l.Half("scoop.half", depth)), true
}

// drilled adds to a mortise's lines the drill and the first and last hole.
func (d *decider) drilled(p *plan.Placement, j *operations.Job) {
	s, name := j.Cut.Slot, string(j.Cut.Address)+".drilled"
	half := d.halfDown(name, j.Way.Size)
	first, last := d.l.Sum(name+".first", s.From, half), d.l.Less(name+".last", s.To, half)
	p.Down = j.Way.Down
	p.Settings = append(p.Settings, plan.Setting{Word: "drill", Figure: j.Way.Size},
		plan.Setting{Word: "first hole", Figure: first}, plan.Setting{Word: "last hole", Figure: last})
	title := "setups.sum.mortise"
	if j.Cut.Kind == piece.ScrewSlot {
		title = "setups.sum.screw-slot"
	}
	p.Sums = append(p.Sums, plan.Sum{Title: words(title), Total: d.l.Less(name+".length", s.To, s.From), Terms: []plan.SumTerm{
		{Word: "half the drill", Figure: half}, {Word: "from first hole to last", Figure: d.l.Less(name+".between", last, first)},
		{Word: "half the drill", Figure: half},
	}})
	switch {
	case j.Cut.Kind == piece.ScrewSlot:
		p.Note = words("setups.screw-slot-drilled")
	case s.EndRadius.Nm > 0:
		p.Note = words("setups.mortise-drilled-round")
	default:
		p.Note = words("setups.mortise-drilled")
	}
}

// others makes the placements of holes, scoops and eased edges at a machine: the
// figures are those of marking out.
func (d *decider) others(jobs []*operations.Job) []plan.Placement {
	out := d.byHand(jobs)
	for i, j := range jobs {
		if j.Way.Lean != nil {
			d.lean(&out[i], j)
			continue
		}
		if j.Cut.Slot != nil {
			d.drilled(&out[i], j)
			continue
		}
		if j.Cut.Ease != nil && len(j.Way.Fences) > 0 {
			out[i].Down, out[i].Fence = j.Way.Down, j.Way.Fences[0]
			out[i].Leads = operations.Leads(out[i].Down, out[i].Fence)
			out[i].Feed = d.feed(j, out[i])
		} else if j.Way.Down != "" {
			out[i].Down = j.Way.Down
		}
	}
	slices.SortStableFunc(out, func(a, b plan.Placement) int { return cmp.Compare(a.Mark, b.Mark) })
	return out
}
