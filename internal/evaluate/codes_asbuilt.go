package evaluate

import "scantling/internal/diag"

// Codes of what can be wrong with the as-built record. Each example yields exactly its
// code; a test of package evaluate runs them.
const (
	// CodeUnplaced: an entry of the as-built record that fits nothing now; it is not applied.
	//
	// Example is made by the test.
	CodeUnplaced diag.Code = "unplaced"

	// CodeAgain: an entry of the record that fits again after it did not for a while.
	//
	// Example is made by the test.
	CodeAgain diag.Code = "placed-again"

	// CodeCutLarge: a part was cut larger than it must be now.
	//
	// Example is made by the test.
	CodeCutLarge diag.Code = "cut-too-large"

	// CodeCutSmall: a part was cut smaller than it must be now.
	//
	// Example is made by the test.
	CodeCutSmall diag.Code = "cut-too-small"

	// CodeCutBesideReading: a part was cut before it was read how large it must be where it
	// goes, and the reading is another size.
	//
	// Example is made by the test.
	CodeCutBesideReading diag.Code = "cut-beside-reading"
)
