package coarse

import "math"

// measure works out the rooms of a scale. For every sum of new sizes up to top
// it finds the least and the greatest true length of a row that comes to it. The
// loose room is the greatest sum whose least length fits, the tight one is just
// below the least sum whose greatest length does not. Top must not be below any
// sum whose least length fits.
func (a *axis) measure(s *Scale, top int64) bool {
	least, greatest := make([]int64, top+1), make([]int64, top+1)
	for i := range least {
		least[i], greatest[i] = math.MaxInt64, -1
	}
	least[0], greatest[0] = 0, 0
	for i, side := range a.sides {
		copies := min(int64(side.Copies), a.room/side.Size+1)
		for n := int64(1); copies > 0; n *= 2 {
			n = min(n, copies)
			copies -= n
			if !a.meter.Take(top) {
				return false
			}
			add(least, greatest, n*s.To[i], n*side.Size)
		}
	}
	s.Loose, s.Tight = nil, nil
	for _, room := range a.rooms {
		loose, tight := int64(0), top
		for sum := range top + 1 {
			if least[sum] <= room {
				loose = sum
			}
			if greatest[sum] > room {
				tight = min(tight, sum-1)
			}
		}
		s.Loose, s.Tight = append(s.Loose, loose), append(s.Tight, min(loose, tight))
	}
	return true
}

// add lets rows have so much more.
func add(least, greatest []int64, to, size int64) {
	for sum := int64(len(least)) - 1; sum >= to; sum-- {
		if g := greatest[sum-to]; g >= 0 {
			least[sum] = min(least[sum], least[sum-to]+size)
			greatest[sum] = max(greatest[sum], g+size)
		}
	}
}
