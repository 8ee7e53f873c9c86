package joinery

import (
	"math/big"

	"scantling/internal/piece"
	"scantling/internal/unit"
)

// touch is where a claim's kept wood lies against the other part.
type touch struct {
	// all is the area; long that of it on which long grain lies against long grain.
	all, long big.Int
}

// contact returns the area of a claim's kept wood that lies against the other
// part's finished wood, as far as this joint alone says. Kept by A, all that lies
// just outside is looked at; kept by B, only what lies outside the overlap, as the
// rest has been counted from A's side.
func (w *work) contact(j *joint, c *claim, mine []int) *touch {
	if c.lies != nil {
		return c.lies
	}
	other := j.b
	if c.keeper == j.b {
		other = j.a
	}
	body := box(w.piece.Parts[other].Extent)
	out := new(touch)
	for _, a := range axes {
		for _, high := range [2]bool{false, true} {
			if c.keeper == j.b && c.kept.end(a, high).Nm != j.meets.region.end(a, high).Nm {
				continue
			}
			layer := skin(c.kept, a, high)
			if !overlaps(layer, body) {
				continue
			}
			left := []box{meet(layer, body)}
			for _, k := range mine {
				if m := &w.claims[k]; m.loser == other && len(left) > 0 && overlaps(layer, m.cut) {
					left = w.steps.lessAll(left, m.cut)
				}
			}
			for _, b := range left {
				out.add(j, a, b)
			}
		}
	}
	return out
}

// add takes in a layer of one nanometre that lies against an axis.
func (t *touch) add(j *joint, a piece.Axis, layer box) {
	area := layer.side(a)
	t.all.Add(&t.all, area)
	if j.longGrain(a) {
		t.long.Add(&t.long, area)
	}
}

// longGrain reports whether both parts show long grain on faces square to an axis.
func (j *joint) longGrain(a piece.Axis) bool {
	la, _ := j.partA.Frame.Length.Axis()
	lb, _ := j.partB.Frame.Length.Axis()
	return a != la && a != lb
}

// square returns the area of a rectangle in square nanometres.
func square(a, b unit.Length) *big.Int {
	return new(big.Int).Mul(big.NewInt(int64(a)), big.NewInt(int64(b)))
}
