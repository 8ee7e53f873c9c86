package shortlist

import (
	"slices"

	"scantling/internal/optimise/ceiling"
	"scantling/internal/optimise/problem"
	"scantling/internal/optimise/work"
)

// search is one run over all rectangles.
type search struct {
	pool
	q       Question
	length  int
	meter   *work.Meter
	table   ceiling.Raster
	beside  []int64 // by rectangle: what may be gained beside it at most
	lists   [][]int32
	floor   int64
	best    int32
	full    bool // something was left out for want of room
	steps   int64
	first   map[[2]int][]int32 // pieces by the rectangle that holds them first
	present list
}

// list is the short list of the rectangle that is being filled.
type list struct {
	ids  []int32
	need int64 // guides below it are of no use
}

// mostRectangles bounds the rectangles of one run.
const mostRectangles = 1 << 18

func newSearch(q Question, length int, meter *work.Meter) *search {
	q.Guide = slices.Clone(q.Guide)
	for k := range q.Guide {
		if q.Value[k] > 0 { // no kind is left out, however dear its limit
			q.Guide[k] = max(q.Guide[k], 1)
		}
	}
	s := &search{q: q, length: length, meter: meter, floor: q.Floor, best: -1}
	s.table.Large = true
	if !s.table.Build(q.X, q.Y, q.Pieces, q.Guide, q.Left, meter) {
		return nil
	}
	nx, ny := len(s.table.X.At), len(s.table.Y.At)
	if nx*ny > mostRectangles || !meter.Take(int64(nx)*int64(ny)*int64(nx+ny)) {
		return nil
	}
	s.lists = make([][]int32, nx*ny)
	s.lookBeside()
	s.begin()
	return s
}

// begin makes a filling of each piece.
func (s *search) begin() {
	s.pieces = ceiling.Fits(nil, s.q.Pieces, s.q.X, s.q.Y, s.q.Guide, s.q.Left)
	slot := s.slots(s.q)
	s.full = s.clipped
	s.first = map[[2]int][]int32{}
	for i, l := range s.pieces {
		f := filling{guide: s.q.Guide[l.Kind], value: s.q.Value[l.Kind], hash: token(l.Kind), a: int32(i), b: -1}
		s.fillings = append(s.fillings, f)
		counts := make([]uint64, s.words)
		counts[slot[l.Kind]/8] = 1 << (slot[l.Kind] % 8 * 8)
		s.counts = append(s.counts, counts...)
		at := [2]int{s.table.X.Above(l.X), s.table.Y.Above(l.Y)}
		s.first[at] = append(s.first[at], int32(i))
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

// lookBeside works out what may be gained beside each rectangle.
func (s *search) lookBeside() {
	xs, ys := s.table.X.At, s.table.Y.At
	nx, ny := len(xs), len(ys)
	s.beside = make([]int64, nx*ny)
	for i := nx - 1; i >= 0; i-- {
		for j := ny - 1; j >= 0; j-- {
			best := s.beside[i*ny+j]
			if i+1 < nx {
				best = max(best, s.beside[(i+1)*ny+j])
			}
			if j+1 < ny {
				best = max(best, s.beside[i*ny+j+1])
			}
			s.beside[i*ny+j] = best
			for b := 1; b < i && xs[b] < xs[i]; b++ {
				to := &s.beside[s.table.X.Below(xs[i]-xs[b])*ny+j]
				*to = max(*to, best+s.table.Worth(b, j))
			}
			for b := 1; b < j; b++ {
				to := &s.beside[i*ny+s.table.Y.Below(ys[j]-ys[b])]
				*to = max(*to, best+s.table.Worth(i, b))
			}
		}
	}
}

// need is the least guide that a filling of a rectangle must have to lead to
// more than what is known.
func (s *search) need(at int) int64 {
	return (s.floor+s.q.Step)*s.q.Scale - s.q.Limits - s.beside[at]
}

// note notes a filling that is worth more than what is known.
func (s *search) note(f int32) {
	if v := s.fillings[f].value; v > s.floor {
		s.floor, s.best = v, f
	}
}

// run fills all rectangles; it returns false if the meter ended.
func (s *search) run() bool {
	nx, ny := len(s.table.X.At), len(s.table.Y.At)
	for i := 1; i < nx; i++ {
		for j := 1; j < ny; j++ {
			s.fill(i, j)
			if !s.meter.Take(s.steps) || len(s.fillings) > mostFillings {
				return false
			}
			s.steps = 0
		}
	}
	return true
}

// fill makes the list of rectangle i, j.
func (s *search) fill(i, j int) {
	xs, ys := s.table.X.At, s.table.Y.At
	ny := len(ys)
	at := i*ny + j
	s.present = list{ids: s.present.ids[:0], need: s.need(at)}
	s.steps += 8
	if s.table.Worth(i, j) < s.present.need {
		return
	}
	s.inherit(s.lists[at-ny])
	s.inherit(s.lists[at-1])
	for _, f := range s.first[[2]int{i, j}] {
		s.inherit([]int32{f})
	}
	s.steps += int64(i+j) / 2
	for a := 1; a < i && 2*xs[a] <= xs[i]; a++ {
		b := s.table.X.Below(xs[i] - xs[a])
		s.join(s.lists[a*ny+j], s.lists[b*ny+j], problem.Crosscut, xs[a])
	}
	for a := 1; a < j && 2*ys[a] <= ys[j]; a++ {
		b := s.table.Y.Below(ys[j] - ys[a])
		s.join(s.lists[i*ny+a], s.lists[i*ny+b], problem.Rip, ys[a])
	}
	s.lists[at] = slices.Clone(s.present.ids)
}

// inherit takes over fillings of a smaller rectangle.
func (s *search) inherit(ids []int32) {
	for _, f := range ids {
		s.steps += 4
		guide := s.fillings[f].guide
		if guide < s.present.need {
			return
		}
		i := s.place(guide)
		if !s.holds(i, guide, func(g int32) bool { return g == f || s.fillings[g].hash == s.fillings[f].hash && s.equal(g, f) }) {
			s.insert(i, f)
		}
	}
}

// place returns where a filling with this guide goes: after those with the same.
func (s *search) place(guide int64) int {
	ids := s.present.ids
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
func (s *search) holds(i int, guide int64, alike func(int32) bool) bool {
	for i--; i >= 0 && s.fillings[s.present.ids[i]].guide == guide; i-- {
		if s.steps++; alike(s.present.ids[i]) {
			return true
		}
	}
	return false
}

// insert puts a filling at place i, and drops the last if there are too many.
func (s *search) insert(i int, f int32) {
	p := &s.present
	if p.ids = slices.Insert(p.ids, i, f); len(p.ids) >= s.length {
		p.ids, s.full = p.ids[:s.length], true
		p.need = s.fillings[p.ids[s.length-1]].guide + 1
	}
	s.steps += 10
}

// join offers all fillings of two rectangles side by side.
func (s *search) join(as, bs []int32, cut problem.Direction, at int64) {
	if len(as) == 0 || len(bs) == 0 {
		return
	}
	most := s.fillings[bs[0]].guide
	for _, a := range as {
		fa := &s.fillings[a]
		if fa.guide+most < s.present.need {
			return
		}
		for _, b := range bs {
			fb := &s.fillings[b]
			guide := fa.guide + fb.guide
			if guide < s.present.need {
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
			s.keep(i, filling{guide: guide, value: fa.value + fb.value, hash: hash, a: a, b: b, at: int32(at), cut: cut})
			fa = &s.fillings[a]
		}
	}
}

// keep adds a new filling at place i of the present list.
func (s *search) keep(i int, f filling) {
	id := s.add(f)
	s.insert(i, id)
	if f.value > s.floor {
		s.note(id)
	}
}
