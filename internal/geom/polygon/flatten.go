package polygon

import "math"

// Flat is a loop of chords. Segment[i] is the number, through the profile, of
// the segment that the chord from Points[i] to the next point belongs to.
type Flat struct {
	Points  []P2
	Segment []int32
}

// Area returns the signed area within the chords.
func (f Flat) Area() float64 {
	var a float64
	for i, p := range f.Points {
		q := f.Points[(i+1)%len(f.Points)]
		a += float64(p.Sub(f.Points[0]).Cross(q.Sub(f.Points[0])) / 2)
	}
	return a
}

// Facets returns the number of facets to a half circle of the given radius:
// perHalf, doubled until they stand off the arc by no more than 0.8/perHalf mm.
// Circles of one radius get one number, and larger numbers keep the angles of
// smaller ones.
func Facets(radius float64, perHalf int) int {
	n := max(2, min(perHalf, 512))
	limit := 0.8 / float64(n)
	for n < 2048 && radius*(1-math.Cos(math.Pi/float64(2*n))) > limit {
		n *= 2
	}
	return n
}

// Flatten turns arcs into chords, as [Facets] gives for their radius, and
// orients the result: the outer loop anticlockwise, holes clockwise. Segment
// numbers stay those of the profile as given. Vertices lie on the arcs.
func (p Profile) Flatten(perHalf int) []Flat {
	var out []Flat
	base := 0
	for k, l := range p.Loops() {
		f := l.flatten(perHalf, base)
		if (f.Area() < 0) != (k > 0) {
			f.reverse()
		}
		out = append(out, f)
		base += len(l)
	}
	return out
}

func (l Loop) flatten(perHalf, base int) Flat {
	f := Flat{make([]P2, 0, 4*len(l)+2*perHalf), make([]int32, 0, 4*len(l)+2*perHalf)}
	for i, v := range l {
		f.Points = append(f.Points, v.P2)
		f.Segment = append(f.Segment, int32(base+i))
		if a, ok := l.Arc(i); ok {
			for _, angle := range a.breaks(Facets(a.Radius, perHalf)) {
				f.Points = append(f.Points, a.At(angle))
				f.Segment = append(f.Segment, int32(base+i))
			}
		}
	}
	return f
}

// breaks returns the angles strictly inside the arc at which it is broken:
// whole multiples of half a turn over perHalf.
func (a Arc) breaks(perHalf int) []float64 {
	step := math.Pi / float64(perHalf)
	const near = 1e-3 // of a step: no sliver of a facet at the ends
	lo, hi := a.Start, a.Start+a.Sweep
	if a.Sweep < 0 {
		lo, hi = hi, lo
	}
	first, last := math.Ceil(lo/step+near), math.Floor(hi/step-near)
	var out []float64
	for k := first; k <= last; k++ {
		out = append(out, k*step)
	}
	if a.Sweep < 0 {
		for i, j := 0, len(out)-1; i < j; i, j = i+1, j-1 {
			out[i], out[j] = out[j], out[i]
		}
	}
	return out
}

// reverse runs the loop the other way; each chord keeps its segment.
func (f *Flat) reverse() {
	n := len(f.Points)
	points, segs := make([]P2, n), make([]int32, n)
	for i := range n {
		points[i] = f.Points[(n-i)%n]
		segs[i] = f.Segment[n-1-i]
	}
	f.Points, f.Segment = points, segs
}
