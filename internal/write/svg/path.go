package svg

import (
	"math"
	"strconv"
	"strings"

	"scantling/internal/page"
)

// number prints millimetres to a micrometre without trailing zeros. What is no
// number becomes 0: an svg element with a hole is better than one that no reader
// accepts.
func number(v float64) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return "0"
	}
	s := strconv.FormatFloat(v, 'f', 3, 64)
	s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	if s == "-0" || s == "" {
		return "0"
	}
	return s
}

// pathData writes a path as the value of the attribute d.
func pathData(p page.Path) string {
	var b strings.Builder
	put := func(verb string, points ...page.Point) {
		b.WriteString(verb)
		for i, q := range points {
			if i > 0 {
				b.WriteByte(' ')
			}
			b.WriteString(number(q.X) + " " + number(q.Y))
		}
	}
	var at, begin page.Point
	begun := false
	for _, g := range p {
		if !begun && g.Verb != page.MoveTo {
			continue
		}
		switch g.Verb {
		case page.MoveTo:
			put("M", g.To)
			begin, begun = g.To, true
		case page.LineTo:
			put("L", g.To)
		case page.CurveTo:
			put("C", g.C1, g.C2, g.To)
		case page.ArcTo:
			b.WriteString(arcData(g, at))
		case page.Close:
			b.WriteByte('Z')
			at = begin
			continue
		}
		at = g.To
	}
	return b.String()
}

// arcData writes an arc. One of more than half a circle is written as two, so
// that a whole circle, which ends where it starts, is drawn at all.
func arcData(g page.Segment, from page.Point) string {
	start, sweep := g.Sweep(from)
	r := from.Sub(g.Centre).Norm()
	flag := "1"
	if g.Left {
		flag, sweep = "0", -sweep
	}
	arc := func(to page.Point) string {
		return "A" + number(r) + " " + number(r) + " 0 0 " + flag + " " + number(to.X) + " " + number(to.Y)
	}
	if math.Abs(sweep) <= math.Pi {
		return arc(g.To)
	}
	half := start + float64(sweep/2)
	mid := g.Centre.Add(page.Point{X: float64(r * math.Cos(half)), Y: float64(r * math.Sin(half))})
	return arc(mid) + arc(g.To)
}

// escape makes text safe in elements and in attributes between double quotes.
func escape(s string) string {
	var b strings.Builder
	for _, r := range s {
		switch {
		case r == '&':
			b.WriteString("&amp;")
		case r == '<':
			b.WriteString("&lt;")
		case r == '>':
			b.WriteString("&gt;")
		case r == '"':
			b.WriteString("&quot;")
		case r == '\n' || r == '\t' || r == '\r':
			b.WriteByte(' ')
		case r < ' ' || r == 0xFFFE || r == 0xFFFF || r >= 0xD800 && r <= 0xDFFF:
			b.WriteRune('\uFFFD') // not allowed in XML 1.0
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}
