package booklet

import (
	"scantling/internal/message"
	"scantling/internal/output/naming"
	"scantling/internal/piece"
	"scantling/internal/plan"
)

// sides says in the maker's words which end, edge and face the drawing measures
// from.
func (c *composer) sides(row plan.PartRow) string {
	part, ok := c.part(row.Members[0])
	if !ok {
		return ""
	}
	side := func(name string, s piece.Side) message.Arg { return message.Word(name, naming.Side(part, s)) }
	text := c.say("booklet.part-sides", side("end", piece.EndLow), side("edge", piece.EdgeLow), side("face", piece.FaceLow))
	if c.bothHands(row) {
		text += " " + c.say("booklet.part-turned")
	}
	return text
}

// bothHands reports whether a row holds left and right parts that are one piece
// turned round, so that what the drawing calls its sides holds for one hand only.
func (c *composer) bothHands(row plan.PartRow) bool {
	hands := map[string]bool{}
	for _, m := range row.Members {
		if part, ok := c.part(m); ok && part.Hand != "" {
			hands[part.Hand] = true
		}
	}
	return len(hands) > 1
}
