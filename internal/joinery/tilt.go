package joinery

import "scantling/internal/piece"

// sameTilt reports whether two parts are turned alike, so that they meet squarely
// as they are drawn.
func sameTilt(a, b *piece.Tilt) bool {
	for a != nil && b != nil {
		for i := range a.Through {
			if a.Through[i].Nm != b.Through[i].Nm {
				return false
			}
		}
		if a.About != b.About || a.Degrees != b.Degrees {
			return false
		}
		a, b = a.Then, b.Then
	}
	return a == nil && b == nil
}
