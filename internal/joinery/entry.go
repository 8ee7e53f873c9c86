package joinery

import (
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// enter checks how deep A goes into B and returns the entry axis and whether A
// comes from the high side. It reports what is wrong and returns false.
func (w *work) enter(j *joint) (axis piece.Axis, fromHigh, ok bool) {
	axis, sign := j.meets.entry.Axis()
	b := box(j.partB.Extent)
	overlap := j.meets.region.size(axis)
	switch {
	case j.Depth.Nm > b.size(axis):
		w.fail(j, tooDeep(j, j.Depth.Nm, b.size(axis)))
	case j.Depth.Nm != 0 && j.Depth.Nm != overlap:
		w.fail(j, depthDiffers(j, overlap))
	}
	return axis, sign < 0, !j.failed
}

// grow returns the box with one limit moved outwards by a clearance, but not
// beyond the body.
func (w *work) grow(j *joint, b, body box, a piece.Axis, high bool, by piece.Figure) box {
	at := b.end(a, high)
	limit := body.end(a, high)
	if by.Nm <= 0 || at.Nm == limit.Nm {
		return b
	}
	name := string(j.Address) + ".clearance"
	var moved piece.Figure
	if high {
		moved = w.ledger.Sum(name, at, by)
		if moved.Nm > limit.Nm {
			moved = limit
		}
	} else {
		moved = w.ledger.Less(name, at, by)
		if moved.Nm < limit.Nm {
			moved = limit
		}
	}
	return b.with(a, high, moved)
}

// stops shortens the overlap to where a stopped cut ends and returns it with the
// overlaps beyond its ends, low and high, where A is notched and B kept. An end
// that A does not reach needs no notch.
func (w *work) stops(j *joint) (main box, beyond [2]box, has [2]bool, ok bool) {
	run := j.meets.run
	main = j.meets.region
	b := box(j.partB.Extent)
	for k, stop := range [2]piece.Figure{j.StopLow, j.StopHigh} {
		if stop.Nm <= 0 {
			continue
		}
		high := k == 1
		var at piece.Figure
		if high {
			at = w.ledger.Less(string(j.Address)+".end", b[run].High, stop)
		} else {
			at = w.ledger.Sum(string(j.Address)+".start", b[run].Low, stop)
		}
		if inside(main, run, at.Nm) {
			beyond[k], has[k] = main.with(run, !high, at), true
			main = main.with(run, high, at)
		} else if covers := (at.Nm >= main[run].High.Nm) != high; covers {
			w.fail(j, fault{CodeStops, "joint.stops-leave-nothing", append(pairArgs(j.Joint), message.Length("stop", stop.Nm), message.Length("run", main.size(run)))})
			return main, beyond, has, false
		}
	}
	return main, beyond, has, true
}

func inside(b box, a piece.Axis, at unit.Length) bool {
	return at > b[a].Low.Nm && at < b[a].High.Nm
}
