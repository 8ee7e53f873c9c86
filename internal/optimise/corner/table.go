package corner

import (
	"slices"

	"scantling/internal/optimise/ceiling"
	"scantling/internal/optimise/work"
)

// table says what rectangles can be worth with any number of copies, each cut along
// a side of a piece.
type table struct {
	x, y     ceiling.Points
	nx, ny   int
	pieces   []ceiling.Piece
	px, py   []int32  // by piece: the points that its sides take
	ws, hs   []int32  // these, each once, rising
	beneath  []uint16 // by height of hs and point of y: the point of what is left
	value    []int32  // by piece
	worth    []int32  // by point of x and y
	alone    []int32
	shift    uint // values are in units of 1 << shift
	perBuild int64
}

// mostCells bounds the rectangles of a table.
const mostCells = 1 << 20

// frame lists the rectangles for the pieces of a question, or returns false if
// there would be too many or nothing fits.
func (t *table) frame(q Question, meter *work.Meter) bool {
	if q.X > ceiling.MostUnits || q.Y > ceiling.MostUnits {
		return false
	}
	t.pieces = ceiling.Fits(t.pieces[:0], q.Pieces, q.X, q.Y, q.Value, q.Left)
	if len(t.pieces) == 0 || !meter.Take(int64(len(t.pieces))*(q.X+q.Y)*3) {
		return false
	}
	t.x, t.y = ceiling.XPoints(q.X, t.pieces, q.Left), ceiling.YPoints(q.Y, t.pieces, q.Left)
	t.nx, t.ny = len(t.x.At), len(t.y.At)
	if t.nx*t.ny > mostCells {
		return false
	}
	t.px, t.py, t.ws, t.hs = t.px[:0], t.py[:0], t.ws[:0], t.hs[:0]
	dense := 0.0
	for _, l := range t.pieces {
		a, b := int32(t.x.Above(l.X)), int32(t.y.Above(l.Y))
		t.px, t.py = append(t.px, a), append(t.py, b)
		t.ws, t.hs = append(t.ws, a), append(t.hs, b)
		dense = max(dense, float64(q.Value[l.Kind])/(float64(l.X)*float64(l.Y)))
	}
	// So that no sum leaves 32 bits.
	for t.shift = 0; float64(q.X)*float64(q.Y)*dense > float64(int64(1)<<(30+t.shift)); t.shift++ {
	}
	slices.Sort(t.ws)
	slices.Sort(t.hs)
	t.ws, t.hs = slices.Compact(t.ws), slices.Compact(t.hs)
	t.perBuild = int64(t.nx) * int64(t.ny) * int64(len(t.ws)+len(t.hs)+2) / 3
	t.beneath = slices.Grow(t.beneath[:0], len(t.hs)*t.ny)[:len(t.hs)*t.ny]
	for n, a := range t.hs {
		for j := int(a); j < t.ny; j++ {
			t.beneath[n*t.ny+j] = uint16(t.y.Below(t.y.At[j] - t.y.At[a]))
		}
	}
	return true
}

// fill works the table out at the given values by kind. Of a kind that is worth
// nothing no piece is placed.
func (t *table) fill(value []int64, meter *work.Meter) bool {
	if !meter.Take(t.perBuild) {
		return false
	}
	nx, ny := t.nx, t.ny
	t.worth = slices.Grow(t.worth[:0], nx*ny)[:nx*ny]
	clear(t.worth)
	t.value = t.value[:0]
	for p, l := range t.pieces {
		v := int32(value[l.Kind] >> t.shift)
		t.value = append(t.value, v)
		at := int(t.px[p])*ny + int(t.py[p])
		t.worth[at] = max(t.worth[at], v)
	}
	t.alone = slices.Grow(t.alone[:0], ny)[:ny]
	for i := 1; i < nx; i++ {
		row := t.worth[i*ny : (i+1)*ny]
		t.across(i, row)
		t.stacked(row)
	}
	return true
}

// across fills a row of rectangles of one width as far as cuts across x go.
func (t *table) across(i int, row []int32) {
	ny := t.ny
	narrower := t.worth[(i-1)*ny : i*ny][:len(row)]
	last := int32(0)
	for j := range row {
		last = max(last, row[j], narrower[j])
		row[j] = last
	}
	for _, a := range t.ws {
		if int(a) >= i {
			break
		}
		b := t.x.Below(t.x.At[i] - t.x.At[a])
		if b == 0 {
			continue
		}
		near := t.worth[int(a)*ny : (int(a)+1)*ny][:len(row)]
		far := t.worth[b*ny : (b+1)*ny][:len(row)]
		for j := range row {
			row[j] = max(row[j], near[j]+far[j])
		}
	}
}

// stacked adds the cuts across y: any number of strips as high as a piece, and one
// of any height.
func (t *table) stacked(row []int32) {
	copy(t.alone, row)
	for n, a := range t.hs {
		v := t.alone[a]
		if v == 0 {
			continue
		}
		rest := t.beneath[n*t.ny : (n+1)*t.ny][:len(row)]
		for j := int(a) + 1; j < len(row); j++ {
			row[j] = max(row[j], v+row[rest[j]])
		}
	}
}

// top returns what the whole sheet can be worth.
func (t *table) top() int64 { return int64(t.worth[len(t.worth)-1]) << t.shift }

// uses counts, by kind, the pieces of a filling worth that much.
func (t *table) uses(used []int) {
	clear(used)
	t.trace(t.nx-1, t.ny-1, used)
}

func (t *table) trace(i, j int, used []int) {
	for more := true; more; {
		v := t.worth[i*t.ny+j]
		if v == 0 {
			return
		}
		for i > 0 && t.worth[(i-1)*t.ny+j] == v {
			i--
		}
		for j > 0 && t.worth[i*t.ny+j-1] == v {
			j--
		}
		if i, j, more = t.part(i, j, v, used); !more {
			return
		}
	}
}

// part counts one part of the rectangle i, j, which is worth v, and returns the
// rest; false if there is none.
func (t *table) part(i, j int, v int32, used []int) (int, int, bool) {
	for p := range t.pieces {
		if int(t.px[p]) <= i && int(t.py[p]) <= j && t.value[p] == v {
			used[t.pieces[p].Kind]++
			return i, j, false
		}
	}
	for p := range t.pieces {
		a, b := int(t.px[p]), int(t.py[p])
		if a < i {
			if r := t.x.Below(t.x.At[i] - t.x.At[a]); t.worth[a*t.ny+j]+t.worth[r*t.ny+j] == v {
				t.trace(a, j, used)
				return r, j, true
			}
		}
		if b < j {
			if r := t.y.Below(t.y.At[j] - t.y.At[b]); t.worth[i*t.ny+b]+t.worth[i*t.ny+r] == v {
				t.trace(i, b, used)
				return i, r, true
			}
		}
	}
	return i, j, false
}
