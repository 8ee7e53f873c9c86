package setups

import (
	"scantling/internal/analysis/operations"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/tool"
)

// Words of settings: keys of the catalogue below "setting.", as a plan holds
// them. Package rehearsal reads them too.
const (
	wordFenceEdge   = "fence to cutter edge"
	wordFenceFar    = "fence to cutter far edge" // the fence covers the rest
	wordFenceCentre = "fence to cutter centre"
	wordBlade       = "blade to fence"
	wordShoulder    = "stop to blade far side" // and cleared from there to the end
	wordFaced       = "faced fence to blade far side"
	wordStopSide    = "stop to cutter edge" // on a sled
	wordStopBlade   = "stop to blade"
	wordLength      = "length"               // marked by hand
	wordGuideEdge   = "guide to cutter edge" // a plunge router on clamped work
	wordGuideCentre = "guide to cutter centre"
	wordPlunge      = "plunge depth"
	wordStopLeft    = "stop left"
	wordStopRight   = "stop right"
	wordStopLeftAt  = "stop left to cutter edge"
	wordStopRightAt = "stop right to cutter edge"
	// A plunge router between two stops, seen with the guide towards the maker: from
	// each end of the work to where the cutter's centre halts beyond, and to the face
	// of the stop that halts the router's base there.
	wordHaltRight     = "left end to cutter at right stop"
	wordHaltLeft      = "right end to cutter at left stop"
	wordHaltRightFace = "left end to right stop"
	wordHaltLeftFace  = "right end to left stop"
)

// placement turns a draft into what is printed.
func (d *decider) placement(f draft) plan.Placement {
	j := f.jobs[0]
	w := j.Way
	p := plan.Placement{
		Mark: j.Row.Mark, Pieces: j.Row.Quantity(), Down: w.Down, Fence: f.fence, Leads: operations.Leads(w.Down, f.fence),
		Turn: f.turned(), Note: f.note,
	}
	if w.Kind == tool.Router { // the router stands on the side that a table would have below
		p.Down = w.Down.Opposite()
	}
	for _, job := range f.jobs {
		p.Cuts = append(p.Cuts, job.Cut.Address)
	}
	p.Settings = d.fence(f)
	p.Sums = d.fenceSums(f, p.Settings)
	d.stops(&p, f)
	p.Feed = d.feed(j, p)
	if w.Raise && w.Kind != tool.Router && p.Note.IsZero() {
		p.Note = words("setups.raise")
		if j.Cut.Kind == piece.Mortise && j.Cut.Slot.EndRadius.Nm == 0 {
			p.Note = words("setups.raise-and-square")
		}
	}
	return p
}

// centreWords are the settings to the cutter's centre, by those to its edge.
var centreWords = map[string]string{wordFenceEdge: wordFenceCentre, wordGuideEdge: wordGuideCentre}

// fence returns the settings of the fence: to the cutter's edge, with the moves
// for further paths, and to its centre.
func (d *decider) fence(f draft) []plan.Setting {
	w := f.jobs[0].Way
	name := string(f.jobs[0].Cut.Address)
	word := wordFenceEdge
	switch {
	case w.Guide == operations.BySled:
		word = wordStopSide
	case w.Clears && w.Guide == operations.ByFence:
		return []plan.Setting{{Word: wordFaced, Figure: d.shoulder(f)}}
	case w.Clears:
		return []plan.Setting{{Word: wordShoulder, Figure: d.shoulder(f)}}
	case w.Kind == tool.TableSaw:
		word = wordBlade
	case w.Kind == tool.Router:
		word = wordGuideEdge
	case f.edge.Nm < 0: // the fence stands over part of the cutter
		word = wordFenceFar
	}
	passes := d.paths(f)
	if word == wordFenceFar {
		for i := range passes {
			passes[i] = d.l.Sum(name+".far", passes[i], w.Size)
		}
	}
	setting := plan.Setting{Word: word, Figure: passes[len(passes)-1]}
	if len(passes) > 1 {
		setting.Passes = passes
	}
	out := []plan.Setting{setting}
	if centre, ok := centreWords[word]; ok && len(passes) == 1 {
		out = append(out, plan.Setting{Word: centre, Figure: d.l.Sum(name+".centre", f.edge, d.halfDown(name, w.Size))})
	}
	return out
}

// shoulder is from the stop to the far side of the blade at its last cut.
func (d *decider) shoulder(f draft) piece.Figure {
	w := f.jobs[0].Way
	name := string(f.jobs[0].Cut.Address) + ".shoulder"
	if _, high := f.fence.Axis(); high {
		return d.l.Less(name, w.Work[w.Across], w.Near)
	}
	return w.Far
}

// paths are the distances of the cutter's near edge, path by path, always away
// from the fence.
func (d *decider) paths(f draft) []piece.Figure {
	w := f.jobs[0].Way
	name := string(f.jobs[0].Cut.Address) + ".path"
	out := []piece.Figure{f.edge}
	if len(w.Paths) < 2 {
		return out
	}
	step := d.l.Leaf("rule.path", w.Paths[1], "house-rule", "how far one path may lie beyond the last")
	if len(w.Paths) == 2 {
		step = d.l.Less(name, d.l.Less(name, w.Far, w.Near), w.Size)
	}
	whole := d.l.Less(name, d.l.Less(name, w.Far, w.Near), w.Size)
	for k := 1; k < len(w.Paths); k++ {
		move := d.l.Least(name, whole, d.l.Times(name, step, int64(k), 1))
		out = append(out, d.l.Sum(name, f.edge, move))
	}
	return out
}

// fenceSums shows how the setting follows from the cut's middle, and what a rule
// laid across the work must read: fence to cutter, cutter, cutter to far side.
func (d *decider) fenceSums(f draft, settings []plan.Setting) []plan.Sum {
	w := f.jobs[0].Way
	name := string(f.jobs[0].Cut.Address)
	var out []plan.Sum
	if passes := settings[0].Passes; len(passes) > 1 {
		sum := plan.Sum{Title: words("setups.sum.paths"), Total: settings[0].Figure, Terms: []plan.SumTerm{{Word: "first path", Figure: passes[0]}}}
		for i, at := range passes[1:] {
			sum.Terms = append(sum.Terms, plan.SumTerm{Word: "move", Figure: d.l.Less(name+".move", at, passes[i])})
		}
		out = append(out, sum)
	}
	if len(settings) == 2 && settings[1].Word == centreWords[settings[0].Word] {
		half := d.halfDown(name, w.Size)
		out = append(out, plan.Sum{Title: words("setups.sum.fence"), Total: settings[0].Figure, Terms: []plan.SumTerm{
			{Word: "to cutter centre", Figure: settings[1].Figure},
			{Word: "half the cutter", Figure: d.negative(name, half)},
		}})
	}
	if w.Long && w.Across == piece.AlongLength {
		return out // the far end is not cut yet
	}
	width := w.Work[w.Across]
	last := settings[0].Figure
	if settings[0].Word == wordFenceFar || settings[0].Word == wordShoulder || settings[0].Word == wordFaced {
		return append(out, plan.Sum{Title: words("setups.sum.across"), Total: width, Terms: []plan.SumTerm{
			{Word: settings[0].Word, Figure: last},
			{Word: "beyond the cutter", Figure: d.l.Less(name+".beyond", width, last)},
		}})
	}
	return append(out, plan.Sum{Title: words("setups.sum.across"), Total: width, Terms: []plan.SumTerm{
		{Word: settings[0].Word, Figure: last},
		{Word: "cutter", Figure: w.Size},
		{Word: "beyond the cutter", Figure: d.l.Less(name+".beyond", width, last, w.Size)},
	}})
}

// reach is how far beyond the cutter's centre the mouth of a stopped end lies: its
// radius, or less where a round nose is let in by less than that.
func (d *decider) reach(name string, s *piece.Slot, radius piece.Figure) piece.Figure {
	if s == nil || s.Corner.Nm <= 0 || s.Depth.Nm >= s.Corner.Nm {
		return radius
	}
	f, err := d.l.Call(name+".reach", "nose_reach", s.Corner.Entry, s.Depth.Entry)
	if err != nil {
		return radius
	}
	return f
}

// stops adds the stops of a cut that ends inside the work. The cutter's centre
// travels in the work from where its near side touches From to where its far
// side touches To; the left stop holds the leading side at the end of that
// travel, the right one the trailing side at its beginning.
func (d *decider) stops(p *plan.Placement, f draft) {
	j := f.jobs[0]
	w := j.Way
	if w.StartOpen && w.EndOpen || w.Guide == operations.BySled {
		return
	}
	name := string(f.jobs[0].Cut.Address) + ".stop"
	run, radius := w.Work[w.Run], d.halfDown(name, w.Size)
	reach := d.reach(name, f.jobs[0].Cut.Slot, radius)
	first, last := d.l.Sum(name+".begin", w.From, reach), d.l.Less(name+".end", w.To, reach)
	startOpen, endOpen := w.StartOpen, w.EndOpen
	if _, high := p.Leads.Axis(); high {
		first, last = d.l.Less(name+".begin", run, last), d.l.Less(name+".end", run, first)
		startOpen, endOpen = endOpen, startOpen
	}
	left, right := last, d.l.Less(name+".right", run, first)
	if w.Kind == tool.Router {
		d.halts(p, j, left, right)
		return
	}
	if !endOpen {
		p.Settings = append(p.Settings, plan.Setting{Word: wordStopLeft, Figure: left},
			plan.Setting{Word: wordStopLeftAt, Figure: d.l.Less(name+".left", left, radius)})
	}
	if !startOpen {
		p.Settings = append(p.Settings, plan.Setting{Word: wordStopRight, Figure: right},
			plan.Setting{Word: wordStopRightAt, Figure: d.l.Less(name+".right", right, radius)})
	}
	if endOpen || startOpen {
		return
	}
	between := d.l.Sum(name+".between", left, right)
	travel := d.l.Less(name+".travel", last, first)
	p.Sums = append(p.Sums,
		plan.Sum{Title: words("setups.sum.stops"), Total: between, Terms: []plan.SumTerm{{Word: "length of the work", Figure: run}, {Word: "travel", Figure: travel}}},
		plan.Sum{Title: words("setups.sum.stop-faces"), Total: between, Terms: []plan.SumTerm{{Word: wordStopLeft, Figure: left}, {Word: wordStopRight, Figure: right}}},
	)
}

// partOf returns the part that a row's figures are taken from.
func (d *decider) partOf(j *operations.Job) piece.Part {
	return d.parts[j.Cut.Part]
}
