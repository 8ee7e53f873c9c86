package setups

import (
	"scantling/internal/analysis/operations"
	"scantling/internal/unit"
)

// void is wood that is gone, seen from the fence: a stretch of the distance from
// the fence and its depth.
type void struct{ from, to, depth unit.Length }

// gone is a void with the stretch that it takes along the run.
type gone struct {
	void
	low, high unit.Length
}

// stretch returns where a cut begins and ends along its run.
func stretch(w operations.Way) (low, high unit.Length) {
	low, high = w.From.Nm, w.To.Nm
	if w.StartOpen {
		low = 0
	}
	if w.EndOpen {
		high = w.Work[w.Run].Nm
	}
	return low, high
}

// beside returns the voids that lie beside some of a stretch; what is gone further along
// is not where the cutter turns.
func beside(all []gone, low, high unit.Length) []void {
	var out []void
	for _, g := range all {
		if g.low < high && low < g.high {
			out = append(out, g.void)
		}
	}
	return out
}

// through returns the voids that run through the whole work: beside any other the work
// bears on what stands before and behind it.
func through(all []gone, long unit.Length) []void {
	var out []void
	for _, g := range all {
		if g.low <= 0 && g.high >= long {
			out = append(out, g.void)
		}
	}
	return out
}

// trapped reports whether a pass of the cutter over the stretch from a to b of
// the distance from the fence, depth deep, in work of that width would be a
// trapped cut: wood stands on the fence side of the cutter and none on the
// operator's. The cutter's rim then runs the way the work is fed and snatches
// it. Both walls standing (a groove in the solid) or only the operator's (a
// groove being widened away from the fence, a rebate at the fence) is sound.
func trapped(voids []void, a, b, depth, width unit.Length) bool {
	inner := a > 0 && !open(voids, a, depth, true)
	outer := b < width && !open(voids, b, depth, false)
	return inner && !outer
}

// open reports whether, at that depth, there is no wood just below x (towards
// the fence) or just above it.
func open(voids []void, x, depth unit.Length, below bool) bool {
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

func (v void) mirrored(width unit.Length) void {
	return void{width - v.to, width - v.from, v.depth}
}

// mirrored returns the voids as they lie when the work is turned end for end.
func mirrored(voids []void, width unit.Length) []void {
	out := make([]void, len(voids))
	for i, v := range voids {
		out[i] = v.mirrored(width)
	}
	return out
}
