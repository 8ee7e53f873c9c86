package rehearsal

import (
	"scantling/internal/address"
	"scantling/internal/message"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

func first(row plan.PartRow) address.Address {
	if len(row.Members) == 0 {
		return ""
	}
	return row.Members[0]
}

func setting(list []plan.Setting, word string) (plan.Setting, bool) {
	for _, s := range list {
		if s.Word == word {
			return s, true
		}
	}
	return plan.Setting{}, false
}

// settings checks each card by itself: sums close, passes rise (or, at the
// thicknesser, fall) to the setting, figures that say one thing twice agree.
func (r *rehearsal) settings() {
	for _, c := range r.Plan.Setups {
		r.sums(c, c.Sums)
		for _, s := range c.Settings {
			r.passes(c, s)
		}
		for _, p := range c.Placements {
			r.report.Placements++
			r.sums(c, p.Sums)
			for _, s := range p.Settings {
				r.passes(c, s)
			}
			r.twice(c, p)
		}
		r.heightSum(c)
	}
}

func (r *rehearsal) sums(c plan.Setup, sums []plan.Sum) {
	for _, s := range sums {
		r.report.Sums++
		var total unit.Length
		for _, t := range s.Terms {
			total += t.Figure.Nm
		}
		if total != s.Total.Nm {
			r.fail(CodeSum, "rehearsal.sum", "", message.Text("card", c.ID), message.Length("terms", total), message.Length("total", s.Total.Nm))
		}
	}
}

func (r *rehearsal) passes(c plan.Setup, s plan.Setting) {
	n := len(s.Passes)
	if n == 0 {
		return
	}
	r.report.Passes += n
	if !same(s.Passes[n-1].Nm, s.Figure.Nm) {
		r.fail(CodeSum, "rehearsal.last-pass", "", message.Text("card", c.ID), message.Length("last", s.Passes[n-1].Nm), message.Length("setting", s.Figure.Nm))
	}
	falls := s.Word == "thickness"
	step := unit.Length(0)
	for i := 1; i < n; i++ {
		move := s.Passes[i].Nm - s.Passes[i-1].Nm
		if falls {
			move = -move
		}
		if move <= 0 {
			r.fail(CodeSum, "rehearsal.pass-order", "", message.Text("card", c.ID), message.Count("pass", i+1))
		}
		// All passes but the last take alike.
		if i > 1 && i < n-1 && move != step {
			r.fail(CodeSum, "rehearsal.uneven-pass", "", message.Text("card", c.ID), message.Count("pass", i+1))
		}
		if i == n-1 && n > 2 && move > step {
			r.fail(CodeSum, "rehearsal.uneven-pass", "", message.Text("card", c.ID), message.Count("pass", i+1))
		}
		step = move
	}
}

// twice compares figures that follow from each other: the fence to the cutter's
// centre and edge, a stop to the cutter's centre and edge, and the sums that
// repeat them.
func (r *rehearsal) twice(c plan.Setup, p plan.Placement) {
	half := c.CutterSize.Nm / 2
	for _, pair := range [][2]string{
		{"fence to cutter centre", "fence to cutter edge"},
		{"guide to cutter centre", "guide to cutter edge"},
		{"stop left", "stop left to cutter edge"},
		{"stop right", "stop right to cutter edge"},
	} {
		centre, okCentre := setting(p.Settings, pair[0])
		edge, okEdge := setting(p.Settings, pair[1])
		if okCentre && okEdge && !same(centre.Figure.Nm-half, edge.Figure.Nm) {
			r.fail(CodeSum, "rehearsal.centre-and-edge", "", message.Text("card", c.ID), message.Length("centre", centre.Figure.Nm), message.Length("edge", edge.Figure.Nm))
		}
	}
	r.pathSum(c, p)
	for _, s := range p.Sums {
		for _, t := range s.Terms {
			if set, ok := setting(p.Settings, t.Word); ok && t.Figure.Nm != set.Figure.Nm {
				r.fail(CodeSum, "rehearsal.sum-and-setting", "", message.Text("card", c.ID), message.Length("term", t.Figure.Nm), message.Length("setting", set.Figure.Nm))
			}
		}
	}
}

// pathSum checks that the first sum of a placement with several paths repeats
// them.
func (r *rehearsal) pathSum(c plan.Setup, p plan.Placement) {
	for _, w := range append([]string{fenceFar}, fenceWords...) {
		s, ok := setting(p.Settings, w)
		if !ok || len(s.Passes) == 0 {
			continue
		}
		bad := len(p.Sums) == 0 || len(p.Sums[0].Terms) != len(s.Passes)
		at := unit.Length(0)
		for i := 0; !bad && i < len(s.Passes); i++ {
			at += p.Sums[0].Terms[i].Figure.Nm
			bad = at != s.Passes[i].Nm
		}
		if bad {
			r.fail(CodeSum, "rehearsal.paths-and-fence", "", message.Text("card", c.ID), message.Length("fence", s.Figure.Nm))
		}
	}
}

// heightSum checks that a sum of passes repeats the passes of height or
// thickness, and that planing starts at the thickest work on the card.
func (r *rehearsal) heightSum(c plan.Setup) {
	h, ok := sunk(c)
	if t, planes := setting(c.Settings, "thickness"); planes && len(t.Passes) > 0 {
		r.planingSum(c, t)
		return
	}
	if !ok || len(h.Passes) == 0 {
		return
	}
	if len(c.Sums) == 0 {
		r.fail(CodeSum, "rehearsal.passes-and-height", "", message.Text("card", c.ID), message.Length("height", h.Figure.Nm))
		return
	}
	s := c.Sums[0]
	bad := s.Total.Nm != h.Figure.Nm || len(s.Terms) != len(h.Passes)
	var at unit.Length
	for i, t := range s.Terms {
		at += t.Figure.Nm
		bad = bad || i < len(h.Passes) && at != h.Passes[i].Nm
	}
	if bad {
		r.fail(CodeSum, "rehearsal.passes-and-height", "", message.Text("card", c.ID), message.Length("height", h.Figure.Nm))
	}
}

func (r *rehearsal) planingSum(c plan.Setup, t plan.Setting) {
	from := unit.Length(0)
	for _, id := range c.Operations {
		from = max(from, r.op[id].Before[2].Nm)
	}
	bad := len(c.Sums) == 0 || len(c.Sums[0].Terms) != len(t.Passes)+1 || c.Sums[0].Terms[0].Figure.Nm != from || c.Sums[0].Total.Nm != t.Figure.Nm
	if !bad {
		at := from
		for i, term := range c.Sums[0].Terms[1:] {
			at += term.Figure.Nm
			bad = bad || at != t.Passes[i].Nm
		}
	}
	if bad {
		r.fail(CodeSum, "rehearsal.passes-and-height", "", message.Text("card", c.ID), message.Length("height", t.Figure.Nm))
	}
}
