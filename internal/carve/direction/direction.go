package direction

import "scantling/internal/piece"

// ways are the words for the six ways along the piece's axes.
var ways = map[string]piece.Direction{
	"right": piece.ToRight, "left": piece.ToLeft, "back": piece.ToBack, "front": piece.ToFront, "up": piece.ToUp, "down": piece.ToDown,
}

// Way reads a word for a direction in which something runs: right, back, up and
// their opposites.
func Way(word string) (piece.Direction, bool) {
	d, ok := ways[word]
	return d, ok
}

var faces = map[string]piece.Direction{
	"right": piece.ToRight, "left": piece.ToLeft, "back": piece.ToBack, "front": piece.ToFront, "top": piece.ToUp, "bottom": piece.ToDown,
}

// Facing reads a word for a face of a part: a direction, as the left one of a pair
// has it, or, for a part of a pair, inside and outside. Hand is "left", "right" or
// empty.
func Facing(word, hand string) (piece.Direction, bool) {
	if hand != "" {
		switch word {
		case "inside":
			word = "right"
		case "outside":
			word = "left"
		}
	}
	d, ok := faces[word]
	if axis, _ := d.Axis(); ok && hand == "right" && axis == piece.Right {
		d = d.Opposite()
	}
	return d, ok
}

// Face reads a direction word: the axis and whether it is the low side.
func Face(word string) (axis piece.Axis, low, ok bool) {
	switch word {
	case "left", "right":
		return piece.Right, word == "left", true
	case "front", "back":
		return piece.Back, word == "front", true
	case "bottom", "top":
		return piece.Up, word == "bottom", true
	}
	return 0, false, false
}

// Low and High are the words for the two faces across each axis of the piece.
var (
	Low  = [3]string{"left", "front", "bottom"}
	High = [3]string{"right", "back", "top"}
)
