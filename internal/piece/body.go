package piece

// Body is what a bought thing takes up in the piece, where it is fitted: a box by
// right, back and up, or a bar or a drum that fills it.
type Body struct {
	// Of is the piece of hardware that it belongs to, from 1 to its count, and Word
	// the catalogue's word for it: "leaf", "knuckle", "plate".
	Of     int       `json:"of"`
	Word   string    `json:"word"`
	Extent [3]Extent `json:"extent"`
	// Round says that it is round about its axis; the two other sizes are equal.
	Round bool `json:"round,omitempty"`
	Axis  Axis `json:"axis,omitempty"`
}
