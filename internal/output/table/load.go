package table

import (
	"strings"

	"scantling/internal/message"
	"scantling/internal/output/naming"
	"scantling/internal/plan"
)

// Load lists what load does: shelves and bottoms, cases that are pushed, the piece on
// its feet, drawers, joints by their kind. The short list leaves out sags at once, single
// drawers out and joints.
func Load(p *plan.Plan, s Speech, short bool) Table {
	b, names := estimates(p, s, "table.load")
	x := p.Strength
	b.begin("load.shelves", len(x.Shelves))
	for _, shelf := range x.Shelves {
		for _, l := range shelf.Loads {
			under := message.Word("load", "load.case."+strings.ReplaceAll(l.Case, " ", "-"))
			if !short || !l.AtOnce.Known() {
				b.estimate(marked(s, names, shelf.Part), b.say("load.at-once", under, message.Length("span", shelf.Span.Nm)), l.AtOnce)
			}
			if l.AtOnce.Known() {
				b.estimate(marked(s, names, shelf.Part), b.say("load.lasting", under, message.Length("seen", shelf.Seen.Nm)), l.Lasting)
			}
			if l.Upright.Known() {
				b.estimate(marked(s, names, shelf.Part), b.say("load.upright"), l.Upright)
			}
		}
	}
	b.cases(x.Cases, names)
	b.standing(x, names, short)
	b.begin("load.drawers", len(x.Drawers))
	for _, d := range x.Drawers {
		what := names.Address(d.Moves)
		b.estimate(what, b.say("load.corner-pull", message.Word("runs", "corner-pull."+strings.ReplaceAll(d.CornerPull, " ", "-"))), d.JamsBeyond)
		b.estimate(what, b.say("load.sticks"), d.SticksAt)
	}
	if short {
		return b.tidy()
	}
	b.begin("load.joints", len(x.Joints))
	for _, j := range x.Joints {
		for _, w := range j.Ways {
			b.estimate(b.say("load.joint-kind."+strings.ReplaceAll(j.Kind, " ", "-")), b.say("load.way", message.Word("way", "load.way."+strings.ReplaceAll(w.Way, " ", "-")), message.Count("n", max(1, w.Count))), w.Allowed)
		}
	}
	return b.tidy()
}

// cases adds what pushes cases, and what they bear.
func (b *builder) cases(all []plan.Racking, names *naming.Names) {
	b.begin("load.cases", len(all))
	for _, c := range all {
		what := b.say("load.whole")
		if c.Group != "" {
			what = names.Address(c.Group)
		}
		b.estimate(what, b.say("load.push", message.Length("high", c.High.Nm), message.Word("back", "back."+c.Back)), c.Push)
		if c.Panel.Known() {
			b.estimate(what, b.say("load.panel"), c.Panel)
		} else {
			b.estimate(what, b.say("load.corner", message.Count("corners", c.Corners)), c.Each)
			b.estimate(what, b.say("load.bears"), c.Bears)
		}
	}
}

// standing adds at what the piece tips.
func (b *builder) standing(x plan.Strength, names *naming.Names, short bool) {
	b.begin("load.standing", len(x.Standing))
	for _, st := range x.Standing {
		if short && len(st.Out) > 0 && len(st.Out) < len(x.Drawers) {
			continue
		}
		out := b.say("load.shut")
		if len(x.Drawers) == 0 {
			out = b.say("load.stands")
		}
		if n := len(st.Out); n == 1 {
			out = b.say("load.one-out", message.Text("drawer", names.Address(st.Out[0])))
		} else if n > 1 {
			out = b.say("load.all-out", message.Count("n", n))
		}
		what := b.say("load.state." + st.Case)
		b.estimate(what, b.say("load.pull", message.Text("out", out), message.Length("high", st.PullHigh.Nm)), st.Pull)
		if st.Press.Known() {
			b.estimate(what, b.say("load.press", message.Text("out", out), message.Length("before", st.Before.Nm)), st.Press)
		}
	}
}
