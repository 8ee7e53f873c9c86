package joinery

import (
	"math/big"

	"scantling/internal/address"
	"scantling/internal/diag"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// Lowered is what one joint comes to, by its own formula on the bodies of its
// two parts; other joints do not enter.
type Lowered struct {
	Joint address.Address
	Kind  piece.JointKind
	A, B  address.Address
	// Region is the overlap of the uncut bodies by right, back and up; where the
	// parts only touch it is flat along one axis.
	Region [3]piece.Extent
	// Entry is the way in which A goes into B (or lies against it) and Run the
	// axis along which the joint is long.
	Entry piece.Direction
	Run   piece.Axis
	// Overlap = KeptA + KeptB; Neither is clearance, in the overlap or beside it,
	// so that what is left of A and of B and Neither make up the union. Volumes.
	Overlap, KeptA, KeptB, Neither unit.Value
	// Contact is the area over which the two finished parts lie against each
	// other in the joint, holes not deducted; it is glue area where Glued is set.
	// LongGrain is that of it on which long grain lies against long grain, which is
	// what a glue line holds by; with loose tenons, the flats of these.
	Contact, LongGrain unit.Value
	Glued              bool
}

// Lower turns the joints of a piece into cuts. The cuts come joint by joint in
// the order of the piece; the numbers likewise, without those joints that cannot
// be made, which are reported. The ledger takes the figures of the cuts.
func Lower(p *piece.Piece, l *ledger.Ledger) (cuts []piece.Cut, lowered []Lowered, faults diag.List) {
	w := newWork(p, l)
	for i := range p.Joints {
		w.prepare(&p.Joints[i])
	}
	for i := range w.joints {
		w.lower(i)
	}
	of := make([][]int, len(w.joints)) // the claims of each joint
	for k := range w.claims {
		of[w.claims[k].joint] = append(of[w.claims[k].joint], k)
	}
	for i := range w.joints {
		if n, ok := w.numbers(i, of[i]); ok {
			lowered = append(lowered, n)
		}
	}
	w.settle()
	w.cutOff()
	w.holesMeet()
	w.runOut()
	if w.steps.left < 0 {
		w.faults = append(w.faults, tooMuch(len(p.Joints)))
	}
	return w.cuts(), lowered, w.faults
}

// work is one run of Lower.
type work struct {
	piece  *piece.Piece
	ledger *ledger.Ledger
	index  map[address.Address]int
	joints []joint
	claims []claim
	holes  []piece.Cut
	faults diag.List
	steps  steps
	// tips are the pairs of joints whose tenons have been mitred.
	tips map[[2]int]bool
}

// joint is a joint of the piece with its two parts and how they meet.
type joint struct {
	*piece.Joint
	a, b   int // indices of the parts
	partA  *piece.Part
	partB  *piece.Part
	meets  meeting
	failed bool
	// tenon is the whole tenon of A in the piece, where hasTenon is set.
	tenon    box
	hasTenon bool
	// neither is the volume that neither keeps, where it does not follow from
	// the claims: slips of a mitre are cut out of both parts at once.
	neither *big.Int
}

// claim is wood that one part loses to another by a joint.
type claim struct {
	joint  int
	loser  int
	keeper int
	// cut is what is taken from the loser, clearance and all; kept is what of it
	// the keeper fills. Where they are no boxes, profile gives them their section
	// and these are the boxes around them.
	cut, kept box
	profile   *profile
	// slope, where it is set, is the plane beyond which all of the loser goes.
	slope *slope
	// lies is the area over which what is kept lies against the loser, where the
	// joint says so; nil where it follows from the boxes.
	lies *touch
	// gone is set when an other joint has taken the claim away altogether; parts
	// that remain of it are new claims.
	gone bool
	kind piece.CutKind
	// open is the side of the loser that the cut is made from, run the axis along
	// which it is long.
	open piece.Direction
	run  piece.Axis
	// stops tells which ends of the run the document itself stops.
	stops [2]bool
	// endRadius rounds the stopped ends of the run. shared is set where the cut lies
	// partly in another cut of its joint: only what is kept counts.
	endRadius piece.Figure
	shared    bool
	// yields says that the keeper does not rest on what it keeps: other joints may
	// take it.
	yields bool
}

// maxSteps is MaxSteps; tests make it smaller.
var maxSteps = MaxSteps

func newWork(p *piece.Piece, l *ledger.Ledger) *work {
	w := &work{piece: p, ledger: l, index: make(map[address.Address]int, len(p.Parts)), steps: steps{maxSteps}}
	for i := range p.Parts {
		w.index[p.Parts[i].Address] = i
	}
	return w
}

// prepare looks a joint's parts up and checks that they meet as it needs.
func (w *work) prepare(j *piece.Joint) {
	a, okA := w.index[j.A]
	b, okB := w.index[j.B]
	switch {
	case !okA:
		w.report(j, unknownPart(j.A))
		return
	case !okB:
		w.report(j, unknownPart(j.B))
		return
	case a == b:
		w.report(j, samePart(j.A))
		return
	}
	if w.piece.Parts[a].Tilt != nil || w.piece.Parts[b].Tilt != nil {
		if !sameTilt(w.piece.Parts[a].Tilt, w.piece.Parts[b].Tilt) {
			w.report(j, fault{CodeTilted, "joint.tilted", pairArgs(j)})
			return
		}
	}
	pj := joint{Joint: j, a: a, b: b, partA: &w.piece.Parts[a], partB: &w.piece.Parts[b]}
	meets, ok := look(pj.partA, pj.partB, j.Depth.Nm)
	if !ok {
		w.report(j, doNotMeet(j, apartBy(pj.partA.Extent, pj.partB.Extent)))
		return
	}
	pj.meets = meets
	w.joints = append(w.joints, pj)
}

// lower adds the claims and holes of one joint.
func (w *work) lower(i int) {
	j := &w.joints[i]
	touching := j.Kind == piece.ButtJoint || j.Kind == piece.DowelJoint || j.Kind == piece.LooseJoint
	if touching != j.meets.flat {
		if touching {
			w.fail(j, shouldTouch(j))
		} else {
			w.fail(j, onlyTouch(j))
		}
		return
	}
	switch j.Kind {
	case piece.ButtJoint:
		w.butt(j)
	case piece.DowelJoint:
		w.dowel(j)
	case piece.HousingJoint:
		w.housing(i)
	case piece.GrooveJoint:
		w.groove(i)
	case piece.RebateJoint:
		w.rebate(i)
	case piece.BoxJoint:
		w.box(i)
	case piece.HalvingJoint:
		w.halving(i)
	case piece.TongueJoint:
		w.tongue(i)
	case piece.MitreJoint:
		w.mitre(i)
	case piece.DovetailJoint:
		w.dovetail(i)
	case piece.SlidingJoint:
		w.sliding(i)
	case piece.TenonJoint:
		w.tenon(i)
	case piece.BridleJoint:
		w.bridle(i)
	case piece.LooseJoint:
		w.loose(j)
	default:
		w.fail(j, unknownKind(j))
	}
}

// add files a claim.
func (w *work) add(c claim) { w.claims = append(w.claims, c) }

// numbers works out what joint i comes to, of which the claims are mine.
func (w *work) numbers(i int, mine []int) (Lowered, bool) {
	j := &w.joints[i]
	if j.failed {
		return Lowered{}, false
	}
	out := Lowered{
		Joint: j.Address, Kind: j.Kind, A: j.A, B: j.B,
		Region: j.meets.region, Entry: j.meets.entry, Run: j.meets.run, Glued: j.Glue != "",
	}
	if j.meets.flat {
		none := volumeOf(new(big.Int))
		out.Overlap, out.KeptA, out.KeptB, out.Neither = none, none, none, none
		t := new(touch)
		t.add(j, j.meets.normal, j.meets.region)
		w.strips(j, t)
		out.Contact, out.LongGrain = areaOf(&t.all), areaOf(&t.long)
		return out, true
	}
	keptA, keptB, cut := new(big.Int), new(big.Int), new(big.Int)
	all := new(touch)
	for _, k := range mine {
		c := &w.claims[k]
		if c.shared {
			cut.Add(cut, c.keptBody().content())
		} else {
			cut.Add(cut, c.cutBody().content())
		}
		if c.keeper == j.a {
			keptA.Add(keptA, c.keptBody().content())
		} else {
			keptB.Add(keptB, c.keptBody().content())
		}
		t := w.contact(j, c, mine)
		all.all.Add(&all.all, &t.all)
		all.long.Add(&all.long, &t.long)
	}
	neither := cut.Sub(cut, new(big.Int).Add(keptA, keptB))
	if j.neither != nil {
		neither = j.neither
	}
	j.rounding(keptA, keptB, neither, all)
	out.Overlap, out.KeptA, out.KeptB = volumeOf(j.meets.region.volume()), volumeOf(keptA), volumeOf(keptB)
	out.Neither = volumeOf(neither)
	out.Contact, out.LongGrain = areaOf(&all.all), areaOf(&all.long)
	return out, true
}
