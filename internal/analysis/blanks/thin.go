package blanks

import (
	"scantling/internal/message"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// muchAway is how much thickness may be planed away without a word. Common
// practice, no source.
const muchAway = 10 * unit.Millimetre

// thin says what can be done where a part comes out of stock that is much thicker:
// saw it in two if the band saw takes it, or get thinner stock that the shop's list
// has; else how much is planed away. The plan counts on one part from each in any
// case.
func (d *deriver) thin(row plan.PartRow, s Stock, width unit.Length) []message.Message {
	away := s.Thickness - row.Thickness.Nm
	if s.Sheet || away <= muchAway {
		return nil
	}
	part, board := message.Length("part", row.Thickness.Nm), message.Length("board", s.Thickness)
	var out []message.Message
	// One face is trued, then each half planed on both.
	needs := 2*row.Thickness.Nm + d.Limits.ResawKerf + 3*d.Allowances.Planed.Nm
	if d.Limits.Resaw >= width && needs <= s.Thickness {
		out = append(out, message.New("blanks.resaw", part, board, message.Length("needs", needs), message.Length("kerf", d.Limits.ResawKerf)))
	} else {
		out = append(out, message.New("blanks.planed-away", part, board, message.Length("away", away)))
	}
	best := s
	for _, t := range d.Stock {
		if d.answers(row, t) && d.thick(row, t) && d.large(row, t) && t.Thickness < best.Thickness {
			best = t
		}
	}
	if best.ID != s.ID {
		out = append(out, message.New("blanks.thinner", message.Text("stock", best.ID), message.Length("thickness", best.Thickness)))
	}
	return out
}
