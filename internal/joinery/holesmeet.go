package joinery

import (
	"scantling/internal/address"
	"scantling/internal/message"
)

// holesMeet warns where holes or mortises that two joints sink into one part run
// into each other: what goes into them would not have room. They are looked at as
// the boxes round them; two bores that only pass close by may be told too.
func (w *work) holesMeet() {
	byPart := map[address.Address][]int{}
	var order []address.Address
	for i := range w.holes {
		p := w.holes[i].Part
		if byPart[p] == nil {
			order = append(order, p)
		}
		byPart[p] = append(byPart[p], i)
	}
	of := make(map[address.Address]*joint, len(w.joints))
	for i := range w.joints {
		of[w.joints[i].Address] = &w.joints[i]
	}
	told := map[[3]address.Address]bool{}
	for _, part := range order {
		var boxes []box
		var which []int
		for _, i := range byPart[part] {
			if w.holes[i].Bore == nil && w.holes[i].Slot == nil {
				continue // the round edge or the mitred end of a tenon
			}
			for _, b := range Around(&w.piece.Parts[w.index[part]], &w.holes[i]) {
				boxes, which = append(boxes, b), append(which, i)
			}
		}
		for _, p := range pairsOf(boxes, &w.steps, overlaps) {
			a, b := of[w.holes[which[p[0]]].Joint], of[w.holes[which[p[1]]].Joint]
			if a == nil || b == nil || a == b {
				continue
			}
			key := [3]address.Address{part, a.family(), b.family()}
			if told[key] {
				continue
			}
			told[key] = true
			w.warn(a, fault{CodeHoles, "joint.holes-meet", []message.Arg{message.Address("other", b.Address), message.Address("part", part)}})
		}
	}
}
