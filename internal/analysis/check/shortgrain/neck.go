package shortgrain

import (
	"scantling/internal/analysis/check/verdict"
	"scantling/internal/diag"
	"scantling/internal/geom/polygon"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// neck judges the narrowest place of a part, along the grain, for what hangs on it
// across the grain.
func (j *judge) neck(p *piece.Part) {
	worst := stretch{wide: p.Length.Nm.Millimetres(), hangs: p.Width.Nm.Millimetres() / 2}
	if p.Form == piece.Outline {
		profile := profileOf(p)
		if len(profile.Outer) > polygon.MaxVertices {
			j.out.Unknown(CodeNeckUnknown, message.New("check.short-grain.unknown", message.Text("mark", j.out.Mark(p.Address)), message.Count("most", polygon.MaxVertices)), p.Address, p.Where, p.Address)
			return
		}
		worst = weakest(profile)
	}
	j.out.Judged()
	limit := j.out.Limit("neck", verdict.Practice("check.neck", unit.FromMillimetres(worst.hangs/2)))
	is := p.Length
	if p.Form == piece.Outline {
		is = j.Ledger.Leaf(string(p.Address)+".neck", unit.FromMillimetres(worst.wide), ledger.Derived, "the part's outline, gone through along the grain")
	}
	if is.Nm >= limit.Nm || worst.hangs <= 0 {
		return
	}
	hangs := j.Ledger.Leaf(string(p.Address)+".hangs", unit.FromMillimetres(worst.hangs), ledger.Derived, "the part, gone through along the grain")
	j.out.Add(plan.Finding{
		Status: plan.Fail, Severity: diag.Warning, Code: CodeNeck, Address: p.Address, Where: p.Where,
		Text: message.New("check.short-grain.neck", message.Text("mark", j.out.Mark(p.Address)), message.LengthRounded("is", is.Nm, unit.Down),
			message.LengthRounded("limit", limit.Nm, unit.Up), message.LengthRounded("hangs", unit.FromMillimetres(worst.hangs), unit.Nearest)),
		Is: &is, Limit: &limit.Figure, Source: limit.Source,
		Figures: j.ratios(string(p.Address)+".grain to reach", is, hangs, limit), Remedy: j.wider(p, is, limit),
	}, p.Address)
}

// wider is the remedy of a plain board: longer along its grain.
func (j *judge) wider(p *piece.Part, is piece.Figure, limit verdict.Limit) []diag.Remedy {
	if p.Form == piece.Outline {
		return nil
	}
	return []diag.Remedy{j.out.Rewrite(message.New("check.short-grain.wider", message.LengthRounded("to", limit.Nm, unit.Up)), is, limit.Nm, unit.Up)}
}

func profileOf(p *piece.Part) polygon.Profile {
	loop := func(points []piece.OutlinePoint) polygon.Loop {
		var out polygon.Loop
		for _, q := range points {
			out = append(out, polygon.Vertex{P2: polygon.P2{X: q.Along.Nm.Millimetres(), Y: q.Across.Nm.Millimetres()}, Bulge: q.Bulge})
		}
		return out
	}
	profile := polygon.Profile{Outer: loop(p.Outline)}
	for _, h := range p.Holes {
		profile.Holes = append(profile.Holes, loop(h))
	}
	return profile
}

// stretch is a line of wood along the grain and how far the lesser of the two sides
// that it holds together reaches from it, across the grain; millimetres.
type stretch struct{ wide, hangs float64 }

// levels is how many lines along the grain an outline is gone through by.
const levels = 160

// line is one run of wood on one of the lines.
type line struct{ y, from, to float64 }

// weakest goes through an outline by lines along the grain and returns the one whose
// wood is least for what hangs on it. Lines whose loss leaves the part in one piece
// are passed over: what hangs there hangs on both ends.
func weakest(p polygon.Profile) stretch {
	low, high := p.Bounds()
	step := (high.Y - low.Y) / levels
	if step <= 0 {
		return stretch{}
	}
	var lines []line
	first := make([]int, levels+1)
	for k := range levels {
		first[k] = len(lines)
		y := low.Y + float64(step*(float64(k)+0.5))
		at := p.Crossings(polygon.P2{X: 0, Y: y}, polygon.P2{X: 1})
		for i := 0; i+1 < len(at); i += 2 {
			if at[i+1].T > at[i].T {
				lines = append(lines, line{y, at[i].T, at[i+1].T})
			}
		}
	}
	first[levels] = len(lines)
	next := neighbours(lines, first)
	worst, found := stretch{}, false
	for i, l := range lines {
		hangs, cuts := parted(lines, next, i)
		s := stretch{wide: l.to - l.from, hangs: hangs}
		if cuts && (!found || float64(s.wide*worst.hangs) < float64(worst.wide*s.hangs)) {
			worst, found = s, true
		}
	}
	return worst
}

// neighbours lists the runs that touch each run on the lines beside its own.
func neighbours(lines []line, first []int) [][]int {
	out := make([][]int, len(lines))
	for k := range levels - 1 {
		for i := first[k]; i < first[k+1]; i++ {
			for n := first[k+1]; n < first[k+2]; n++ {
				if lines[i].from < lines[n].to && lines[n].from < lines[i].to {
					out[i], out[n] = append(out[i], n), append(out[n], i)
				}
			}
		}
	}
	return out
}

// parted takes one run away: whether that parts what is above it from what is below,
// and how far the lesser of the two reaches from it.
func parted(lines []line, next [][]int, at int) (float64, bool) {
	reach := func(above bool) (float64, bool) {
		seen := map[int]bool{at: true}
		var todo []int
		for _, n := range next[at] {
			if lines[n].y > lines[at].y == above {
				todo, seen[n] = append(todo, n), true
			}
		}
		far := 0.0
		for len(todo) > 0 {
			i := todo[len(todo)-1]
			todo = todo[:len(todo)-1]
			far = max(far, lines[i].y-lines[at].y, lines[at].y-lines[i].y)
			for _, n := range next[i] {
				if n == at {
					continue
				}
				if !seen[n] {
					todo, seen[n] = append(todo, n), true
				}
			}
		}
		for _, n := range next[at] {
			if lines[n].y > lines[at].y != above && seen[n] {
				return 0, false // the other side is reached some other way
			}
		}
		return far, far > 0
	}
	above, ok := reach(true)
	below, both := reach(false)
	return min(above, below), ok && both
}
