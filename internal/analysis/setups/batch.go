package setups

import (
	"cmp"
	"slices"
	"strconv"

	"scantling/internal/analysis/operations"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// key is what operations must share to stand on one card.
type key struct {
	stage   string
	phase   int
	kind    plan.OperationKind
	machine string
	cutter  string
	height  unit.Length
	guide   operations.Guide
	word    string // the kind of cut, for hand work
	swing   operations.Degrees
	tilt    operations.Degrees
}

// phases order the kinds of work where nothing else does.
var phases = map[plan.OperationKind]int{
	plan.FaceJoint: 1, plan.EdgeJoint: 2, plan.PlaneToThick: 4, plan.GlueUp: 4, plan.LevelJoints: 5, plan.RipToWidth: 6, plan.MakeCut: 7, plan.CutToLength: 8,
}

// phaseStrips is the planing of strips, before any panel is glued up.
const phaseStrips = 3

// keyOf returns the card that an operation belongs on, and whether it has one.
func (d *decider) keyOf(op plan.Operation) (key, bool) {
	phase, ok := phases[op.Kind]
	if !ok || op.Kind == plan.GlueUp {
		return key{}, false
	}
	k := key{stage: d.rows[op.Mark].Stage, phase: phase, kind: op.Kind, machine: op.Machine}
	if phase <= phases[plan.LevelJoints] {
		k.stage = d.planedIn(op.Mark) // all boards of a group are planed together
	}
	switch op.Kind {
	case plan.PlaneToThick, plan.LevelJoints:
		k.height = op.After[2].Nm
		if d.strips[op.Workpiece] {
			k.phase = phaseStrips
		}
	case plan.MakeCut:
		jobs := d.jobs[op.ID]
		if len(jobs) == 0 {
			return key{}, false
		}
		way := jobs[0].Way
		if k.machine == operations.Hand {
			k.word = string(jobs[0].Cut.Kind)
			break
		}
		k.cutter, k.height = op.Cutter, way.Depth.Nm
		if k.guide = way.Guide; k.guide == operations.ByGauge {
			k.guide = operations.ByFence // the same card: only the guide changes
		}
		if jobs[0].Cut.Kind == piece.LidKerf {
			k.word = string(piece.LidKerf)
		}
		if jobs[0].Cut.Slot == nil || way.Kind == tool.DrillPress {
			k.word = string(jobs[0].Cut.Kind)
			k.height = 0
			if n := way.Lean; n != nil {
				k.swing, k.tilt = n.Swing, n.Tilt
			}
		}
	}
	return k, true
}

// batch is the operations of one card.
type batch struct {
	key key
	ops []int
}

// batches puts the operations on cards in an order in which each is ready: a
// card is opened for the key of the earliest phase all of whose operations are
// ready, else for the one with the most; what is not ready goes to a later card
// of the same key.
func (d *decider) batches() []batch {
	waiting := map[string]int{} // needs not yet done
	users := map[string][]int{}
	for i, op := range d.ops {
		for _, n := range op.Needs {
			if _, ok := d.nth[n]; ok {
				waiting[op.ID]++
				users[n] = append(users[n], i)
			}
		}
	}
	left := map[key]int{}
	ready := map[key][]int{}
	var out []batch
	var done func(i int)
	arrive := func(i int) {
		if k, ok := d.keyOf(d.ops[i]); ok {
			ready[k] = append(ready[k], i)
		} else {
			done(i)
		}
	}
	done = func(i int) {
		for _, u := range users[d.ops[i].ID] {
			if waiting[d.ops[u].ID]--; waiting[d.ops[u].ID] == 0 {
				arrive(u)
			}
		}
	}
	first := make([]bool, len(d.ops)) // needs nothing
	for i, op := range d.ops {
		first[i] = waiting[op.ID] == 0
		if k, ok := d.keyOf(op); ok {
			left[k]++
		}
	}
	for i := range d.ops {
		if first[i] {
			arrive(i)
		}
	}
	var last key
	for len(ready) > 0 {
		k := best(ready, left, last)
		last = k
		ops := ready[k]
		delete(ready, k)
		left[k] -= len(ops)
		slices.Sort(ops)
		out = append(out, batch{k, ops})
		for _, i := range ops {
			done(i)
		}
	}
	return out
}

// best chooses the next card: by stage, whole ones first, by phase; then the
// cutter that is in already, from low to high (at the thicknesser from thick to
// thin), then the cutter of the earliest operation.
func best(ready map[key][]int, left map[key]int, last key) key {
	type tools struct{ machine, cutter string }
	earliest := map[tools]int{}
	var keys []key
	for k, ops := range ready {
		keys = append(keys, k)
		t := tools{k.machine, k.cutter}
		if n, ok := earliest[t]; !ok || ops[0] < n {
			earliest[t] = ops[0]
		}
	}
	return slices.MinFunc(keys, func(a, b key) int {
		byHeight := cmp.Compare(a.height, b.height)
		if a.phase < phases[plan.RipToWidth] {
			byHeight = -byHeight
		}
		return cmp.Or(
			compareStages(a.stage, b.stage),
			cmp.Compare(truth(len(ready[a]) < left[a]), truth(len(ready[b]) < left[b])),
			cmp.Compare(a.phase, b.phase),
			cmp.Compare(truth(!sameCutter(a, last)), truth(!sameCutter(b, last))),
			cmp.Compare(earliest[tools{a.machine, a.cutter}], earliest[tools{b.machine, b.cutter}]),
			byHeight,
			cmp.Compare(ready[a][0], ready[b][0]),
		)
	})
}

func sameCutter(a, b key) bool { return a.machine == b.machine && a.cutter == b.cutter }

func truth(b bool) int {
	if b {
		return 1
	}
	return 0
}

// compareStages orders stage ids, which are numbers from 1.
func compareStages(a, b string) int {
	m, _ := strconv.Atoi(a)
	n, _ := strconv.Atoi(b)
	return cmp.Or(cmp.Compare(m, n), cmp.Compare(a, b))
}

// planedIn is the first stage in which anything of the row's group is cut: its
// boards are all planed then, so that they come out alike.
func (d *decider) planedIn(mark string) string {
	if d.planing == nil {
		d.planing = map[string]string{}
		for _, r := range d.Rows {
			g := d.groupOf(r)
			if s, ok := d.planing[g]; !ok || compareStages(r.Stage, s) < 0 {
				d.planing[g] = r.Stage
			}
		}
	}
	return d.planing[d.groupOf(d.rows[mark])]
}

// groupOf names the group of a row, all of a repeat together.
func (d *decider) groupOf(r plan.PartRow) string {
	if len(r.Members) == 0 {
		return ""
	}
	steps, _ := d.parts[r.Members[0]].Group.Steps()
	name := ""
	for _, s := range steps {
		name += "." + s.Name
	}
	return name
}
