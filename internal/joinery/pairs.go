package joinery

import (
	"cmp"
	"slices"
)

// MaxSteps bounds the work of Lower, counted in looks at two boxes at once. What
// goes beyond it is reported and left as it stands.
const MaxSteps = 100_000_000

// steps counts looks at boxes.
type steps struct{ left int }

// take reports whether n more looks may be taken.
func (s *steps) take(n int) bool {
	s.left -= n
	return s.left >= 0
}

// pairsOf returns the pairs of boxes for which near holds, as indices, the lesser
// first, in order. near must not hold for boxes that are apart along an axis. It
// stops where the steps run out.
func pairsOf(boxes []box, s *steps, near func(a, b box) bool) [][2]int {
	if len(boxes) < 2 {
		return nil
	}
	whole := boxes[0]
	for _, b := range boxes[1:] {
		for i := range whole {
			if b[i].Low.Nm < whole[i].Low.Nm {
				whole[i].Low = b[i].Low
			}
			if b[i].High.Nm > whole[i].High.Nm {
				whole[i].High = b[i].High
			}
		}
	}
	along := axes[0]
	for _, a := range axes[1:] {
		if whole.size(a) > whole.size(along) {
			along = a
		}
	}
	order := make([]int, len(boxes))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(i, j int) int {
		return cmp.Compare(boxes[i][along].Low.Nm, boxes[j][along].Low.Nm)
	})
	var out [][2]int
	for k, i := range order {
		for _, j := range order[k+1:] {
			if boxes[j][along].Low.Nm > boxes[i][along].High.Nm {
				break
			}
			if !s.take(1) {
				return nil
			}
			if near(boxes[i], boxes[j]) {
				out = append(out, [2]int{min(i, j), max(i, j)})
			}
		}
	}
	slices.SortFunc(out, func(a, b [2]int) int {
		return cmp.Or(cmp.Compare(a[0], b[0]), cmp.Compare(a[1], b[1]))
	})
	return out
}
