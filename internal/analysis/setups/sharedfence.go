package setups

import (
	"cmp"
	"slices"

	"scantling/internal/message"
	"scantling/internal/unit"
)

// fenceAt are the places in which the fence stands on a card, from the cutter's
// near edge, one for each path.
type fenceAt []unit.Length

func (p fenceAt) has(at unit.Length) bool {
	return slices.ContainsFunc(p, func(l unit.Length) bool { return oneSetting(l, at) })
}

// added is how many places more the drafts need.
func (p fenceAt) added(drafts []draft) int {
	more := slices.Clone(p)
	more.add(drafts)
	return len(more) - len(p)
}

// add enters the places of the drafts that are not there yet.
func (p *fenceAt) add(drafts []draft) {
	for _, f := range drafts {
		for _, at := range f.places() {
			if !p.has(at) {
				*p = append(*p, at)
			}
		}
	}
}

// places are where the fence stands for the draft's paths. A shoulder has one: what
// lies beyond it is cleared against no fence.
func (f draft) places() []unit.Length {
	w := f.jobs[0].Way
	if w.Clears || len(w.Paths) == 0 {
		return []unit.Length{f.edge.Nm}
	}
	var out []unit.Length
	for _, path := range w.Paths {
		out = append(out, f.edge.Nm+path)
	}
	return out
}

// byDistance orders drafts from the fence outwards, those of the same places beside
// one another.
func byDistance(a, b draft) int {
	return cmp.Or(cmp.Compare(a.edge.Nm, b.edge.Nm), slices.Compare(a.places(), b.places()))
}

// shared says in which order the passes are made where rows of a card share places
// of the fence of which some have several: place by place, not row by row, so that
// no place is set twice. Each row still goes through with the fence moving away from
// the cutter only, since the places stand in rising order. Rows with stops are left
// as they are: their stops would be set again at every place.
func shared(drafts []draft, places fenceAt) message.Message {
	all, several := 0, false
	var rows []draft // offered alike, and so told in one row
	for _, f := range drafts {
		w := f.jobs[0].Way
		if !w.StartOpen || !w.EndOpen {
			return message.Message{}
		}
		if slices.ContainsFunc(rows, f.offeredAs) {
			continue
		}
		rows = append(rows, f)
		all += len(f.places())
		several = several || len(f.places()) > 1
	}
	if !several || all == len(places) {
		return message.Message{}
	}
	return message.New("setups.shared-fence", message.Count("settings", len(places)))
}

// offeredAs reports whether another row's draft lies and goes as this one does.
func (f draft) offeredAs(g draft) bool {
	v, w := f.jobs[0].Way, g.jobs[0].Way
	return f.fence == g.fence && v.Down == w.Down && v.Run == w.Run && v.Guide == w.Guide && f.turned() == g.turned() &&
		f.jobs[0].Row.Mark != g.jobs[0].Row.Mark && slices.Equal(f.places(), g.places())
}
