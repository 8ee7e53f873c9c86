package setups

import (
	"scantling/internal/analysis/operations"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// equip gives a card its cautions, its test piece and what the work is pushed
// with. Every card of a machine opens with the same line: machine off and
// isolated, cutter still.
func (d *decider) equip(c *plan.Setup, k key) {
	if k.kind != plan.MakeCut {
		way := "setups.how."
		if c.Machine == operations.Hand {
			way = "setups.how.hand-"
		}
		c.Device = words(way + slug(string(k.kind)))
	}
	if c.Machine == operations.Hand {
		c.Cautions = []message.Message{words("caution.clamp-work")}
		return
	}
	machine, _ := d.Shop.Machine(c.Machine)
	c.Cautions = []message.Message{words("caution.machine"), words("caution.person")}
	guard := "caution.guards"
	jobs := d.jobsOfCard(k, c)
	lid := some(jobs, func(j *operations.Job) bool { return j.Cut.Kind == piece.LidKerf })
	sloped := some(jobs, func(j *operations.Job) bool { return j.Way.Lean != nil })
	if machine.Kind == tool.TableSaw && k.kind == plan.MakeCut && !sloped {
		guard = "caution.guard-off-for-grooves"
	}
	c.Cautions = append(c.Cautions, words(guard))
	c.Cautions = append(c.Cautions, d.machineCautions(machine, k, jobs)...)
	switch {
	case lid:
		c.Device = words("device.lid")
		c.Cautions = append(c.Cautions, words("caution.lid"), words("caution.lid-offcut"))
	case k.kind == plan.MakeCut:
		c.Device = device(machine, k, jobs)
		c.TestPiece = d.testPiece(machine, c)
	}
}

// jobsOfCard returns the cuts that the card's placements make.
func (d *decider) jobsOfCard(k key, c *plan.Setup) []*operations.Job {
	if k.kind != plan.MakeCut {
		return nil
	}
	on := map[string]bool{}
	for _, p := range c.Placements {
		for _, a := range p.Cuts {
			on[string(a)] = true
		}
	}
	var out []*operations.Job
	for _, op := range d.ops {
		for _, j := range d.jobs[op.ID] {
			if on[string(j.Cut.Address)] {
				out = append(out, j)
			}
		}
	}
	return out
}

func (d *decider) machineCautions(m tool.Machine, k key, jobs []*operations.Job) []message.Message {
	var out []message.Message
	say := func(key string, args ...message.Arg) { out = append(out, message.New(key, args...)) }
	switch m.Kind {
	case tool.Jointer:
		say("caution.jointer")
	case tool.ThicknessPlaner:
		say("caution.thicknesser")
	case tool.TableSaw:
		say("caution.saw")
	case tool.BandSaw:
		say("caution.band-saw")
	case tool.MitreSaw:
		say("caution.mitre-saw")
	case tool.DrillPress:
		say("caution.drill-press")
	case tool.Router:
		say("caution.plunge")
	case tool.RouterTable:
		say("caution.feed-right-to-left")
		say("caution.never-lower")
	}
	if k.kind == plan.CutToLength {
		say("caution.stop-clear")
	}
	if k.tilt > 0 {
		say("caution.tilted-blade")
	}
	if k.word != "" && some(jobs, func(j *operations.Job) bool { return j.Way.Lean != nil && j.Way.Guide == operations.ByGauge }) {
		say("caution.offcut-free")
	}
	if some(jobs, func(j *operations.Job) bool { return j.Way.Long }) {
		say("caution.longer-blank")
	}
	if m.Kind != tool.Router && some(jobs, crossGrain) { // a cut stopped at both ends leaves the work nowhere
		say("caution.backer")
	}
	if some(jobs, func(j *operations.Job) bool {
		return j.Way.Covered || j.Way.Clears && j.Way.Guide == operations.ByFence
	}) {
		say("caution.covered-cutter")
	}
	if some(jobs, func(j *operations.Job) bool { return len(j.Way.Paths) > 1 && j.Way.Kind == tool.RouterTable }) {
		say("caution.fence-away")
	}
	if some(jobs, func(j *operations.Job) bool { return j.Way.Raise && j.Way.Kind != tool.Router }) {
		say("caution.raise")
	}
	if some(jobs, func(j *operations.Job) bool {
		axis, _ := j.Way.Down.Axis()
		return axis != piece.AlongThickness && j.Cut.Slot != nil
	}) {
		say("caution.on-edge")
	}
	return out
}

func some(jobs []*operations.Job, f func(*operations.Job) bool) bool {
	for _, j := range jobs {
		if f(j) {
			return true
		}
	}
	return false
}

// crossGrain reports whether the cutter leaves the work through end-grain edges
// that break out.
func crossGrain(j *operations.Job) bool {
	return j.Cut.Slot != nil && j.Way.Run != piece.AlongLength && j.Way.Guide != operations.ByHand
}

// device is what moves the work past the cutter.
func device(m tool.Machine, k key, jobs []*operations.Job) message.Message {
	switch m.Kind {
	case tool.BandSaw:
		return words("device.band-saw")
	case tool.DrillPress:
		return words("device.drill-press")
	case tool.Router:
		return words("device.plunge-router")
	}
	switch {
	case some(jobs, func(j *operations.Job) bool { return j.Way.Lean != nil && j.Way.Guide == operations.ByGauge }):
		return words("device.mitre-gauge-clamp")
	case k.guide == operations.BySled:
		return words("device.sled")
	}
	gauge := some(jobs, func(j *operations.Job) bool { return j.Way.Guide == operations.ByGauge })
	straight := some(jobs, func(j *operations.Job) bool { return j.Way.Guide != operations.ByGauge })
	backer := some(jobs, func(j *operations.Job) bool { return j.Way.Guide == operations.ByFence && crossGrain(j) })
	switch {
	case straight && !gauge && backer:
		return words("device.push-block-backer")
	case gauge && straight:
		return words("device.push-block-and-mitre-gauge")
	case gauge:
		return words("device.mitre-gauge-backer")
	}
	return words("device.push-block")
}

// testPiece asks for an offcut of the stock of the first work on the card, long
// enough for the machine itself.
func (d *decider) testPiece(m tool.Machine, c *plan.Setup) message.Message {
	row, ok := d.rows[c.Placements[0].Mark]
	if !ok {
		return message.Message{}
	}
	least := unit.Length(0)
	if m.Least.Length.Known() {
		least = m.Least.Length.Value
	}
	length := max(least, min(row.Length.Nm, unit.MM(400)))
	width := min(row.Width.Nm, unit.MM(120))
	return message.New("setups.test-piece", message.Text("mark", row.Mark),
		message.LengthRounded("length", length, unit.Up), message.Length("width", width), message.Length("thickness", row.Thickness.Nm))
}
