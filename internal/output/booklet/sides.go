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
	return c.say("booklet.part-sides", side("end", piece.EndLow), side("edge", piece.EdgeLow), side("face", piece.FaceLow))
}
