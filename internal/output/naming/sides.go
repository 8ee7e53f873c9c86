package naming

import "scantling/internal/piece"

// Side returns the key of the words for a side of a part as it stands in the
// piece: "side.back edge", "side.inside face". Sides that look left or right are
// outside and inside where the part has a face that shows.
func Side(p piece.Part, s piece.Side) string {
	local, high := s.Axis()
	toward := p.Frame.Directions()[local]
	if !high {
		toward = toward.Opposite()
	}
	kind := [3]string{"end", "edge", "face"}[local]
	where := map[piece.Direction]string{
		piece.ToUp: "upper", piece.ToDown: "lower", piece.ToFront: "front", piece.ToBack: "back", piece.ToLeft: "left", piece.ToRight: "right",
	}[toward]
	if axis, _ := toward.Axis(); axis == piece.Right && p.Show != "" {
		switch toward {
		case p.Show:
			where = "outside"
		case p.Show.Opposite():
			where = "inside"
		}
	}
	if where == "" {
		return "side." + string(s)
	}
	return "side." + where + " " + kind
}
