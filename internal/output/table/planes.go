package table

import (
	"math"
	"strings"

	"scantling/internal/message"
	"scantling/internal/output/naming"
	"scantling/internal/piece"
)

// slice is the row of a plane: the side that it takes off, from where to where it
// falls, how deep it comes in, at what angle from square and where it is deepest.
func (b *builder) slice(letter, kind string, part piece.Part, s *piece.Slice) {
	off, _ := s.Off.Axis()
	var from, places, deep, runs []string
	k := 0
	for axis := range piece.Local(3) {
		if axis == off {
			continue
		}
		drop, over := (s.At[k+1].Nm - s.At[0].Nm).Abs(), (s.To[k].Nm - s.From[k].Nm).Abs()
		if drop > 0 && over > 0 {
			low, high := min(s.From[k].Nm, s.To[k].Nm), max(s.From[k].Nm, s.To[k].Nm)
			from = append(from, b.side(piece.SideOf(axis, false)))
			places = append(places, b.speech.Figure(low)+" – "+b.speech.Figure(high))
			deep = append(deep, b.speech.Figure(drop))
			degrees := math.Round(math.Atan2(drop.Millimetres(), over.Millimetres())*1800/math.Pi) / 10
			runs = append(runs, b.say("runs.lean", message.Ratio("angle", degrees), message.Text("side", b.say(naming.Side(part, piece.SideOf(axis, s.To[k].Nm > s.From[k].Nm))))))
		}
		k++
	}
	b.row(letter, kind, b.say(naming.Side(part, s.Off)), strings.Join(from, " · "), strings.Join(places, " · "), "", strings.Join(deep, " · "), strings.Join(runs, " · "), "")
}

// pocket is the row of a cut within a line: its greatest extent both ways, and how
// many corners it has; the drawing shows the rest.
func (b *builder) pocket(letter, kind string, part piece.Part, p *piece.Pocket) {
	low, high := naming.Limits(&part, piece.Cut{Pocket: p})
	var from, places []string
	for _, axis := range p.Open.Cross() {
		from = append(from, b.side(piece.SideOf(axis, false)))
		places = append(places, b.speech.Figure(low[axis])+" – "+b.speech.Figure(high[axis]))
	}
	deep := b.length(p.Depth)
	if p.Through {
		deep = b.say("runs.through")
	}
	b.row(letter, kind, b.say(naming.Side(part, p.Open)), strings.Join(from, " · "), strings.Join(places, " · "), "", deep, b.say("runs.outline", message.Count("corners", len(p.Outline))), "")
}

// centre names the two sides that a hole's centre is measured from.
func (b *builder) centre(open piece.Side) string {
	var from []string
	for _, axis := range open.Cross() {
		from = append(from, b.side(piece.SideOf(axis, false)))
	}
	return strings.Join(from, " · ")
}

// mouth says of a hole how its mouth is widened.
func (b *builder) mouth(s *piece.Sink) string {
	switch {
	case s == nil:
		return ""
	case s.Flat:
		return b.say("runs.bored", message.Length("diameter", s.Diameter.Nm), message.Length("depth", s.Depth.Nm))
	}
	return b.say("runs.sunk", message.Length("diameter", s.Diameter.Nm))
}
