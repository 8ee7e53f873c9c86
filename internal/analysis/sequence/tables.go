package sequence

import (
	"math"
	"strings"

	"scantling/internal/figure"
	"scantling/internal/sundries"
	"scantling/internal/timber"
)

// glueTimes are minutes: to put it together, in clamps, until it is hard.
type glueTimes struct{ open, clamp, cure int }

// finishTimes are minutes between coats and until the last is hard; rags tells a
// finish whose rags heat up.
type finishTimes struct {
	recoat, cure int
	rags         bool
}

// minutes is a time, or the usual one where it is not known.
func minutes(f figure.Of[sundries.Minutes], usual int) int {
	if !f.Known() {
		return usual
	}
	return int(f.Value)
}

// glueOf returns the times of a glue: the shop's own, or the trade's; those of pva
// where the glue is not known, which are the shortest clamp and the usual cure.
func (s *sequencer) glueOf(name string) glueTimes {
	g, err := s.Shop.Glue(name)
	if err != nil {
		g, _ = sundries.FindGlue("pva")
	}
	return glueTimes{minutes(g.Open, 5), s.clamp(g), minutes(g.Cure, 24*60)}
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

// finishOf returns the times of a finish, a day between coats and a week until it
// is hard where it is not known.
func (s *sequencer) finishOf(name string) finishTimes {
	f, err := s.Shop.Finish(name)
	if err != nil {
		return finishTimes{recoat: 24 * 60, cure: 7 * 24 * 60}
	}
	return finishTimes{minutes(f.Recoat, 24*60), minutes(f.Cure, 7*24*60), f.Rags}
}

func slug(s string) string { return strings.ReplaceAll(s, " ", "-") }
