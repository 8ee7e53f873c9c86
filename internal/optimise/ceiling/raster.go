package ceiling

import (
	"slices"

	"scantling/internal/optimise/problem"
	"scantling/internal/optimise/work"
)

// Raster is a table of what rectangles can be worth at most with guillotine cuts
// in any number of stages and any number of copies: a recursion over the
// rectangles whose sides are points of the axes (Beasley, "Algorithms for
// unconstrained two-dimensional guillotine cutting", Journal of the Operational
// Research Society 36, 1985).
type Raster struct {
	X, Y  Points
	Large bool // the meter alone bounds the steps

	x, y   int64
	pieces []Piece
	value  []int64
	worth  []int64 // by point of X and Y
}

// MostUnits bounds the length of an axis that is looked at unit by unit.
const MostUnits = 1 << 14

// mostRaster bounds the steps of one recursion among many.
const mostRaster = 250_000_000

// Build fills the table for a sheet of x by y, or returns false if it would be
// too large or the meter ends. Of pieces, those count that have a value and are
// left.
func (r *Raster) Build(x, y int64, pieces []Piece, value []int64, left []int, meter *work.Meter) bool {
	if x > MostUnits || y > MostUnits {
		return false
	}
	r.x, r.y, r.value = x, y, value
	r.pieces = Fits(r.pieces[:0], pieces, x, y, value, left)
	r.X, r.Y = XPoints(x, r.pieces, left), YPoints(y, r.pieces, left)
	nx, ny := int64(len(r.X.At)), int64(len(r.Y.At))
	steps := nx * ny * (nx + ny) / 4
	if steps > mostRaster && !r.Large || !meter.Take(steps+nx*ny*int64(len(r.pieces))/8+x+y) {
		return false
	}
	r.fill()
	return true
}

func (r *Raster) fill() {
	xs, ys := r.X.At, r.Y.At
	nx, ny := len(xs), len(ys)
	r.worth = slices.Grow(r.worth[:0], nx*ny)[:nx*ny]
	clear(r.worth)
	for _, l := range r.pieces {
		i, j := r.X.Above(l.X), r.Y.Above(l.Y)
		if i < nx && j < ny {
			r.worth[i*ny+j] = max(r.worth[i*ny+j], r.value[l.Kind])
		}
	}
	for i := 1; i < nx; i++ {
		row := r.worth[i*ny : (i+1)*ny]
		prev := r.worth[(i-1)*ny : i*ny]
		for j := 1; j < ny; j++ {
			row[j] = max(row[j], prev[j], row[j-1])
		}
		x := xs[i]
		for a := 1; a < nx && 2*xs[a] <= x; a++ {
			near := r.worth[a*ny : (a+1)*ny]
			b := r.X.Below(x - xs[a])
			far := r.worth[b*ny : (b+1)*ny]
			for j := range row {
				row[j] = max(row[j], near[j]+far[j])
			}
		}
		for j := 1; j < ny; j++ {
			y := ys[j]
			best := max(row[j], row[j-1])
			for a := 1; a < j && 2*ys[a] <= y; a++ {
				best = max(best, row[a]+row[r.Y.Below(y-ys[a])])
			}
			row[j] = best
		}
	}
}

// Top returns the ceiling of the whole sheet.
func (r *Raster) Top() int64 { return r.worth[len(r.worth)-1] }

// Worth returns the ceiling of the rectangle of the i-th point of X and the j-th
// of Y.
func (r *Raster) Worth(i, j int) int64 { return r.worth[i*len(r.Y.At)+j] }

// Filling returns one that reaches the ceiling, less the copies of a kind beyond
// what is left; nil if it is empty.
func (r *Raster) Filling(left []int) *Parcel {
	return r.trace(len(r.X.At)-1, len(r.Y.At)-1, r.x, r.y, slices.Clone(left))
}

// trace finds how the worth of points i, j comes about.
func (r *Raster) trace(i, j int, x, y int64, left []int) *Parcel {
	xs, ys, ny := r.X.At, r.Y.At, len(r.Y.At)
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
	p := &Parcel{X: x, Y: y}
	for _, l := range r.pieces {
		if r.value[l.Kind] == v && l.X <= xs[i] && l.Y <= ys[j] && left[l.Kind] > 0 {
			left[l.Kind]--
			p.Piece = &l
			return p
		}
	}
	for a := 1; a < i; a++ {
		b := r.X.Below(xs[i] - xs[a])
		if r.worth[a*ny+j]+r.worth[b*ny+j] == v {
			p.Cut, p.At = problem.Crosscut, xs[a]
			p.Parts = [2]*Parcel{r.trace(a, j, xs[a], y, left), r.trace(b, j, x-xs[a], y, left)}
			return p
		}
	}
	for a := 1; a < j; a++ {
		b := r.Y.Below(ys[j] - ys[a])
		if r.worth[i*ny+a]+r.worth[i*ny+b] == v {
			p.Cut, p.At = problem.Rip, ys[a]
			p.Parts = [2]*Parcel{r.trace(i, a, x, ys[a], left), r.trace(i, b, x, y-ys[a], left)}
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
