package setups

import (
	"slices"

	"scantling/internal/analysis/operations"
	"scantling/internal/message"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// method chooses how a group of cuts is measured and says the figures of every
// way that was compared. Groups that leave no choice have no note.
func (d *decider) method(group []*operations.Job) (message.Message, Method) {
	w := group[0].Way
	for _, j := range group {
		if len(j.Way.Fences) < 2 {
			return message.Message{}, BothEdges // each from the only side that it may be
		}
	}
	if len(group) < 2 {
		return message.Message{}, BothEdges
	}
	var distinct []unit.Length
	for _, f := range d.fromNearer(group) {
		if !slices.Contains(distinct, f.edge.Nm) {
			distinct = append(distinct, f.edge.Nm)
		}
	}
	machine, _ := d.Shop.Machine(w.Machine)
	fence, width := accuracy(machine), d.sawAccuracy()
	choices := Methods(len(group), len(distinct), even(group), fence, width, d.spacerAccuracy(), d.rules.RowError.Value)
	best := choices[0]
	if best.Method == Spacers { // an offer in words; the settings printed are those of the fence
		for _, c := range choices {
			if c.Method != Spacers {
				best = c
				break
			}
		}
	}
	args := []message.Arg{message.Word("method", "method."+string(best.Method)), message.Length("error", best.Error), message.Count("settings", best.Settings)}
	var others []message.Arg
	for _, c := range choices {
		if c.Method != best.Method {
			others = append(others, message.Word("method", "method."+string(c.Method)), message.Length("error", c.Error))
		}
	}
	if len(others) > 0 {
		args = append(args, message.List("others", others...))
	}
	return message.New("setups.method", args...), best.Method
}

// even reports whether the cuts are equal and at one pitch.
func even(group []*operations.Job) bool {
	var at []unit.Length
	for _, j := range group {
		if j.Way.Far.Nm-j.Way.Near.Nm != group[0].Way.Far.Nm-group[0].Way.Near.Nm {
			return false
		}
		at = append(at, j.Way.Near.Nm)
	}
	slices.Sort(at)
	for i := 2; i < len(at); i++ {
		if at[i]-at[i-1] != at[1]-at[0] {
			return false
		}
	}
	return true
}

func accuracy(m tool.Machine) unit.Length {
	if m.Accuracy.Known() {
		return m.Accuracy.Value
	}
	return tool.Usual(m.Kind).Accuracy.Value
}

// sawAccuracy is how well a width comes out, spacerAccuracy how well a spacer
// does that is planed to its thickness.
func (d *decider) sawAccuracy() unit.Length { return d.accuracyOf(tool.TableSaw) }

func (d *decider) spacerAccuracy() unit.Length { return d.accuracyOf(tool.ThicknessPlaner) }

func (d *decider) accuracyOf(kind tool.Kind) unit.Length {
	for _, m := range d.Shop.Of(kind) {
		return accuracy(m)
	}
	return tool.Usual(kind).Accuracy.Value
}
