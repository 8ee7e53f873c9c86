package setups

import (
	"slices"

	"scantling/internal/analysis/operations"
	"scantling/internal/diag"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// draft is a placement before its words: which cuts are made from which side.
type draft struct {
	jobs  []*operations.Job // one, or two where the work is turned end for end
	fence piece.Side
	part  int // which of several parts in one blank, from 0
	// edge is from the fence to the near edge of the cutter at the first path;
	// below nought where the fence covers part of the cutter.
	edge piece.Figure
	note message.Message
}

// turned reports whether the work goes through a second time end for end.
func (f draft) turned() bool { return len(f.jobs) == 2 }

// slots fills the card with slots and returns the jobs refused.
func (d *decider) slots(c *plan.Setup, jobs []*operations.Job) []*operations.Job {
	var drafts []draft
	var refused []*operations.Job
	var places fenceAt
	for _, group := range alike(jobs) {
		got, ok := d.arrange(group, places)
		if !ok {
			d.reportTrap(group[0])
			refused = append(refused, group...)
			continue
		}
		drafts = append(drafts, got...)
		places.add(got)
	}
	// One setting of the fence serves every row that shares it; drafts of one row
	// stay in their order, which is by distance too.
	slices.SortStableFunc(drafts, byDistance)
	for _, f := range drafts {
		c.Placements = append(c.Placements, d.placement(f))
	}
	c.Shared = shared(drafts, places)
	return refused
}

// alike divides jobs into those of one row that are offered the same way, in the
// order of their first.
func alike(jobs []*operations.Job) [][]*operations.Job {
	type sameWay struct {
		mark     string
		down     piece.Side
		run      piece.Local
		ends     [2]bool
		from, to unit.Length
		long     bool
		guide    operations.Guide
	}
	var order []sameWay
	groups := map[sameWay][]*operations.Job{}
	for _, j := range jobs {
		w := j.Way
		from, to := stretch(w)
		k := sameWay{j.Row.Mark, w.Down, w.Run, [2]bool{w.StartOpen, w.EndOpen}, from, to, w.Long, w.Guide}
		if _, ok := groups[k]; !ok {
			order = append(order, k)
		}
		groups[k] = append(groups[k], j)
	}
	out := make([][]*operations.Job, len(order))
	for i, k := range order {
		out[i] = groups[k]
	}
	return out
}

// arrange decides from which side each cut of a group is made and in which
// order, so that none is trapped: of the sound ways of the first sound method the
// one that adds fewest to the places of the fence. It returns false if no order is
// sound.
func (d *decider) arrange(group []*operations.Job, places fenceAt) ([]draft, bool) {
	var best proposal
	var voids []gone
	found := false
	for _, p := range d.proposals(group) {
		if found && (p.method != best.method || places.added(p.drafts) >= places.added(best.drafts)) {
			continue
		}
		slices.SortStableFunc(p.drafts, byDistance)
		if v, ok := d.run(group[0], p.drafts); ok {
			best, voids, found = p, v, true
		}
	}
	if found {
		w := group[0].Way
		d.voids[voidKey{group[0].Row.Mark, w.Down, w.Run}] = voids
	}
	return best.drafts, found
}

// proposal is a way to share a group's cuts between the two sides, and how it
// measures them: one cut alone is measured alike from either side.
type proposal struct {
	drafts []draft
	method Method
}

// proposals returns ways to share a group's cuts between the two sides, the
// chosen method first, then each side for all, then the nearer side for each.
func (d *decider) proposals(group []*operations.Job) []proposal {
	note, method := d.method(group)
	var out []proposal
	nearest := proposal{d.fromNearer(group), BothEdges}
	for _, side := range sides(group) {
		if all, ok := d.fromSide(group, side); ok {
			out = append(out, proposal{all, OneEdge})
		}
	}
	if len(group) == 1 {
		nearest.method = OneEdge
	}
	if method == BothEdges || len(out) == 0 || len(group) == 1 {
		out = append([]proposal{nearest}, out...)
	} else {
		out = append(out, nearest)
	}
	for _, p := range out {
		if p.method == out[0].method && !note.IsZero() && len(p.drafts) > 0 {
			slices.SortStableFunc(p.drafts, byDistance)
			p.drafts[0].note = note
		}
	}
	return out
}

// sides lists the fence sides of a group, the first job's better one first.
func sides(group []*operations.Job) []piece.Side { return group[0].Way.Fences }

// fromSide makes every cut from one side; false if a cut may not be.
func (d *decider) fromSide(group []*operations.Job, side piece.Side) ([]draft, bool) {
	var out []draft
	for _, j := range group {
		if !slices.Contains(j.Way.Fences, side) {
			return nil, false
		}
		out = append(out, d.drafts(j, side)...)
	}
	return out, true
}

// fromNearer makes each cut from its better side and joins pairs at one
// distance: the work is then turned end for end.
func (d *decider) fromNearer(group []*operations.Job) []draft {
	var out []draft
	for _, j := range group {
		for _, f := range d.drafts(j, j.Way.Fences[0]) {
			if i := slices.IndexFunc(out, func(g draft) bool { return pairs(g, f) }); i >= 0 {
				out[i].jobs = append(out[i].jobs, j)
				continue
			}
			out = append(out, f)
		}
	}
	return out
}

// settingTolerance is by how much two settings may differ and still be one: finer
// than a fence or a stop is set by hand. Common practice, no source.
const settingTolerance = unit.Millimetre / 100

// oneSetting reports whether two figures are set as one.
func oneSetting(a, b unit.Length) bool { return (a - b).Abs() <= settingTolerance }

// pairs reports whether two drafts are one setting with the work turned: equal
// distance from opposite sides, equal paths, and the same stops seen from either
// end, all within what can be set.
func pairs(a, b draft) bool {
	if a.turned() || a.fence == b.fence || !oneSetting(a.edge.Nm, b.edge.Nm) {
		return false
	}
	v, w := a.jobs[0].Way, b.jobs[0].Way
	if !slices.Equal(v.Paths, w.Paths) || v.StartOpen != v.EndOpen || v.Long && !v.StartOpen {
		return false
	}
	run := v.Work[v.Run].Nm
	return v.StartOpen || oneSetting(v.From.Nm, run-v.To.Nm) && oneSetting(w.From.Nm, v.From.Nm)
}

// drafts returns the placements that make one cut from one side: one for each
// part in the blank where the cut lies across it.
func (d *decider) drafts(j *operations.Job, side piece.Side) []draft {
	parts := 1
	if j.Way.Across == piece.AlongLength {
		parts = max(1, len(j.Way.At))
	}
	out := make([]draft, parts)
	for i := range out {
		out[i] = draft{jobs: []*operations.Job{j}, fence: side, part: i, edge: d.edge(j, side, i)}
	}
	return out
}

// edge is from the fence to the near edge of the cutter at the first path.
func (d *decider) edge(j *operations.Job, side piece.Side, part int) piece.Figure {
	w := j.Way
	name := string(j.Cut.Address) + ".fence"
	near, far := w.Near, w.Far
	if _, high := side.Axis(); high {
		whole := w.Work[w.Across]
		near, far = d.l.Less(name, whole, w.Far), d.l.Less(name, whole, w.Near)
	}
	if w.Across == piece.AlongLength && part < len(w.At) && w.At[part].Nm > 0 {
		near, far = d.l.Sum(name, near, w.At[part]), d.l.Sum(name, far, w.At[part])
	}
	if w.Covered {
		return d.l.Less(name, far, w.Size)
	}
	return near
}

// run passes the drafts over the cutter on paper and returns the voids that are
// then there, from the low side; false if a pass is trapped.
func (d *decider) run(j *operations.Job, drafts []draft) ([]gone, bool) {
	w := j.Way
	voids := slices.Clone(d.voids[voidKey{j.Row.Mark, w.Down, w.Run}])
	if w.Kind == tool.TableSaw || w.Guide == operations.BySled {
		return d.sawn(voids, drafts), true
	}
	width := w.Work[w.Across].Nm
	for _, f := range drafts {
		for n, job := range f.jobs {
			_, high := f.fence.Axis()
			high = high != (n == 1)
			seen := func(all []void) []void { // from the fence
				if high {
					return mirrored(all, width)
				}
				return all
			}
			if !bears(seen(through(voids, w.Work[w.Run].Nm)), w.Work[downAxis(w)].Nm) {
				return nil, false
			}
			low, end := stretch(job.Way)
			for _, path := range job.Way.Paths {
				a, b := mouthAt(job.Way, f.edge.Nm+path)
				if trapped(seen(beside(voids, low, end)), a, b, w.Depth.Nm, width) {
					return nil, false
				}
				cut := void{a, b, w.Depth.Nm}
				if high {
					cut = cut.mirrored(width)
				}
				voids = append(voids, gone{cut, low, end})
			}
		}
	}
	return voids, true
}

// leastBearing is the wood that must be left on the fence side for work to bear
// on. Common practice, no source.
const leastBearing = 3 * unit.Millimetre

// bears reports whether enough of the fence side is left above what was cut away
// there; voids are seen from the fence.
func bears(voids []void, thickness unit.Length) bool {
	return !slices.ContainsFunc(voids, func(v void) bool { return v.from <= 0 && v.depth > thickness-leastBearing })
}

func downAxis(w operations.Way) piece.Local {
	axis, _ := w.Down.Axis()
	return axis
}

// sawn adds the cuts without asking: a saw has no rim that snatches sideways.
func (d *decider) sawn(voids []gone, drafts []draft) []gone {
	for _, f := range drafts {
		for _, job := range f.jobs {
			low, high := stretch(job.Way)
			voids = append(voids, gone{void{job.Way.Near.Nm, job.Way.Far.Nm, job.Way.Depth.Nm}, low, high})
		}
	}
	return voids
}

// mouthAt is the stretch that the cutter opens at the surface when its near edge
// stands at a distance from the fence.
func mouthAt(w operations.Way, edge unit.Length) (unit.Length, unit.Length) {
	a := edge + w.Size.Nm/2 - w.Opens/2
	return max(a, 0), a + w.Opens
}

func (d *decider) reportTrap(j *operations.Job) {
	d.diags = append(d.diags, diag.Diagnostic{
		Severity: diag.Warning, Code: CodeTrapped, Where: j.Cut.Where, Address: j.Cut.Address,
		Text: message.New("setups.trapped", message.Text("mark", j.Row.Mark), message.Word("cut", "cut."+string(j.Cut.Kind))),
	})
}
