package document

import "scantling/internal/diag"

// Codes of what can be wrong with the writing of a document. Each example
// yields exactly its code; a test runs them.
const (
	// CodeTooLong: the document has more bytes than are read.
	//
	// Example is made by the test.
	CodeTooLong diag.Code = "document-too-long"

	// CodeTooDeep: brackets, signs or choices lie too deep within each other.
	//
	// Example is made by the test.
	CodeTooDeep diag.Code = "nested-too-deep"

	// CodeTooMany: more blocks, attributes, items or formulas than are read.
	//
	// Example is made by the test.
	CodeTooMany diag.Code = "too-many"

	// CodeNotText: a byte that is not UTF-8, or a nought.
	//
	// Example is made by the test.
	CodeNotText diag.Code = "not-text"

	// CodeVersionMissing: the line "scantling = 1" is not there.
	//
	// Example:
	//
	//	piece "Box" {
	//	}
	CodeVersionMissing diag.Code = "version-missing"

	// CodeVersionNewer: the document is written for a later edition of the language.
	//
	// Example:
	//
	//	scantling = 2
	//
	//	piece "Box" {
	//	}
	CodeVersionNewer diag.Code = "version-newer"

	// CodeVersionUnreadable: the version is not a whole number.
	//
	// Example:
	//
	//	scantling = "one"
	//
	//	piece "Box" {
	//	}
	CodeVersionUnreadable diag.Code = "version-unreadable"

	// CodeOutside: an attribute stands outside all blocks.
	//
	// Example:
	//
	//	scantling = 1
	//
	//	thickness = 14
	//
	//	piece "Box" {
	//	}
	CodeOutside diag.Code = "outside-all-blocks"

	// CodeNoHead: no block says whether this is a piece, a recipe, a shop or choices.
	//
	// Example:
	//
	//	scantling = 1
	CodeNoHead diag.Code = "kind-missing"

	// CodeTwoHeads: the document says twice what it is.
	//
	// Example:
	//
	//	scantling = 1
	//
	//	piece "Box" {
	//	}
	//
	//	piece "Chest" {
	//	}
	CodeTwoHeads diag.Code = "kind-twice"

	// CodeUnknownBlock: a word that starts no block here.
	//
	// Example:
	//
	//	scantling = 1
	//
	//	piece "Box" {
	//	}
	//
	//	materiel "case" {
	//	  asks = "cherry board"
	//	}
	CodeUnknownBlock diag.Code = "unknown-block"

	// CodeUnknownAttribute: a name that this block does not take.
	//
	// Example:
	//
	//	scantling = 1
	//
	//	piece "Box" {
	//	  unit = "mm"
	//	}
	CodeUnknownAttribute diag.Code = "unknown-attribute"

	// CodeLabels: a block has too few or too many names behind its word.
	//
	// Example:
	//
	//	scantling = 1
	//
	//	piece "Box" {
	//	}
	//
	//	material "case" "side" {
	//	  asks = "cherry board"
	//	}
	CodeLabels diag.Code = "names-of-block"

	// CodeTwice: the same thing is said twice in one place.
	//
	// Example:
	//
	//	scantling = 1
	//
	//	piece "Box" {
	//	  about = "A box."
	//	  about = "A larger box."
	//	}
	CodeTwice diag.Code = "said-twice"

	// CodeUnsupported: a construction that the language leaves out.
	//
	// Example:
	//
	//	scantling = 1
	//
	//	piece "Box" {
	//	}
	//
	//	sizes {
	//	  doubled = [for x in [1, 2] : x * 2]
	//	}
	CodeUnsupported diag.Code = "left-out-of-the-language"

	// CodeBareUnit: a length with its unit stands without quotes.
	//
	// Example:
	//
	//	scantling = 1
	//
	//	piece "Box" {
	//	}
	//
	//	sizes {
	//	  high = 18mm
	//	}
	CodeBareUnit diag.Code = "unit-without-quotes"

	// CodeNotClosed: a bracket, a brace or a quote is not closed.
	//
	// Example:
	//
	//	scantling = 1
	//
	//	piece "Box" {
	//	}
	//
	//	sizes {
	//	  high = (2 + 3
	//	}
	CodeNotClosed diag.Code = "not-closed"

	// CodeNotABlock: neither a block nor an attribute.
	//
	// Example:
	//
	//	scantling = 1
	//
	//	piece "Box" {
	//	}
	//
	//	sizes {
	//	  high
	//	}
	CodeNotABlock diag.Code = "not-a-line"

	// CodeNotAFormula: what stands behind the equals sign is not a formula.
	//
	// Example:
	//
	//	scantling = 1
	//
	//	piece "Box" {
	//	}
	//
	//	sizes {
	//	  high = 1 +
	//	}
	CodeNotAFormula diag.Code = "not-a-formula"
)
