package table

import (
	"strings"

	"scantling/internal/message"
	"scantling/internal/piece"
)

// shaped says what a joint is made of: its tongue, tails or sliding dovetail, and
// what goes across a mitre.
func (b *builder) shaped(j piece.Joint) string {
	var out []string
	size := func(name string, f piece.Figure) message.Arg { return message.Text(name, b.length(f)) }
	if t := j.Tongue; t != nil {
		out = append(out, b.say("joint-tongue", size("thickness", t.Thickness), size("from", t.From)))
		if t.Gap.Nm > 0 {
			out = append(out, b.say("joint-gap", size("gap", t.Gap)))
		}
	}
	if t := j.Tails; t != nil && len(t.Tails) > 0 {
		pin := t.Pins[0]
		if len(t.Pins) > 2 {
			pin = t.Pins[1]
		}
		out = append(out, b.say("joint-tails", message.Count("n", len(t.Tails)), size("tail", t.Tails[0]), size("pin", pin), size("half", t.Pins[0]), size("lean", t.Lean)))
		if t.Lap.Nm > 0 {
			out = append(out, b.say("joint-lap", size("lap", t.Lap)))
		}
	}
	if s := j.Slide; s != nil {
		key := "joint-slide"
		if s.OneSide {
			key = "joint-half-slide"
		}
		out = append(out, b.say(key, size("neck", s.Neck), size("lean", s.Lean)))
	}
	if s := j.Spline; s != nil {
		out = append(out, b.say("joint-spline", size("thickness", s.Thickness), size("depth", s.Depth)))
	}
	if k := j.Keys; k != nil {
		out = append(out, b.say("joint-keys", message.Count("n", len(k.At)), size("thickness", k.Thickness), size("depth", k.Depth)))
	}
	return strings.Join(append(out, b.tenoned(j)...), "; ")
}

// sameShape reports whether two joints of a family are shaped alike.
func sameShape(a, b piece.Joint) bool {
	tails := func(j piece.Joint) int {
		if j.Tails == nil {
			return 0
		}
		return len(j.Tails.Tails)
	}
	keys := func(j piece.Joint) int {
		if j.Keys == nil {
			return 0
		}
		return len(j.Keys.At)
	}
	return tails(a) == tails(b) && keys(a) == keys(b) && sameTenon(a, b)
}
