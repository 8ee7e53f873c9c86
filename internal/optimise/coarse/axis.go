package coarse

import (
	"cmp"
	"slices"

	"scantling/internal/optimise/work"
)

// Side is a size that pieces may have along the axis.
type Side struct {
	Size   int64 // from 1 up; no two sides of one axis have the same
	Copies int   // how many may lie in a row, at most
}

// Scale is what the sizes along an axis become.
type Scale struct {
	To    []int64 // by side, from 1 up; a longer side never becomes a shorter one
	Loose []int64 // by room: every row that truly fits, fits
	Tight []int64 // by room: every row that fits, truly fits; at most Loose
}

// Same says that just those rows fit that truly fit.
func (s Scale) Same() bool { return slices.Equal(s.Loose, s.Tight) }

// Lost returns the greatest difference between the loose and the tight room, as
// a share of the room, in parts of a million.
func (s Scale) Lost() int64 {
	lost := int64(0)
	for i, l := range s.Loose {
		lost = max(lost, (l-s.Tight[i])*1_000_000/max(l, 1))
	}
	return lost
}

// As returns the scale that leaves everything as it is.
func As(sides []Side, rooms []int64) Scale {
	s := Scale{Loose: rooms, Tight: rooms}
	for _, side := range sides {
		s.To = append(s.To, side.Size)
	}
	return s
}

// The greatest room becomes a number in one of these bands. The first of them in
// which just those rows fit that truly fit is taken; where there is none, the
// scale in the band named by fallback that loses least.
const (
	firstBand  = 1 << 6
	fallback   = 1 << 12
	candidates = 3 // greatest rooms that are tried in each band
)

// Axis returns a scale in which the greatest room is below most, or false if the
// meter ends first or no scale was found. With apart set, sides
// of different sizes stay different.
func Axis(sides []Side, rooms []int64, most int64, apart bool, meter *work.Meter) (Scale, bool) {
	if len(rooms) == 0 || slices.Min(rooms) < 1 {
		return Scale{}, false
	}
	a := axis{sides: sides, rooms: rooms, room: slices.Max(rooms), most: most, apart: apart, meter: meter}
	var best Scale
	found := false
	for band := int64(firstBand); 2*band <= most; band *= 2 {
		if band > fallback && found && a.hopeless(best) {
			break
		}
		for _, n := range a.promising(band, min(2*band, most)) {
			for _, up := range []bool{true, false} {
				s, ok := a.scale(n, up)
				if meter.Ended() {
					return best, found
				}
				if ok && s.Same() {
					return s, true
				}
				if ok && band <= fallback && (!found || s.Lost() < best.Lost()) {
					best, found = s, true
				}
			}
		}
	}
	return best, found
}

// hopeless says that a scale is so far from losing nothing that four times as
// many units will hardly do.
func (a *axis) hopeless(s Scale) bool {
	for i, l := range s.Loose {
		if l-s.Tight[i] > 2 {
			return true
		}
	}
	return false
}

// axis is a search for a scale.
type axis struct {
	sides []Side
	rooms []int64
	room  int64 // the greatest
	most  int64
	apart bool
	meter *work.Meter
}

// promising lists numbers for the greatest room, in a band, at which the sides
// come closest to whole numbers: a side counts by how much it is off at most in
// a row of its kind.
func (a *axis) promising(from, to int64) []int64 {
	type candidate struct{ n, off int64 }
	var list []candidate
	if !a.meter.Take((to - from) * int64(len(a.sides))) {
		return nil
	}
	for n := from; n < to; n++ {
		off := int64(0)
		for _, s := range a.sides {
			whole := (2*s.Size*n + a.room) / (2 * a.room)
			d := whole*a.room - s.Size*n
			off = max(off, max(d, -d)*min(int64(s.Copies), a.room/s.Size))
		}
		list = append(list, candidate{n, off})
	}
	slices.SortStableFunc(list, func(x, y candidate) int { return cmp.Compare(x.off, y.off) })
	var out []int64
	for _, c := range list[:min(candidates, len(list))] {
		out = append(out, c.n)
	}
	return out
}

// scale returns the scale at which the greatest room is about n, sides rounded
// up or to the nearest; false if it will not do.
func (a *axis) scale(n int64, up bool) (Scale, bool) {
	var s Scale
	for _, side := range a.sides {
		to := (2*side.Size*n + a.room) / (2 * a.room)
		if up {
			to = (side.Size*n + a.room - 1) / a.room
		}
		to = max(to, 1)
		s.To = append(s.To, to)
	}
	top := n + a.over(s.To, n)
	if a.apart && !kept(s.To) || top >= a.most {
		return s, false
	}
	return s, a.measure(&s, top)
}

// over returns what a row that truly fits may be longer than n in the new sizes:
// no more than all sides are together, and no more than a row would be of the
// side alone that is longest for its size.
func (a *axis) over(to []int64, n int64) int64 {
	all, one := int64(0), int64(0)
	for i, side := range a.sides {
		d := to[i]*a.room - side.Size*n // less than a.room and twice side.Size*n, or below zero
		if d <= 0 || side.Size > a.room {
			continue
		}
		all += d*min(int64(side.Copies), 1<<20)/a.room + 1
		if side.Copies > 1<<20 {
			all += a.most
		}
		one = max(one, d/side.Size+1)
	}
	return min(all, one)
}

// kept says whether sides of different sizes are still different.
func kept(to []int64) bool {
	to = slices.Clone(to)
	slices.Sort(to)
	return len(slices.Compact(to)) == len(to)
}
