package ceiling

// Points are the lengths along one axis that matter: no filling is lost when
// every rectangle is one of them long.
type Points struct {
	At    []int64 // rising, from zero
	below []int32 // by length: the index of the largest point not above it
}

// Below returns the index of the largest point that is not above size.
func (p *Points) Below(size int64) int { return int(p.below[size]) }

// Above returns the index of the least point that is not below size.
func (p *Points) Above(size int64) int {
	i := p.Below(size)
	if p.At[i] < size {
		i++
	}
	return i
}

// XPoints and YPoints list the points of an axis: either the sums of sides of
// pieces, each as often as it is left, or, where they are fewer, the raster
// points, which leave out sums that leave no more room for others than the next
// (Terno, Lindemann and Scheithauer, "Zuschnittprobleme und ihre praktische
// Lösung", Leipzig 1987; proved for sums of any number of copies only).
func XPoints(size int64, pieces []Piece, left []int) Points {
	return points(size, pieces, left, func(p Piece) int64 { return p.X })
}

// YPoints is as [XPoints], for the other axis.
func YPoints(size int64, pieces []Piece, left []int) Points {
	return points(size, pieces, left, func(p Piece) int64 { return p.Y })
}

func points(size int64, pieces []Piece, left []int, side func(Piece) int64) Points {
	limited := sums(size, pieces, left, side)
	free := sums(size, pieces, nil, side)
	raster := make([]bool, size+1)
	last := int64(0) // the largest sum not above what is looked at
	floor := make([]int64, size+1)
	for x := range free {
		if free[x] {
			last = int64(x)
		}
		floor[x] = last
	}
	for x, ok := range free {
		if ok {
			raster[floor[size-int64(x)]] = true
		}
	}
	a, b := listed(limited), listed(raster)
	if len(b.At) < len(a.At) {
		return b
	}
	return a
}

// sums says which lengths are sums of sides, each piece as often as it is left;
// without left, any number of times.
func sums(size int64, pieces []Piece, left []int, side func(Piece) int64) []bool {
	reach := make([]bool, size+1)
	reach[0] = true
	used := make([]int32, size+1)
	for _, l := range pieces {
		s := side(l)
		if left == nil {
			for x := s; x <= size; x++ {
				reach[x] = reach[x] || reach[x-s]
			}
			continue
		}
		clear(used)
		for x := s; x <= size; x++ {
			if !reach[x] && reach[x-s] && int(used[x-s]) < left[l.Kind] {
				reach[x], used[x] = true, used[x-s]+1
			}
		}
	}
	return reach
}

func listed(reach []bool) Points {
	p := Points{below: make([]int32, len(reach))}
	for x := range reach {
		if reach[x] {
			p.At = append(p.At, int64(x))
		}
		p.below[x] = int32(len(p.At) - 1)
	}
	return p
}
