package sequence

import (
	"math"

	"scantling/internal/figure"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/sundries"
	"scantling/internal/timber"
)

// gluing is what the glues of one glue-up ask, in minutes: the least time to put it
// together, the longest in clamps and until it is hard. It knows nothing of unknown ones.
type gluing struct {
	names, unknown    []string
	open, clamp, cure int
}

// gluingOf gathers the glues of joints.
func (s *sequencer) gluingOf(joints []piece.Joint) gluing {
	var names []string
	for _, j := range joints {
		if j.Glue != "" {
			names = append(names, j.Glue)
		}
	}
	return s.gluing(names...)
}

// gluing gathers the shop's own times of glues, or the trade's. What neither knows has no
// times: its tin has.
func (s *sequencer) gluing(names ...string) gluing {
	g := gluing{names: unique(names)}
	known := false
	for _, name := range g.names {
		of, err := s.Shop.Glue(name)
		if err != nil {
			g.unknown = append(g.unknown, name)
			continue
		}
		if open := minutes(of.Open, 5); !known || open < g.open {
			g.open = open
		}
		known, g.clamp, g.cure = true, max(g.clamp, s.clamp(of)), max(g.cure, minutes(of.Cure, 24*60))
	}
	return g
}

// name is the argument that names the glues.
func (g gluing) name() message.Arg { return list("glue", g.names) }

// clamps says how long it stays in clamps, and of which glues nobody knows.
func (g gluing) clamps() []message.Message {
	var out []message.Message
	if g.clamp > 0 {
		out = append(out, message.New("steps.clamp-for", message.Minutes("clamp", g.clamp)))
	}
	if len(g.unknown) > 0 {
		out = append(out, message.New("steps.glue-not-known", list("glue", g.unknown)))
	}
	return out
}

// cautions warn of the time that there is to put it together.
func (g gluing) cautions() []message.Message {
	if len(g.unknown) == len(g.names) {
		return nil
	}
	return []message.Message{message.New("caution.glue-open-time", message.Minutes("open", g.open))}
}

// minutes is a time, or the usual one where it is not known.
func minutes(f figure.Of[sundries.Minutes], usual int) int {
	if !f.Known() {
		return usual
	}
	return int(f.Value)
}

// clamp is how long a glue stays clamped in today's air, to the next five minutes:
// longer the colder it is. In air that it does not set in, which a check tells, it
// is the usual time.
func (s *sequencer) clamp(g sundries.Glue) int {
	usual := minutes(g.Clamp, 60)
	if s.Shop == nil || s.Shop.Climate.Now == (timber.Air{}) {
		return usual
	}
	now, err := g.ClampAt(s.Shop.Climate.Now.Temperature)
	if err != nil {
		return usual
	}
	return (int(math.Ceil(float64(now.Value)-1e-6)) + 4) / 5 * 5
}
