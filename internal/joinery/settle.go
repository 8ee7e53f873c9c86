package joinery

import (
	"scantling/internal/address"
	"scantling/internal/diag"
	"scantling/internal/message"
	"scantling/internal/piece"
)

// maxRounds bounds how often claims are settled anew after some were cut short.
const maxRounds = 8

// settle decides between claims of different joints on the same wood. A part
// that keeps wood by one joint and loses it by another is a conflict, and so are
// two parts that both keep it. The joint that goes over the other is left whole.
func (w *work) settle() {
	told := map[[2]address.Address]bool{}
	for range maxRounds {
		before := len(w.claims)
		by := w.byLoser()
		pairs := w.claimPairs()
		for _, p := range pairs {
			w.keepOrLose(p[0], p[1], by, told)
			w.keepOrLose(p[1], p[0], by, told)
		}
		if len(w.claims) != before {
			continue
		}
		for _, p := range pairs {
			w.twoKeepers(p[0], p[1], by, told)
		}
		if len(w.claims) == before {
			return
		}
	}
}

// byLoser lists the live claims of each part.
func (w *work) byLoser() map[int][]int {
	by := map[int][]int{}
	for i := range w.claims {
		if !w.claims[i].gone {
			by[w.claims[i].loser] = append(by[w.claims[i].loser], i)
		}
	}
	return by
}

// claimPairs returns the pairs of live claims of different joints that overlap.
func (w *work) claimPairs() [][2]int {
	var boxes []box
	var which []int
	for i := range w.claims {
		if !w.claims[i].gone {
			boxes, which = append(boxes, w.claims[i].cut), append(which, i)
		}
	}
	var out [][2]int
	for _, p := range pairsOf(boxes, &w.steps, overlaps) {
		i, j := which[p[0]], which[p[1]]
		if w.claims[i].joint != w.claims[j].joint {
			out = append(out, [2]int{i, j})
		}
	}
	return out
}

// over reports whether joint a says that it goes over joint b.
func (w *work) over(a, b int) bool {
	for _, o := range w.joints[a].Over {
		if j := w.joints[b]; o == j.Address || o == j.Family || (o != "" && o.Has(j.Address)) {
			return true
		}
	}
	return false
}

// keepOrLose settles a region that a part keeps by claim k and loses by claim l.
func (w *work) keepOrLose(k, l int, by map[int][]int, told map[[2]address.Address]bool) {
	keep, lose := &w.claims[k], &w.claims[l]
	if keep.gone || lose.gone || keep.yields || keep.keeper != lose.loser || !shares(keep.keptBody(), lose.cutBody()) {
		return
	}
	if w.mitres(keep.joint, lose.joint) {
		return
	}
	x := meet(keep.kept, lose.cut)
	mine, other := w.over(keep.joint, lose.joint), w.over(lose.joint, keep.joint)
	switch {
	case other && !mine: // the keeper gives way: nothing to change
		return
	case !mine || other:
		rest := []box{x}
		for _, i := range by[keep.keeper] {
			if w.over(w.claims[i].joint, keep.joint) {
				rest = w.lessClaim(rest, i)
			}
		}
		if rest = both(rest, keep.keptBody(), lose.cutBody()); len(rest) > 0 {
			w.conflict(keep.joint, lose.joint, rest[0], told)
		}
		return
	}
	// The cut ends at what is kept, and what it was cut for is notched there.
	notch, has := meet(x, lose.kept), shares(prism{box: x}, lose.keptBody())
	c := *lose
	lose.gone = true
	c.slope, c.lies = nil, nil
	for _, part := range lessBox(w.ledger, c.cutBody(), x, c.run) {
		kept, _ := within(w.ledger, c.keptBody(), part.box)
		w.add(c.shaped(part, kept))
	}
	if has {
		w.notch(w.claims[k].joint, c.keeper, w.claims[k].keeper, notch, by)
	}
}

// notch takes from a part what another keeps, where it has not lost it already.
func (w *work) notch(joint, loser, keeper int, region box, by map[int][]int) {
	rest := []box{region}
	for _, i := range by[loser] {
		rest = w.lessClaim(rest, i)
	}
	for _, r := range rest {
		w.add(claim{joint: joint, loser: loser, keeper: keeper, cut: r, kept: r, kind: piece.Notch})
	}
}

// mitres reports whether two joints are mitres. Where three meet in a corner the third
// shares out what the two both claim; without the third, the parts collide.
func (w *work) mitres(a, b int) bool {
	return w.joints[a].Kind == piece.MitreJoint && w.joints[b].Kind == piece.MitreJoint
}

// lessClaim takes what a claim cuts from a list of boxes. Of a cut with leaning
// sides only the box within is taken, so that more seems left than is.
func (w *work) lessClaim(list []box, i int) []box {
	if b, ok := w.claims[i].inner(); ok {
		return w.steps.lessAll(list, b)
	}
	return list
}

// both returns those boxes of a list that reach into both of two bodies.
func both(list []box, a, b prism) []box {
	if a.line == nil && b.line == nil {
		return list
	}
	var out []box
	for _, r := range list {
		if p := (prism{box: r}); shares(p, a) && shares(p, b) {
			out = append(out, r)
		}
	}
	return out
}

// twoKeepers settles a region that two parts keep, each by its own claim.
func (w *work) twoKeepers(i, j int, by map[int][]int, told map[[2]address.Address]bool) {
	a, b := &w.claims[i], &w.claims[j]
	if a.gone || b.gone || a.yields || b.yields || a.keeper == b.keeper || w.mitres(a.joint, b.joint) || !shares(a.keptBody(), b.keptBody()) {
		return
	}
	rest := []box{meet(a.kept, b.kept)}
	for _, k := range [2]int{a.keeper, b.keeper} {
		for _, n := range by[k] {
			rest = w.lessClaim(rest, n)
		}
	}
	if rest = both(rest, a.keptBody(), b.keptBody()); len(rest) == 0 {
		return
	}
	first, second := w.over(a.joint, b.joint), w.over(b.joint, a.joint)
	if first == second && w.mitreTenons(a, b, meet(a.kept, b.kept)) {
		return
	}
	if first == second {
		w.conflict(a.joint, b.joint, rest[0], told)
		return
	}
	if second {
		a, b = b, a
	}
	win, yields, keeper := a.joint, b.keeper, a.keeper
	for _, r := range rest {
		w.notch(win, yields, keeper, r, by)
	}
}

// conflict reports two joints that claim one region, once for a pair of families.
func (w *work) conflict(a, b int, region box, told map[[2]address.Address]bool) {
	ja, jb := &w.joints[min(a, b)], &w.joints[max(a, b)]
	key := [2]address.Address{ja.family(), jb.family()}
	if told[key] || told[[2]address.Address{key[1], key[0]}] {
		return
	}
	told[key] = true
	w.report(ja.Joint, fault{CodeClaims, "joint.claims", []message.Arg{
		message.Address("other", jb.Address),
		message.Length("right", region.size(piece.Right)),
		message.Length("back", region.size(piece.Back)),
		message.Length("up", region.size(piece.Up)),
	}}, diag.Related{Text: message.New("joint.claims-other", message.Address("joint", jb.Address)), Where: jb.Where})
}

func (j *joint) family() address.Address {
	if j.Family != "" {
		return j.Family
	}
	return j.Address
}
