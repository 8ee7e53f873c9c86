package formula

import "scantling/internal/diag"

// Codes of what can be wrong with a formula. Each example yields exactly its
// code; a test runs them.
const (
	// CodeKinds: two values that do not go together, as a count and a length.
	//
	// Example:
	//
	//	scantling = 1
	//
	//	piece "Box" {
	//	}
	//
	//	input "drawers" {
	//	  count = 3
	//	}
	//
	//	sizes {
	//	  high = input.drawers + "30 mm"
	//	}
	CodeKinds diag.Code = "kinds-do-not-go-together"

	// CodeWrongKind: a value of one kind where another is wanted.
	//
	// Example:
	//
	//	scantling = 1
	//
	//	piece "Box" {
	//	}
	//
	//	require "size" {
	//	  that    = 12
	//	  message = "Twelve is not yes or no."
	//	}
	CodeWrongKind diag.Code = "wrong-kind"

	// CodeNotALength: a text stands where a length should, and is none.
	//
	// Example:
	//
	//	scantling = 1
	//
	//	piece "Box" {
	//	}
	//
	//	sizes {
	//	  high = "18 mn" + 2
	//	}
	CodeNotALength diag.Code = "not-a-length"

	// CodeByNought: divided by nought, or rounded to a step of nought.
	//
	// Example:
	//
	//	scantling = 1
	//
	//	piece "Box" {
	//	}
	//
	//	sizes {
	//	  high = 12 / 0
	//	}
	CodeByNought diag.Code = "divided-by-nought"

	// CodeTooLarge: a length beyond a kilometre, or a text beyond what is kept.
	//
	// Example:
	//
	//	scantling = 1
	//
	//	piece "Box" {
	//	}
	//
	//	contents "rods" {
	//	  rod    = [4]
	//	  length = "900 m" * 2
	//	}
	CodeTooLarge diag.Code = "too-large"

	// CodeCountRange: a count outside what makes sense there.
	//
	// Example:
	//
	//	scantling = 1
	//
	//	piece "Box" {
	//	}
	//
	//	group "bay" {
	//	  repeat = 0 - 2
	//	}
	CodeCountRange diag.Code = "count-out-of-range"

	// CodeUnknownFunction: a function that there is not.
	//
	// Example:
	//
	//	scantling = 1
	//
	//	piece "Box" {
	//	}
	//
	//	sizes {
	//	  high = maximum(12, 14)
	//	}
	CodeUnknownFunction diag.Code = "unknown-function"

	// CodeArguments: too few or too many arguments.
	//
	// Example:
	//
	//	scantling = 1
	//
	//	piece "Box" {
	//	}
	//
	//	sizes {
	//	  high = round(12, 1, 2)
	//	}
	CodeArguments diag.Code = "arguments"

	// CodeIndex: a number beyond the end of a list; lists count from 1.
	//
	// Example:
	//
	//	scantling = 1
	//
	//	piece "Box" {
	//	}
	//
	//	sizes {
	//	  all  = [12, 14]
	//	  high = all[0]
	//	}
	CodeIndex diag.Code = "beyond-the-list"

	// CodeSum: arithmetic that the ledger refuses.
	//
	// No document is known that comes to it: what it would refuse is reported as
	// one of the other codes before.
	CodeSum diag.Code = "sum-refused"

	// CodeTooMuch: more formulas to work out than are worked out.
	//
	// Example is made by the test.
	CodeTooMuch diag.Code = "too-much-to-work-out"
)
