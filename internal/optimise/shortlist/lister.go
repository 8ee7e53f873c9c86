package shortlist

import (
	"slices"

	"scantling/internal/optimise/ceiling"
	"scantling/internal/optimise/work"
)

// lister makes short lists, one after the other.
type lister struct {
	pool
	q      Question
	length int
	meter  *work.Meter
	floor  int64
	best   int32
	full   bool // something was left out for want of room
	steps  int64
	// The list that is being made: its fillings, worthiest first, and the guide
	// below which one is of no use.
	present []int32
	need    int64
}

func newLister(q Question, length int, meter *work.Meter) lister {
	l := lister{q: q, length: length, meter: meter, floor: q.Floor, best: -1}
	l.q.Guide = slices.Clone(q.Guide)
	for k := range l.q.Guide {
		if q.Value[k] > 0 { // no kind is left out, however dear its limit
			l.q.Guide[k] = max(l.q.Guide[k], 1)
		}
	}
	return l
}

// begin makes a filling of each piece.
func (s *lister) begin() {
	s.pieces = ceiling.Fits(nil, s.q.Pieces, s.q.X, s.q.Y, s.q.Guide, s.q.Left)
	slot := s.slots(s.q)
	s.full = s.clipped
	for i, l := range s.pieces {
		f := filling{guide: s.q.Guide[l.Kind], value: s.q.Value[l.Kind], hash: token(l.Kind), a: int32(i), b: -1}
		s.fillings = append(s.fillings, f)
		counts := make([]uint64, s.words)
		counts[slot[l.Kind]/8] = 1 << (slot[l.Kind] % 8 * 8)
		s.counts = append(s.counts, counts...)
		s.note(int32(i))
	}
}

// token spreads a kind over 64 bits (the finaliser of SplitMix64: Steele, Lea
// and Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014).
func token(k int) uint64 {
	z := uint64(k+1) * 0x9e3779b97f4a7c15
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

// start begins a list, beside which no more than so much may be gained, unless
// the most that its fillings may have leads to nothing new.
func (s *lister) start(near, most int64) bool {
	s.present = s.present[:0]
	s.need = (s.floor+s.q.Step)*s.q.Scale - s.q.Limits - near
	s.steps += 8
	return most >= s.need
}

// note notes a filling that is worth more than what is known.
func (s *lister) note(f int32) {
	if v := s.fillings[f].value; v > s.floor {
		s.floor, s.best = v, f
	}
}

// paid takes the steps made off the meter; it returns false when the meter has
// ended or too many fillings are kept.
func (s *lister) paid() bool {
	ok := s.meter.Take(s.steps) && len(s.fillings) <= mostFillings
	s.steps = 0
	return ok
}

// inherit takes over fillings of a smaller rectangle.
func (s *lister) inherit(ids []int32) {
	for _, f := range ids {
		s.steps += 4
		guide := s.fillings[f].guide
		if guide < s.need {
			return
		}
		i := s.place(guide)
		if !s.holds(i, guide, func(g int32) bool { return g == f || s.fillings[g].hash == s.fillings[f].hash && s.equal(g, f) }) {
			s.insert(i, f)
		}
	}
}

// place returns where a filling with this guide goes: after those with the same.
func (s *lister) place(guide int64) int {
	ids := s.present
	lo, hi := 0, len(ids)
	for lo < hi {
		if mid := (lo + hi) / 2; s.fillings[ids[mid]].guide >= guide {
			lo = mid + 1
		} else {
			hi = mid
		}
	}
	return lo
}

// holds says whether one of the fillings before place i with the same guide is
// alike.
func (s *lister) holds(i int, guide int64, alike func(int32) bool) bool {
	for i--; i >= 0 && s.fillings[s.present[i]].guide == guide; i-- {
		if s.steps++; alike(s.present[i]) {
			return true
		}
	}
	return false
}

// insert puts a filling at place i, and drops the last if there are too many.
func (s *lister) insert(i int, f int32) {
	if s.present = slices.Insert(s.present, i, f); len(s.present) >= s.length {
		s.present, s.full = s.present[:s.length], true
		s.need = s.fillings[s.present[s.length-1]].guide + 1
	}
	s.steps += 10
}

// join offers all fillings of two rectangles side by side.
func (s *lister) join(as, bs []int32, how how, at int64) {
	if len(as) == 0 || len(bs) == 0 {
		return
	}
	most := s.fillings[bs[0]].guide
	for _, a := range as {
		fa := &s.fillings[a]
		if fa.guide+most < s.need {
			return
		}
		for _, b := range bs {
			fb := &s.fillings[b]
			guide := fa.guide + fb.guide
			if guide < s.need {
				break
			}
			s.steps += int64(12 + 2*s.words)
			if !s.together(a, b) {
				continue
			}
			hash := fa.hash + fb.hash
			i := s.place(guide)
			if s.holds(i, guide, func(g int32) bool { return s.fillings[g].hash == hash && s.same(g, a, b) }) {
				continue
			}
			s.keep(i, filling{guide: guide, value: fa.value + fb.value, hash: hash, a: a, b: b, at: int32(at), how: how})
			fa = &s.fillings[a]
		}
	}
}

// keep adds a new filling at place i of the present list.
func (s *lister) keep(i int, f filling) {
	id := s.add(f)
	s.insert(i, id)
	if f.value > s.floor {
		s.note(id)
	}
}

// forget drops the fillings from mark on but the best one and those that ids rest
// on, and returns ids as they are numbered then.
func (s *lister) forget(mark int, ids []int32) []int32 {
	keep := make([]bool, len(s.fillings)-mark)
	stay := func(f int32) {
		if int(f) >= mark {
			keep[int(f)-mark] = true
		}
	}
	stay(s.best)
	for _, f := range ids {
		stay(f)
	}
	for i := len(keep) - 1; i >= 0; i-- {
		if keep[i] {
			stay(s.fillings[mark+i].a)
			stay(s.fillings[mark+i].b)
		}
	}
	number := make([]int32, len(keep))
	renumber := func(f int32) int32 {
		if int(f) >= mark {
			return number[int(f)-mark]
		}
		return f
	}
	to := mark
	for i := range keep {
		if !keep[i] {
			continue
		}
		f := s.fillings[mark+i]
		f.a, f.b = renumber(f.a), renumber(f.b)
		s.fillings[to] = f
		copy(s.counts[to*s.words:(to+1)*s.words], s.counts[(mark+i)*s.words:])
		number[i] = int32(to)
		to++
	}
	s.steps += int64(len(keep))
	s.fillings, s.counts = s.fillings[:to], s.counts[:to*s.words]
	s.best = renumber(s.best)
	out := make([]int32, len(ids))
	for i, f := range ids {
		out[i] = renumber(f)
	}
	return out
}
