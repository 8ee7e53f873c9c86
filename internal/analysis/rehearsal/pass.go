package rehearsal

import (
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/share"
	"scantling/internal/unit"
)

// pass is one path of the cutter at its last height: the box that the cutter
// sweeps, in local coordinates of the work.
type pass struct {
	box    box
	across piece.Local
	// from and to are what it opens at the surface, as seen from the fence, and
	// width is the work's.
	from, to, width unit.Length
	// opens is the same in local coordinates.
	opens       span
	fence, down piece.Side
	depth       unit.Length
	slack       unit.Length // how far it may land from the design
}

// fenceWords are the settings from which the path follows: to the near edge of
// the cutter.
var fenceWords = []string{"fence to cutter edge", "guide to cutter edge", "blade to fence", "stop to cutter edge"}

const (
	fenceFar = "fence to cutter far edge"
	shoulder = "stop to blade far side" // and all from there to the end is cleared
	faced    = "faced fence to blade far side"
)

// sunk is how deep the cutter stands in the work: above a table, or lowered from
// the router's base.
func sunk(c plan.Setup) (plan.Setting, bool) {
	if s, ok := setting(c.Settings, "plunge depth"); ok {
		return s, true
	}
	return setting(c.Settings, "height")
}

// cleared returns the setting of a shoulder from which all is cleared towards
// the fence or stop.
func cleared(p plan.Placement) (plan.Setting, bool) {
	if s, ok := setting(p.Settings, shoulder); ok {
		return s, true
	}
	return setting(p.Settings, faced)
}

// isMachined reports whether the placement sets a fence.
func isMachined(p plan.Placement) bool {
	for _, w := range append([]string{fenceFar, shoulder, faced}, fenceWords...) {
		if _, ok := setting(p.Settings, w); ok {
			return true
		}
	}
	return false
}

// oneSetting is by how much cuts from opposite sides may differ and still share a
// setting: finer than fences and stops are set by hand. Common practice, no source.
const oneSetting = unit.Millimetre / 100

// passesOf works out the passes of a placement, or of its second half with the
// work turned end for end; false if work cannot lie as it says.
func (r *rehearsal) passesOf(m made) ([]pass, bool) {
	p := m.place
	down, fence, leads := p.Down, p.Fence, p.Leads
	if _, plunges := setting(m.card.Settings, "plunge depth"); plunges {
		down = down.Opposite() // the router stands on top
	}
	if m.turn {
		fence, leads = fence.Opposite(), leads.Opposite()
	}
	d, _ := down.Axis()
	a, fenceHigh := fence.Axis()
	run, leadsHigh := leads.Axis()
	if down == "" || fence == "" || leads == "" || d == a || a == run || d == run || !handed(leads, fence, down) {
		return nil, false
	}
	size := stateOf(m.op.Before)
	height, ok := sunk(m.card)
	if !ok {
		return nil, false
	}
	depth := height.Figure.Nm
	mouth := m.card.CutterSize.Nm
	if m.card.CutterShape == "round-nose" {
		mouth = share.Groove{Radius: m.card.CutterSize.Nm / 2, Depth: depth}.Mouth()
	}
	cutter := m.card.CutterSize.Nm
	along := feed(p, size[run], mouth)
	if leadsHigh {
		along = span{size[run] - along.high, size[run] - along.low}
	}
	var out []pass
	if s, ok := cleared(p); ok {
		cutter, mouth = s.Figure.Nm, s.Figure.Nm // all of it, as if by one wide cutter
	}
	for _, edge := range edges(p, cutter) {
		if edge < 0 && !covered(p) {
			return nil, false // the fence would stand in the cutter
		}
		from := edge + cutter/2 - mouth/2
		one := pass{across: a, from: max(0, from), to: from + mouth, width: size[a], fence: fence, down: down, depth: depth, slack: unit.Micrometre}
		if m.turn {
			one.slack = oneSetting
		}
		one.box[d], one.box[a], one.box[run] = span{0, depth}, span{max(0, edge), edge + cutter}, along
		if _, high := down.Axis(); high {
			one.box[d] = span{size[d] - depth, size[d]}
		}
		if fenceHigh {
			one.box[a] = span{size[a] - one.box[a].high, size[a] - one.box[a].low}
		}
		one.opens = span{one.from, one.to}
		if fenceHigh {
			one.opens = span{size[a] - one.to, size[a] - one.from}
		}
		out = append(out, one)
	}
	return out, len(out) > 0
}

// covered reports whether the fence stands over part of the cutter.
func covered(p plan.Placement) bool {
	_, ok := setting(p.Settings, fenceFar)
	return ok
}

// edges lists the distances from the fence to the near edge of the cutter, path
// by path.
func edges(p plan.Placement, cutter unit.Length) []unit.Length {
	if _, ok := cleared(p); ok {
		return []unit.Length{0}
	}
	for _, w := range append([]string{fenceFar}, fenceWords...) {
		s, ok := setting(p.Settings, w)
		if !ok {
			continue
		}
		less := unit.Length(0)
		if w == fenceFar {
			less = cutter
		}
		if len(s.Passes) == 0 {
			return []unit.Length{s.Figure.Nm - less}
		}
		out := make([]unit.Length, len(s.Passes))
		for i, f := range s.Passes {
			out[i] = f.Nm - less
		}
		return out
	}
	return nil
}

// feed is the stretch that the cutter opens along the feed, seen from the side
// that leads: half of its mouth beyond its centre, which for a round nose let in
// shallow is less than its radius. The left stop halts the leading side with the cutter's centre that
// far behind it; the right stop holds the trailing side that far from the centre
// at the start. A plunge router on clamped work begins at the side that would lead,
// which is its left end, and is halted at the right stop.
func feed(p plan.Placement, run, mouth unit.Length) span {
	s := span{0, run}
	for _, w := range []string{"stop left", "left end to cutter at right stop"} {
		if left, ok := setting(p.Settings, w); ok {
			s.high = left.Figure.Nm + mouth/2
		}
	}
	for _, w := range []string{"stop right", "right end to cutter at left stop"} {
		if right, ok := setting(p.Settings, w); ok {
			s.low = run - right.Figure.Nm - mouth/2
		}
	}
	return s
}

// handed reports whether work can lie so: ahead, fence and down are the thumb,
// first and middle finger of the right hand, as at a router table fed from right
// to left with the fence behind.
func handed(ahead, fence, down piece.Side) bool {
	sign := func(s piece.Side) int {
		if _, high := s.Axis(); high {
			return 1
		}
		return -1
	}
	i, _ := ahead.Axis()
	j, _ := fence.Axis()
	even := 1
	if (int(i)+1)%3 != int(j) {
		even = -1
	}
	return sign(ahead)*sign(fence)*even == sign(down)
}
