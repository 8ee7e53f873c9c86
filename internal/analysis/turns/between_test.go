package turns

import (
	"slices"
	"testing"

	"scantling/internal/address"
	"scantling/internal/piece"
)

// TestReadBeforeGlueUp: a part that waits for its own reading does not keep the reading
// waiting, nor does the case stand before it is taken; boards are read first whatever
// stands first in the document; a partner that waits is waited for.
func TestReadBeforeGlueUp(t *testing.T) {
	part := func(name string, after ...address.Address) piece.Part {
		return piece.Part{Address: address.Address(name), Group: "case", CutAfter: after}
	}
	for name, c := range map[string]struct {
		take  []string
		sides []address.Address
		want  []Event
	}{
		"length":            {[]string{"length"}, nil, []Event{{Measure: "measure.boards"}, {Measure: "measure.divider"}, {Group: "case"}}},
		"a partner waits":   {[]string{"length"}, []address.Address{"measure.boards"}, []Event{{Measure: "measure.boards"}, {Measure: "measure.divider"}, {Group: "case"}}},
		"thickness, planed": {[]string{"thickness"}, nil, []Event{{Measure: "measure.divider"}, {Measure: "measure.boards"}, {Group: "case"}}},
	} {
		p := &piece.Piece{
			Groups: []piece.Group{{Address: "case"}},
			Parts:  []piece.Part{part("case.side", c.sides...), part("case.top"), part("case.divider", "measure.divider")},
			Joints: []piece.Joint{{A: "case.top", B: "case.side"}, {A: "case.divider", B: "case.side"}},
			Measures: []piece.Measure{
				{Address: "measure.divider", Of: []address.Address{"case.divider"}, Take: c.take},
				{Address: "measure.boards", Of: []address.Address{"case.top"}, Take: []string{"thickness"}},
			},
		}
		if got := Order(p); !slices.Equal(got, c.want) {
			t.Errorf("%s: %+v", name, got)
		}
	}
}
