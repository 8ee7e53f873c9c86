package sheets

import (
	"slices"

	"scantling/internal/optimise/cover"
	"scantling/internal/optimise/problem"
	"scantling/internal/optimise/sawing"
	"scantling/internal/optimise/work"
)

// raster works out what a sheet can be worth at most with guillotine cuts in any
// number of stages and any number of copies: a recursion over the rectangles
// whose sides are sums of sides of pieces (Beasley, "Algorithms for
// unconstrained two-dimensional guillotine cutting", Journal of the Operational
// Research Society 36, 1985).
type raster struct {
	m      *model
	lying  []lying
	value  []int64
	xs, ys []int64
	below  [2][]int32 // by length: the index of the largest point not above it
	worth  []int64    // by point of xs and ys
	large  bool       // the meter alone bounds the steps
}

// mostRaster bounds the steps of one recursion among many.
const mostRaster = 250_000_000

// build fills the table for stock i, or returns false if it would be too large
// or the meter ends.
func (r *raster) build(m *model, i int, value []int64, left []int, meter *work.Meter) bool {
	t := &m.stock[i]
	if t.x > mostUnits || t.y > mostUnits {
		return false
	}
	r.m, r.value = m, value
	r.lying = r.lying[:0]
	for _, l := range m.order(largest) {
		if value[l.kind] > 0 && left[l.kind] > 0 && l.x <= t.x && l.y <= t.y {
			r.lying = append(r.lying, l)
		}
	}
	r.xs, r.below[0] = points(t.x, r.lying, left, func(l lying) int64 { return l.x })
	r.ys, r.below[1] = points(t.y, r.lying, left, func(l lying) int64 { return l.y })
	nx, ny := int64(len(r.xs)), int64(len(r.ys))
	steps := nx * ny * (nx + ny) / 4
	if steps > mostRaster && !r.large || !meter.Take(steps+nx*ny*int64(len(r.lying))/8+t.x+t.y) {
		return false
	}
	r.fill()
	return true
}

// points lists the sums of sides of pieces up to size, each piece as often as it
// is left, and zero.
func points(size int64, pieces []lying, left []int, side func(lying) int64) ([]int64, []int32) {
	reach := make([]bool, size+1)
	reach[0] = true
	used := make([]int32, size+1)
	for _, l := range pieces {
		s := side(l)
		clear(used)
		for x := s; x <= size; x++ {
			if !reach[x] && reach[x-s] && int(used[x-s]) < left[l.kind] {
				reach[x], used[x] = true, used[x-s]+1
			}
		}
	}
	var list []int64
	below := make([]int32, size+1)
	for x := range reach {
		if reach[x] {
			list = append(list, int64(x))
		}
		below[x] = int32(len(list) - 1)
	}
	return list, below
}

func (r *raster) fill() {
	nx, ny := len(r.xs), len(r.ys)
	r.worth = slices.Grow(r.worth[:0], nx*ny)[:nx*ny]
	clear(r.worth)
	for _, l := range r.lying {
		i, j := r.below[0][l.x], r.below[1][l.y]
		at := int(i)*ny + int(j)
		r.worth[at] = max(r.worth[at], r.value[l.kind])
	}
	for i := 1; i < nx; i++ {
		row := r.worth[i*ny : (i+1)*ny]
		prev := r.worth[(i-1)*ny : i*ny]
		for j := 1; j < ny; j++ {
			row[j] = max(row[j], prev[j], row[j-1])
		}
		x := r.xs[i]
		for a := 1; a < nx && 2*r.xs[a] <= x; a++ {
			near := r.worth[a*ny : (a+1)*ny]
			b := int(r.below[0][x-r.xs[a]])
			far := r.worth[b*ny : (b+1)*ny]
			for j := range row {
				row[j] = max(row[j], near[j]+far[j])
			}
		}
		for j := 1; j < ny; j++ {
			y := r.ys[j]
			best := max(row[j], row[j-1])
			for a := 1; a < j && 2*r.ys[a] <= y; a++ {
				best = max(best, row[a]+row[r.below[1][y-r.ys[a]]])
			}
			row[j] = best
		}
	}
}

// top returns the ceiling of the whole sheet.
func (r *raster) top() int64 { return r.worth[len(r.worth)-1] }

// parcel is a rectangle that is cut in two, or holds one piece at its corner.
type parcel struct {
	x, y  int64
	cut   problem.Direction // of the model; Any: not cut
	at    int64
	parts [2]*parcel
	piece *item
}

// parcels is the filling of a sheet with parcels.
type parcels struct {
	m    *model
	root *parcel
}

// pattern returns a filling that reaches the ceiling, less the copies of a kind
// beyond what is left.
func (r *raster) pattern(i int, left []int) *cover.Pattern {
	t := &r.m.stock[i]
	root := r.trace(len(r.xs)-1, len(r.ys)-1, t.x, t.y, slices.Clone(left))
	if root == nil {
		return nil
	}
	p := r.m.parcelled(i, root)
	if len(p.Use) == 0 {
		return nil
	}
	return r.m.feedable(p)
}

func (m *model) parcelled(stock int, root *parcel) *cover.Pattern {
	var entries []cover.Entry
	root.walk(func(p *parcel) {
		if p.piece != nil {
			entries = append(entries, cover.Entry{Kind: p.piece.kind, N: 1})
		}
	})
	return cover.NewPattern(stock, entries, &parcels{m, root})
}

func (p *parcel) walk(visit func(*parcel)) {
	if p == nil {
		return
	}
	visit(p)
	p.parts[0].walk(visit)
	p.parts[1].walk(visit)
}

// trace finds how the worth of points i, j comes about.
func (r *raster) trace(i, j int, x, y int64, left []int) *parcel {
	ny := len(r.ys)
	v := r.worth[i*ny+j]
	if v == 0 {
		return nil
	}
	for i > 0 && r.worth[(i-1)*ny+j] == v {
		i--
	}
	for j > 0 && r.worth[i*ny+j-1] == v {
		j--
	}
	p := &parcel{x: x, y: y}
	for _, l := range r.lying {
		if r.value[l.kind] == v && l.x <= r.xs[i] && l.y <= r.ys[j] {
			if left[l.kind] == 0 {
				continue
			}
			left[l.kind]--
			p.piece = &item{kind: l.kind, turned: l.turned, x: l.x, y: l.y}
			return p
		}
	}
	for a := 1; a < i; a++ {
		b := int(r.below[0][r.xs[i]-r.xs[a]])
		if r.worth[a*ny+j]+r.worth[b*ny+j] == v {
			p.cut, p.at = problem.Crosscut, r.xs[a]
			p.parts[0] = r.trace(a, j, r.xs[a], y, left)
			p.parts[1] = r.trace(b, j, x-r.xs[a], y, left)
			return p
		}
	}
	for a := 1; a < j; a++ {
		b := int(r.below[1][r.ys[j]-r.ys[a]])
		if r.worth[i*ny+a]+r.worth[i*ny+b] == v {
			p.cut, p.at = problem.Rip, r.ys[a]
			p.parts[0] = r.trace(i, a, x, r.ys[a], left)
			p.parts[1] = r.trace(i, b, x, y-r.ys[a], left)
			return p
		}
	}
	// Only where a piece is not left any more: what else goes in here?
	if i > 0 && (j == 0 || r.worth[(i-1)*ny+j] >= r.worth[i*ny+j-1]) {
		return r.trace(i-1, j, x, y, left)
	}
	if j > 0 {
		return r.trace(i, j-1, x, y, left)
	}
	return nil
}

func (f *parcels) block(_ int, pick picks, _ bool) *sawing.Block {
	return f.m.parcelBlock(f.root, pick)
}

func (m *model) parcelBlock(p *parcel, pick picks) *sawing.Block {
	if p == nil {
		return nil
	}
	if p.cut == problem.Any {
		if p.piece == nil {
			return nil
		}
		src := pick(p.piece.kind)
		return m.within(m.part(src.part, m.turned(src.part, *p.piece), p.piece.x, p.piece.y), p.x, p.y)
	}
	var kids []sawing.Kid
	if b := m.parcelBlock(p.parts[0], pick); b != nil {
		kids = append(kids, sawing.Kid{At: 0, Block: b})
	}
	if b := m.parcelBlock(p.parts[1], pick); b != nil {
		kids = append(kids, sawing.Kid{At: p.at, Block: b})
	}
	if kids == nil {
		return nil
	}
	return m.sized(p.x, p.y, p.cut, kids)
}

// without leaves out the piece that is worth least.
func (f *parcels) without(stock int) *cover.Pattern {
	var worst *parcel
	f.root.walk(func(p *parcel) {
		if p.piece != nil && (worst == nil || f.m.kinds[p.piece.kind].value < f.m.kinds[worst.piece.kind].value) {
			worst = p
		}
	})
	if worst == nil {
		return nil
	}
	root := f.root.less(worst)
	if root == nil {
		return nil
	}
	return f.m.parcelled(stock, root)
}

// less returns a copy of p without parcel q.
func (p *parcel) less(q *parcel) *parcel {
	if p == nil || p == q {
		return nil
	}
	c := *p
	c.parts = [2]*parcel{p.parts[0].less(q), p.parts[1].less(q)}
	if c.cut != problem.Any && c.parts[0] == nil && c.parts[1] == nil {
		return nil
	}
	return &c
}
