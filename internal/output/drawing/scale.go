package drawing

import "strconv"

// Scale is a drawing's scale: one millimetre of wood is 1/Down on paper, or Up
// millimetres where the drawing is enlarged.
type Scale struct{ Up, Down int }

// scales are those in use, largest first (ISO 5455, from memory, with 1:3, 1:4,
// 1:8 and 1:16 that inch rules carry).
var scales = []Scale{{5, 1}, {2, 1}, {1, 1}, {1, 2}, {1, 3}, {1, 4}, {1, 5}, {1, 8}, {1, 10}, {1, 16}, {1, 20}, {1, 32}, {1, 50}, {1, 100}}

// Factor is millimetres on paper for one of wood.
func (s Scale) Factor() float64 { return float64(s.Up) / float64(s.Down) }

// String prints the scale as on a title block: "1 : 2".
func (s Scale) String() string { return strconv.Itoa(s.Up) + " : " + strconv.Itoa(s.Down) }

// fitting returns the largest scale, at most most, at which width × height of
// wood goes into room of that width and height on paper.
func fitting(width, height, roomWidth, roomHeight float64, most Scale) Scale {
	for _, s := range scales {
		if f := s.Factor(); f <= most.Factor() && float64(width*f) <= roomWidth && float64(height*f) <= roomHeight {
			return s
		}
	}
	return scales[len(scales)-1]
}
