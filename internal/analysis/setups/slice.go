package setups

import (
	"scantling/internal/analysis/operations"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
)

// Words of the settings of a plane that is sawn off; package rehearsal reads them
// too.
const (
	wordLong       = "long point to other end"
	wordShort      = "short point to other end"
	wordFenceTable = "fence to blade at the table"
	wordFenceLong  = "fence to long point"
)

// lean fills a placement with what is set for a plane that is sawn off: the stop or
// the fence at the table, long and short point, and the angles in words.
func (d *decider) lean(p *plan.Placement, j *operations.Job) {
	n, name := j.Way.Lean, string(j.Cut.Address)
	p.Down, p.Leads = j.Way.Down, n.Leads
	part := d.partOf(j)
	down := message.Word("down", sideWord(part, p.Down))
	against := message.Word("edge", sideWord(part, n.Against))
	short, long := wordShort, wordLong
	if j.Way.Guide == operations.ByFence {
		short, long = wordFenceTable, wordFenceLong
		p.Fence = n.Against
		p.Feed = message.New("setups.feed.leaning", down, against)
		p.Settings = nil
	} else {
		p.Fence = j.Cut.Slice.Off
		p.Feed = message.New("setups.feed.leaning-end", down, against, message.Word("end", sideWord(part, j.Cut.Slice.Off)))
		p.Settings = nil
		if n.Stop.Entry != 0 {
			p.Settings = []plan.Setting{{Word: wordStopBlade, Figure: n.Stop}}
		}
	}
	p.Settings = append(p.Settings, plan.Setting{Word: short, Figure: n.Short}, plan.Setting{Word: long, Figure: n.Long})
	sum := plan.Sum{Title: words("setups.sum.plane"), Total: n.Long, Terms: []plan.SumTerm{{Word: short, Figure: n.Short}}}
	for _, f := range []piece.Figure{n.OverFirst, n.OverSecond} {
		if f.Nm != 0 {
			sum.Terms = append(sum.Terms, plan.SumTerm{Word: "runs off", Figure: f})
		}
	}
	if rest := d.l.Less(name+".rest", n.Long, n.Short, n.OverFirst, n.OverSecond); rest.Nm != 0 {
		sum.Terms = append(sum.Terms, plan.SumTerm{Word: "runs off", Figure: rest})
	}
	p.Sums = []plan.Sum{sum}
	p.Note = angles(*n)
}

// angles says how gauge and blade are set.
func angles(n operations.Lean) message.Message {
	swing, tilt := message.Ratio("swing", float64(n.Swing)), message.Ratio("tilt", float64(n.Tilt))
	switch {
	case n.Swing == 0:
		return message.New("setups.lean.tilt", tilt)
	case n.Tilt == 0:
		return message.New("setups.lean.swing", swing)
	case n.Trails:
		return message.New("setups.lean.both-trails", swing, tilt)
	}
	return message.New("setups.lean.both-leads", swing, tilt)
}

// sliceMarks marks out a plane for the hand or the band saw: for each way that it
// falls where it begins and ends, and how far from the low side it stands there.
func (d *decider) sliceMarks(p *plan.Placement, c piece.Cut) {
	s, name := c.Slice, string(c.Address)
	off, _ := s.Off.Axis()
	beginning := plan.Setting{Word: "at its beginning from " + string(piece.SideOf(off, false)), Figure: s.At[0]}
	p.Note = words("setups.hand.plane")
	if off == piece.AlongLength {
		p.Note = words("setups.hand.end")
	}
	k := 0
	for a := range piece.Local(3) {
		if a == off {
			continue
		}
		if at := s.At[k+1]; at.Nm != s.At[0].Nm {
			low := string(piece.SideOf(a, false))
			p.Settings = append(p.Settings, plan.Setting{Word: "begins from " + low, Figure: s.From[k]})
			if len(p.Settings) == 1 {
				p.Settings = append(p.Settings, beginning)
			}
			p.Settings = append(p.Settings, plan.Setting{Word: "ends from " + low, Figure: s.To[k]}, plan.Setting{Word: "at its end after " + low, Figure: at})
			over := d.l.Less(name+".over", at, s.At[0])
			p.Sums = append(p.Sums, plan.Sum{Title: words("setups.sum.plane"), Total: at, Terms: []plan.SumTerm{
				{Word: beginning.Word, Figure: s.At[0]}, {Word: "runs off", Figure: over},
			}})
			if off == piece.AlongWidth && a == piece.AlongLength {
				p.Note = message.New("setups.hand.taper", message.Length("over", over.Nm.Abs()), message.Length("along", (s.To[k].Nm-s.From[k].Nm).Abs()))
			}
		}
		k++
	}
	if len(p.Settings) == 0 { // square to the part: all at one height
		p.Settings = []plan.Setting{beginning}
	}
}
