package unit

import "fmt"

// Fault says in one word what was wrong with a text or a sum. It is meant for
// programs: the evaluator turns it into a diagnostic.
type Fault string

// What can be wrong with a text that should be a quantity ([ParseError]).
const (
	FaultEmpty        Fault = "empty"               // nothing but space
	FaultTooLong      Fault = "too-long"            // more than MaxText bytes
	FaultNotText      Fault = "not-text"            // not valid UTF-8
	FaultUnexpected   Fault = "unexpected"          // Word should not stand where it does
	FaultNoNumber     Fault = "no-number"           // no number where one should stand
	FaultTwoNumbers   Fault = "two-numbers"         // two numbers beside each other, as "1 200"
	FaultNoughtBelow  Fault = "nought-below"        // a fraction with nought below its bar
	FaultImproper     Fault = "fraction-above-one"  // 5 9/8: the fraction after a whole number is not below one
	FaultComma        Fault = "ambiguous-comma"     // 1,500: one and a half, or fifteen hundred?
	FaultFractionUnit Fault = "fraction-needs-unit" // 3/4 where a bare number is millimetres
	FaultNeedsUnit    Fault = "needs-unit"          // a bare number where there is no unit for it
	FaultUnknownUnit  Fault = "unknown-unit"        // Word is no unit that we know
	FaultNotExact     Fault = "not-exact"           // no whole number of nanometres; Low and High are beside it
	FaultTooLarge     Fault = "too-large"           // beyond MaxLength, or more digits than are kept
	FaultWrongKind    Fault = "wrong-kind"          // a quantity, but not of the dimension asked for
)

// What can be wrong with a sum ([OpError]); FaultTooLarge and FaultNeedsUnit too.
const (
	FaultDimensions Fault = "dimensions"  // these two do not go together
	FaultByNought   Fault = "by-nought"   // divided by nought
	FaultNotWhole   Fault = "not-whole"   // a count that is not a whole number
	FaultNotANumber Fault = "not-numeric" // a text that is no quantity, a truth or a list
)

// ParseError tells why a text is not the quantity that it should be.
type ParseError struct {
	Fault Fault
	Text  string // what was read, shortened where it was too long
	Word  string // the part of it that is at fault, if one can be named
	At    int    // the byte at which that part starts
	// Low and High are the exact lengths on either side where Fault is
	// FaultNotExact: sixty-fourths for inches and feet, nanometres otherwise.
	Low, High Length
	// Got is the dimension that was found where Fault is FaultWrongKind.
	Got Dim
}

// Error tells what is wrong in plain English, for logs and tests; people are
// told by a diagnostic made from the fields.
func (e *ParseError) Error() string {
	switch e.Fault {
	case FaultNotExact:
		return fmt.Sprintf("%q is not a whole number of nanometres: it lies between %s and %s", e.Text, both(e.Low), both(e.High))
	case FaultTooLong:
		return fmt.Sprintf("%q… is longer than %d bytes", e.Text, MaxText)
	case FaultTooLarge:
		return fmt.Sprintf("%q is beyond the greatest length, %s mm", e.Text, exactMetric(MaxLength))
	case FaultComma:
		return fmt.Sprintf("%q: the comma may be a decimal comma or part thousands; write a point, or no comma", e.Text)
	case FaultFractionUnit:
		return fmt.Sprintf("%q: a fraction needs its unit here, as in %s in", e.Text, e.Text)
	case FaultWrongKind:
		return fmt.Sprintf("%q is of dimension %s", e.Text, e.Got)
	}
	if e.Word != "" {
		return fmt.Sprintf("%q: %s at byte %d, %q", e.Text, e.Fault, e.At, e.Word)
	}
	return fmt.Sprintf("%q: %s", e.Text, e.Fault)
}

func both(l Length) string {
	return exactMetric(l) + " mm (" + Show{System: Inches, Denominator: 64}.Format(l) + " in)"
}

// OpError tells why an operation could not be done on values.
type OpError struct {
	Fault Fault
	Op    string // "+", "-", "*", "/", "compare", "round", or "as" for a conversion
	A, B  Dim    // of the operands; B is what was asked for where Op is "as"
	// Text is the text that is no quantity, with Cause, where one was met.
	Text  string
	Cause *ParseError
}

// Error tells what is wrong in plain English, for logs and tests.
func (e *OpError) Error() string {
	if e.Cause != nil {
		return e.Cause.Error()
	}
	if e.Op == "as" {
		return fmt.Sprintf("%s does not become %s: %s", e.A, e.B, e.Fault)
	}
	return fmt.Sprintf("%s %s %s: %s", e.A, e.Op, e.B, e.Fault)
}

// Unwrap returns the cause, if there is one.
func (e *OpError) Unwrap() error {
	if e.Cause == nil {
		return nil
	}
	return e.Cause
}
