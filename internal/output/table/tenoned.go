package table

import (
	"scantling/internal/message"
	"scantling/internal/piece"
)

// tenoned says how a tenon, a bridle's tongue or a row of loose tenons is cut, and
// what holes screws are given.
func (b *builder) tenoned(j piece.Joint) []string {
	var out []string
	size := func(name string, f piece.Figure) message.Arg { return message.Text(name, b.length(f)) }
	if t := j.Tenon; t != nil {
		out = append(out, b.say("joint-tenon", size("thickness", t.Thickness), size("from", t.From)))
		if t.Low.Nm > 0 || t.High.Nm > 0 {
			out = append(out, b.say("joint-shoulders", size("low", t.Low), size("high", t.High)))
		}
		if t.Haunch.Nm > 0 {
			out = append(out, b.say("joint-haunch", size("haunch", t.Haunch)))
		}
		if t.Through {
			out = append(out, b.say("joint-through"))
		}
		if t.Round {
			out = append(out, b.say("joint-round-ends"))
		}
		if t.Mitred {
			out = append(out, b.say("joint-mitred-ends"))
		}
		if j.ClearDeep.Nm > 0 {
			out = append(out, b.say("joint-glue-room", size("room", j.ClearDeep)))
		}
	}
	if l := j.Loose; l != nil {
		out = append(out, b.say("joint-loose", message.Count("n", l.Count), size("thickness", l.Thickness), size("width", l.Width), size("a", l.InA), size("b", l.InB)))
	}
	if f := j.Fasteners; f != nil && f.Clearance.Nm > 0 {
		out = append(out, b.say("joint-screw-holes", size("clearance", f.Clearance), size("pilot", f.Pilot)))
		if s := f.Sink; s != nil {
			key := "joint-countersink"
			if s.Flat {
				key = "joint-plug"
			}
			out = append(out, b.say(key, size("diameter", s.Diameter), size("depth", s.Depth)))
		}
	}
	return out
}

// sameTenon reports whether two joints of a family have tenons alike.
func sameTenon(a, b piece.Joint) bool {
	figures := func(j piece.Joint) (out [8]piece.Figure) {
		if t := j.Tenon; t != nil {
			out = [8]piece.Figure{t.Thickness, t.From, t.Low, t.High, t.Haunch}
		}
		if l := j.Loose; l != nil {
			out[5], out[6], out[7] = l.Width, l.InA, l.InB
		}
		return out
	}
	x, y := figures(a), figures(b)
	for i := range x {
		if x[i].Nm != y[i].Nm {
			return false
		}
	}
	return (a.Tenon == nil) == (b.Tenon == nil) && (a.Loose == nil) == (b.Loose == nil) && (a.Loose == nil || a.Loose.Count == b.Loose.Count)
}
