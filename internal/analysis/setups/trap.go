package setups

import "scantling/internal/unit"

// void is wood that is gone, seen from the fence: a stretch of the distance from
// the fence and its depth.
type void struct{ from, to, depth unit.Length }

// trapped reports whether a pass of the cutter over the stretch from a to b of
// the distance from the fence, depth deep, in work of that width would be a
// trapped cut: wood stands on the fence side of the cutter and none on the
// operator's. The cutter's rim then runs the way the work is fed and snatches
// it. Both walls standing (a groove in the solid) or only the operator's (a
// groove being widened away from the fence, a rebate at the fence) is sound.
func trapped(voids []void, a, b, depth, width unit.Length) bool {
	inner := a > 0 && !gone(voids, a, depth, true)
	outer := b < width && !gone(voids, b, depth, false)
	return inner && !outer
}

// gone reports whether, at that depth, there is no wood just below x (towards
// the fence) or just above it.
func gone(voids []void, x, depth unit.Length, below bool) bool {
	for _, v := range voids {
		if v.depth < depth {
			continue
		}
		if below && v.from < x && x <= v.to || !below && v.from <= x && x < v.to {
			return true
		}
	}
	return false
}

// mirrored returns the voids as they lie when the work is turned end for end.
func mirrored(voids []void, width unit.Length) []void {
	out := make([]void, len(voids))
	for i, v := range voids {
		out[i] = void{width - v.to, width - v.from, v.depth}
	}
	return out
}
