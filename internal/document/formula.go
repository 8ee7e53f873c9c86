package document

import (
	"fmt"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
)

// MaxFormula is the longest formula in bytes that [ParseFormula] reads.
const MaxFormula = 4096

// ParseFormula reads one formula that stands alone, such as the value that a
// form gives for an input. It returns an error where the text is not one.
func ParseFormula(text string) (Expr, error) {
	if len(text) > MaxFormula {
		return nil, fmt.Errorf("the value is %d bytes long; at most %d are read", len(text), MaxFormula)
	}
	r := &reader{file: &File{Name: "value", Text: []byte(text)}, text: []byte(text), limits: DefaultLimits, lines: lineStarts([]byte(text))}
	if !r.measure() {
		return nil, fmt.Errorf("%q is nested too deeply or is not text", text)
	}
	e, faults := hclsyntax.ParseExpression([]byte(text), "value", hcl.InitialPos)
	if faults.HasErrors() {
		return nil, fmt.Errorf("%q is not a value that a document can hold", text)
	}
	out := r.formula(e)
	if len(r.diags) > 0 {
		return nil, fmt.Errorf("%q uses what the language leaves out", text)
	}
	return out, nil
}
