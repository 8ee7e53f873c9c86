package setups

import (
	"strconv"
	"strings"

	"scantling/internal/analysis/operations"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// card makes the card of a batch, with the hand's share on a card of its own
// where no sound way was found.
func (d *decider) card(b batch) {
	c := plan.Setup{Machine: b.key.machine, MachineLabel: b.key.machine}
	var refused []*operations.Job
	switch {
	case b.key.kind == plan.MakeCut && b.key.machine == operations.Hand:
		c.Placements = d.byHand(d.jobsOf(b))
	case b.key.kind == plan.MakeCut:
		c, refused = d.sound(c, d.jobsOf(b))
	default:
		d.plain(&c, b)
	}
	refusedOps := map[string]bool{}
	for _, j := range refused {
		refusedOps[j.Operation] = true
	}
	if len(c.Placements) > 0 {
		d.finishCard(&c, b.key, refusedOps, b.ops)
	}
	if len(refused) > 0 {
		hand := plan.Setup{Machine: operations.Hand, MachineLabel: operations.Hand, Placements: d.byHand(refused)}
		k := b.key
		k.machine, k.cutter, k.height, k.word = operations.Hand, "", 0, string(refused[0].Cut.Kind)
		kept := map[string]bool{}
		for _, i := range b.ops {
			kept[d.ops[i].ID] = !refusedOps[d.ops[i].ID]
		}
		d.finishCard(&hand, k, kept, b.ops)
	}
}

// sound fills the card with the jobs of those operations of which no job is
// refused, and returns all jobs of the others: an operation stands on one card.
func (d *decider) sound(c plan.Setup, jobs []*operations.Job) (plan.Setup, []*operations.Job) {
	filled := c
	refused := d.cutting(&filled, jobs)
	if len(refused) == 0 {
		return filled, nil
	}
	of := map[string]bool{}
	for _, j := range refused {
		of[j.Operation] = true
	}
	var left, all []*operations.Job
	for _, j := range jobs {
		if of[j.Operation] {
			all = append(all, j)
		} else {
			left = append(left, j)
		}
	}
	if len(left) == 0 {
		return c, all
	}
	filled, more := d.sound(c, left)
	return filled, append(all, more...)
}

// finishCard gives the card its name, its words and its operations; skip names
// operations that are not on it.
func (d *decider) finishCard(c *plan.Setup, k key, skip map[string]bool, ops []int) {
	c.ID = d.cardID(k)
	c.Title = title(k)
	for n := range c.Placements {
		c.Placements[n].N = n + 1
	}
	d.equip(c, k)
	for _, i := range ops {
		if op := &d.ops[i]; !skip[op.ID] {
			op.Setup, op.Machine = c.ID, c.Machine
			if c.Machine == operations.Hand {
				op.Cutter = ""
			}
			c.Operations = append(c.Operations, op.ID)
		}
	}
	d.cards = append(d.cards, *c)
}

// cardID names what the card sets: machine, cutter or work, height, stage.
func (d *decider) cardID(k key) string {
	words := []string{k.machine}
	for _, w := range []string{k.cutter, k.word} {
		if w != "" {
			words = append(words, w)
		}
	}
	if k.kind != plan.MakeCut {
		words = append(words, string(k.kind))
	}
	if k.guide == operations.BySled {
		words = append(words, "sled")
	}
	if k.height > 0 {
		words = append(words, decimal(k.height))
	}
	if k.stage != "" {
		words = append(words, "stage "+k.stage)
	}
	id := strings.Join(words, ", ")
	d.used[id]++
	if n := d.used[id]; n > 1 {
		id += ", again " + strconv.Itoa(n-1)
	}
	return id
}

// decimal prints a length in millimetres without trailing noughts, exactly.
func decimal(l unit.Length) string {
	whole, rest := int64(l/unit.Millimetre), int64(l%unit.Millimetre)
	text := strconv.FormatInt(whole, 10)
	if rest == 0 {
		return text
	}
	digits := strconv.FormatInt(rest+int64(unit.Millimetre), 10)[1:]
	return text + "." + strings.TrimRight(digits, "0")
}

func title(k key) message.Message {
	switch {
	case k.kind != plan.MakeCut && k.machine == operations.Hand:
		return message.New("setups.title.hand-"+slug(string(k.kind)), message.Length("size", k.height))
	case k.kind != plan.MakeCut:
		return message.New("setups.title."+slug(string(k.kind)), message.Text("machine", k.machine), message.Length("size", k.height))
	case k.machine == operations.Hand:
		return message.New("setups.title.hand", message.Word("cut", "cut."+k.word))
	case k.word == string(piece.LidKerf):
		return message.New("setups.title.lid", message.Text("machine", k.machine), message.Length("height", k.height))
	case k.word != "":
		return message.New("setups.title.other", message.Text("machine", k.machine), message.Word("cut", "cut."+k.word))
	case k.cutter == "":
		return message.New("setups.title.saw", message.Text("machine", k.machine), message.Length("height", k.height))
	}
	if k.guide == operations.ByEdge {
		return message.New("setups.title.plunge", message.Text("machine", k.machine), message.Text("cutter", k.cutter), message.Length("height", k.height))
	}
	return message.New("setups.title.cutter", message.Text("machine", k.machine), message.Text("cutter", k.cutter), message.Length("height", k.height))
}

func slug(s string) string { return strings.ReplaceAll(s, " ", "-") }

func (d *decider) jobsOf(b batch) []*operations.Job {
	var out []*operations.Job
	for _, i := range b.ops {
		out = append(out, d.jobs[d.ops[i].ID]...)
	}
	return out
}

// cutting fills a card with cuts of one machine, cutter and height, and returns
// the jobs for which no sound way was found.
func (d *decider) cutting(c *plan.Setup, jobs []*operations.Job) []*operations.Job {
	way := jobs[0].Way
	machine, _ := d.Shop.Machine(way.Machine)
	if way.Cutter.Name != "" {
		c.Cutter, c.CutterLabel, c.CutterShape = way.Cutter.Name, way.Cutter.Name, string(way.Cutter.Shape)
		if speed, err := machine.Speed(way.Cutter); err == nil && (way.Kind == tool.RouterTable || way.Kind == tool.Router) {
			c.Speed = int(speed)
		}
	} else if way.Kind == tool.TableSaw {
		c.CutterShape = string(tool.SawBlade)
	}
	c.CutterSize = way.Size
	if jobs[0].Cut.Slot == nil || way.Kind == tool.DrillPress {
		c.Placements = d.others(jobs)
		return nil
	}
	height := plan.Setting{Word: "height", Figure: way.Depth, Passes: d.heights(way)}
	if jobs[0].Cut.Kind == piece.LidKerf {
		d.sawLid(c, height, jobs)
		return nil
	}
	if way.Kind == tool.Router {
		height.Word = wordPlunge
	}
	c.Settings = append(c.Settings, height)
	if len(height.Passes) > 1 {
		c.Sums = append(c.Sums, d.passSum(height))
	}
	return d.slots(c, jobs)
}

// heights are the heights of the passes: so many full passes, never more than
// the whole depth.
func (d *decider) heights(w operations.Way) []piece.Figure {
	if len(w.Heights) < 2 {
		return nil
	}
	per := tool.DepthPerPass(w.Cutter, d.Shop.Rules.PassDepth)
	rule := d.l.Leaf("rule.pass-depth", per.Value, ledger.HouseRule, per.Source.String())
	out := make([]piece.Figure, len(w.Heights))
	for i := range out {
		name := "pass " + strconv.Itoa(i+1)
		out[i] = d.l.Least(name, w.Depth, d.l.Times(name, rule, int64(i+1), 1))
	}
	return out
}

// passSum shows that the passes add up to the height.
func (d *decider) passSum(s plan.Setting) plan.Sum {
	sum := plan.Sum{Title: words("setups.sum.passes"), Total: s.Figure}
	for i, at := range s.Passes {
		term := at
		if i > 0 {
			term = d.l.Less("pass depth", at, s.Passes[i-1])
		}
		sum.Terms = append(sum.Terms, plan.SumTerm{Word: "pass", Figure: term})
	}
	return sum
}
