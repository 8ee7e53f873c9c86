package sequence

import "strings"

// finishTimes are minutes between coats and until the last is hard; rags tells a
// finish whose rags heat up.
type finishTimes struct {
	recoat, cure int
	rags         bool
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
