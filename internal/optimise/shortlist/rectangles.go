package shortlist

import (
	"slices"

	"scantling/internal/optimise/ceiling"
	"scantling/internal/optimise/work"
)

// rectangles is a run over all rectangles, for any number of stages.
type rectangles struct {
	lister
	table  ceiling.Raster
	beside []int64 // by rectangle: what may be gained beside it at most
	lists  [][]int32
	first  map[[2]int][]int32 // pieces by the rectangle that holds them first
}

// mostRectangles bounds the rectangles of one run.
const mostRectangles = 1 << 18

func newRectangles(q Question, length int, meter *work.Meter) *rectangles {
	s := &rectangles{lister: newLister(q, length, meter), first: map[[2]int][]int32{}}
	s.table.Large = true
	if !s.table.Build(q.X, q.Y, q.Pieces, s.q.Guide, q.Left, meter) {
		return nil
	}
	nx, ny := len(s.table.X.At), len(s.table.Y.At)
	if nx*ny > mostRectangles || !meter.Take(int64(nx)*int64(ny)*int64(nx+ny)) {
		return nil
	}
	s.lists = make([][]int32, nx*ny)
	s.lookBeside()
	s.begin()
	for i, l := range s.pieces {
		at := [2]int{s.table.X.Above(l.X), s.table.Y.Above(l.Y)}
		s.first[at] = append(s.first[at], int32(i))
	}
	return s
}

// lookBeside works out what may be gained beside each rectangle.
func (s *rectangles) lookBeside() {
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

// run fills all rectangles; it returns false if the meter ended.
func (s *rectangles) run() bool {
	nx, ny := len(s.table.X.At), len(s.table.Y.At)
	for i := 1; i < nx; i++ {
		for j := 1; j < ny; j++ {
			s.fill(i, j)
			if !s.paid() {
				return false
			}
		}
	}
	return true
}

// fill makes the list of rectangle i, j.
func (s *rectangles) fill(i, j int) {
	xs, ys := s.table.X.At, s.table.Y.At
	ny := len(ys)
	at := i*ny + j
	if !s.start(s.beside[at], s.table.Worth(i, j)) {
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
		s.join(s.lists[a*ny+j], s.lists[b*ny+j], across, xs[a])
	}
	for a := 1; a < j && 2*ys[a] <= ys[j]; a++ {
		b := s.table.Y.Below(ys[j] - ys[a])
		s.join(s.lists[i*ny+a], s.lists[i*ny+b], along, ys[a])
	}
	s.lists[at] = slices.Clone(s.present)
}
