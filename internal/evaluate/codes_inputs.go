package evaluate

import "scantling/internal/diag"

// Codes of what can be wrong with inputs and recipes. Each example yields exactly its
// code; a test of package evaluate runs them.
const (
	// CodeInputKind: an input that does not say what it is.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	input "deep" {
	//	  label = "Depth"
	//	}
	CodeInputKind diag.Code = "input-without-value"

	// CodeInputMissing: a recipe is used without a material that it needs.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	use "drawer" {
	//	  as = "tray"
	//	}
	CodeInputMissing diag.Code = "input-missing"

	// CodeInputRange: an input beyond its own bounds.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	input "deep" {
	//	  length = 500
	//	  from   = 100
	//	  to     = 400
	//	}
	CodeInputRange diag.Code = "input-out-of-range"

	// CodeInputChoice: an input that is none of its choices.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	input "timber" {
	//	  choice  = "chery"
	//	  choices = ["cherry", "hard maple"]
	//	}
	CodeInputChoice diag.Code = "input-not-a-choice"

	// CodeInputValue: a value from outside that is not one for the input.
	//
	// Example is made by the test.
	CodeInputValue diag.Code = "input-value"

	// CodeInputUnknown: a value from outside for an input that there is not.
	//
	// Example is made by the test.
	CodeInputUnknown diag.Code = "input-unknown"

	// CodeInputName: an input of a recipe is called like a word of "use".
	//
	// Example is made by the test.
	CodeInputName diag.Code = "input-name"

	// CodeNoInput: a recipe is given something that it does not ask for.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	use "drawer" {
	//	  as           = "tray"
	//	  front_timber = material.case
	//	  side_timber  = material.case
	//	  hihg         = 60
	//	}
	CodeNoInput diag.Code = "no-such-input"

	// CodeUseName: a recipe is repeated without a name.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	use "needle tray" {
	//	  repeat = 2
	//	  of     = material.case
	//	  holds  = contents.rods
	//	}
	CodeUseName diag.Code = "use-without-name"

	// CodeUnknownRecipe: a recipe that there is not.
	//
	// Example, added to evaluate/testdata/box.piece.hcl:
	//
	//	use "needle trays" {
	//	  as    = "tray"
	//	  of    = material.case
	//	  holds = contents.rods
	//	}
	CodeUnknownRecipe diag.Code = "unknown-recipe"

	// CodeRecipeDepth: recipes within recipes within recipes, without end.
	//
	// Example is made by the test.
	CodeRecipeDepth diag.Code = "recipes-too-deep"

	// CodeWrongDocument: a document of another kind than is wanted.
	//
	// Example:
	//
	//	scantling = 1
	//
	//	recipe "tray" {
	//	}
	CodeWrongDocument diag.Code = "wrong-document"
)
