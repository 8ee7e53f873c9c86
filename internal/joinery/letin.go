package joinery

import "scantling/internal/piece"

// letting says how a joint lets A into B.
type letting struct {
	kind piece.CutKind
	// roomHigh is where clearance across goes: to the high side or the low one.
	roomHigh bool
	// roomAtEnds leaves the clearance of the bottom at the ends of the run too.
	roomAtEnds bool
}

// letIn makes the claims of a joint by which A goes into B: B is cut for A, and
// where the document stops the cut short, A is notched round what B keeps.
func (w *work) letIn(i int, how letting) {
	j := &w.joints[i]
	entry, fromHigh, ok := w.enter(j)
	if !ok {
		return
	}
	main, beyond, notched, ok := w.stops(j)
	if !ok {
		return
	}
	body := box(j.partB.Extent)
	cut := w.grow(j, main, body, entry, !fromHigh, j.ClearDeep)
	cut = w.grow(j, cut, body, j.meets.across, how.roomHigh, j.ClearAcross)
	stopped := [2]bool{j.StopLow.Nm > 0, j.StopHigh.Nm > 0}
	if how.roomAtEnds {
		for k, high := range [2]bool{false, true} {
			if !stopped[k] {
				cut = w.grow(j, cut, body, j.meets.run, high, j.ClearDeep)
			}
		}
	}
	w.add(claim{
		joint: i, loser: j.b, keeper: j.a, cut: cut, kept: main, kind: how.kind,
		open: j.meets.entry.Opposite(), run: j.meets.run, stops: stopped,
	})
	for k := range beyond {
		if !notched[k] {
			continue
		}
		w.add(claim{
			joint: i, loser: j.a, keeper: j.b, cut: beyond[k], kept: beyond[k], kind: piece.Notch,
			open: j.meets.entry, run: j.meets.across,
		})
	}
	w.fasten(j)
}
