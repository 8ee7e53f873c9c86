package joinery

import "scantling/internal/diag"

// Codes of tenons, bridles and parts that stand at an angle.
const (
	// CodeTenon: a tenon, a bridle or a loose tenon that its parts have no room for; a
	// warning where it leaves too little wood.
	CodeTenon diag.Code = "joint-tenon"

	// CodeTilted: the parts of a joint are turned against each other. Evaluation turns
	// no parts yet: it comes from pieces that were not evaluated.
	CodeTilted diag.Code = "joint-tilted"
)
