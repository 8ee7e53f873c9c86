package plan

// Supply is a glue or a finish that the piece is made with, and what is known of it.
type Supply struct {
	// Kind is "glue" or "finish"; Name is what the document calls it.
	Kind string `json:"kind"`
	Name string `json:"name"`
	// Water is a glue's class of resistance to water by EN 204, D1 to D4.
	Water string `json:"water,omitempty"`
	// Panels says that boards are glued up with it edge to edge.
	Panels  bool           `json:"panels,omitempty"`
	Figures []SupplyFigure `json:"figures"`
}

// SupplyFigure is one figure of a glue or finish with its range, source and status.
type SupplyFigure struct {
	// Word says what it is: "open", "closed", "clamp", "cure", "coldest", "warmest",
	// "light-wood", "dense-wood", "spread", "recoat", "light", "coverage", "coats",
	// "litres".
	Word string `json:"word"`
	Estimate
}
