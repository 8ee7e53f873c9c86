package holds

import (
	"scantling/internal/analysis/check/verdict"
	"scantling/internal/diag"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/rules"
	"scantling/internal/share"
	"scantling/internal/unit"
)

// rods judges rods in their channels: length, lining, room for a finger.
func (j *judge) rods(held []plan.Held) {
	type at struct {
		held  plan.Held
		thing piece.Thing
	}
	things := map[string]piece.Thing{}
	for _, c := range j.Piece.Contents {
		for _, t := range c.Things {
			things[string(c.Address)+" "+t.Key] = t
		}
	}
	last := map[string]at{} // by contents and part: the neighbour before
	for _, h := range held {
		c := j.by[h.Of]
		t, ok := things[string(h.Of)+" "+h.Thing]
		if c == nil || !ok {
			continue
		}
		j.out.Judged()
		j.long(c, t, h)
		j.lining(c, t, h)
		key := string(h.Of) + " " + string(h.In)
		if before, ok := last[key]; ok && c.Finger.Nm > 0 {
			j.finger(c, before.thing, t)
		}
		last[key] = at{h, t}
	}
}

// long holds a rod and its play against its channel: what lies between the round
// ends where it is stopped.
func (j *judge) long(c *piece.Contents, t piece.Thing, h plan.Held) {
	cut := j.index.Cut(h.Cut)
	if cut == nil || cut.Slot == nil || cut.Slot.StartOpen && cut.Slot.EndOpen {
		return
	}
	s, l, name := cut.Slot, j.Ledger, string(h.Cut)
	l.Learn(rules.Functions())
	room := l.Less(name+".room", s.To, s.From)
	end := s.EndRadius
	if end.Nm > 0 && s.Corner.Nm > s.Depth.Nm { // a nose that does not go down to its radius reaches less far
		if ball, err := l.Call(name+".ball", "nose_reach", s.Corner.Entry, s.Depth.Entry); err == nil {
			end = l.Sum(name+".end", l.Less("", end, s.Corner), ball)
		}
	}
	for _, open := range []bool{s.StartOpen, s.EndOpen} {
		if !open && s.EndRadius.Nm > 0 { // the round end takes no square one
			room = l.Less(name+".room", room, end)
		}
	}
	needs := l.Sum(name+".needs", t.Length, c.Play)
	if needs.Nm <= room.Nm {
		return
	}
	j.out.Add(plan.Finding{Status: plan.Fail, Severity: diag.Error, Code: CodeLong, Address: h.Cut, Where: cut.Where, Is: &needs, Limit: &room, Source: "contents.place (computed)",
		Text: message.New("check.holds.long", message.Text("mark", j.out.Mark(h.In)), message.Text("thing", t.Key), message.LengthRounded("is", needs.Nm, unit.Up),
			message.LengthRounded("limit", room.Nm, unit.Down), message.LengthRounded("over", needs.Nm-room.Nm, unit.Up))}, h.In)
}

// lining judges a rod that its lining lifts on to the edges of the channel.
func (j *judge) lining(c *piece.Contents, t piece.Thing, h plan.Held) {
	cut := j.index.Cut(h.Cut)
	if h.Lining.Nm == 0 || cut == nil || cut.Slot == nil {
		return
	}
	round := j.Ledger.Times(string(h.Cut)+".round", cut.Slot.Corner, 2, 1)
	within := j.Ledger.Less(string(h.Cut)+".within", round, j.Ledger.Times("", h.Lining, 2, 1))
	if t.Diameter.Nm <= within.Nm {
		return
	}
	least, err := share.LeastRound(t.Diameter.Nm, h.Lining.Nm)
	if err != nil {
		return
	}
	j.out.Add(plan.Finding{Status: plan.Fail, Severity: diag.Warning, Code: CodeLining, Address: h.Cut, Where: cut.Where, Is: verdict.Figure(t.Diameter), Limit: &within, Source: verdict.Cite(least.Source),
		Text: message.New("check.holds.lining", message.Text("mark", j.out.Mark(h.In)), message.Text("thing", t.Key), message.Length("lining", h.Lining.Nm), message.LengthRounded("bare", h.Bare.Nm, unit.Nearest),
			message.LengthRounded("sinks", h.Sinks.Nm, unit.Nearest), message.LengthRounded("cutter", least.Value, unit.Up))}, h.In)
}

// finger holds the room between two neighbours against what the contents want.
func (j *judge) finger(c *piece.Contents, a, b piece.Thing) {
	centre := func(t piece.Thing) piece.Figure {
		s := j.index.Cut(t.Cut).Slot
		return j.Ledger.Half("", j.Ledger.Sum("", s.Near, s.Far))
	}
	first, second := centre(a), centre(b)
	if first.Nm > second.Nm {
		first, second = second, first
	}
	l, name := j.Ledger, string(b.Cut)+".finger"
	is := l.Less(name, second, first, l.Half("", j.widest(a)), l.Half("", j.widest(b)))
	limit, usual := c.Finger, j.out.Limit("finger between", share.FingerBetween())
	if is.Nm >= limit.Nm {
		return
	}
	cut := j.index.Cut(b.Cut)
	j.out.Add(plan.Finding{Status: plan.Fail, Severity: diag.Warning, Code: CodeFinger, Address: cut.Series, Where: cut.Where, Is: &is, Limit: &limit, Source: usual.Source,
		Text: message.New("check.holds.finger", message.Text("mark", j.out.Mark(b.In)), message.Text("thing", b.Key), message.LengthRounded("is", is.Nm, unit.Down),
			message.LengthRounded("limit", limit.Nm, unit.Up), message.LengthRounded("miss", limit.Nm-is.Nm, unit.Up), message.Length("usual", usual.Nm))}, b.In)
}

// widest is a rod's head where it is thicker than the rod.
func (j *judge) widest(t piece.Thing) piece.Figure {
	if t.HeadWidth.Nm > t.Diameter.Nm {
		return t.HeadWidth
	}
	return t.Diameter
}
