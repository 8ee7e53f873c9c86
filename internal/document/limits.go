package document

// Limits bound what is read of one document. The zero Limits are [DefaultLimits].
type Limits struct {
	Bytes      int // of the text
	Depth      int // of brackets, braces and texts within each other
	Blocks     int // in all
	Attributes int // in all
	Items      int // of one list
	Formulas   int // nodes of all formulas
	Faults     int // diagnostics that are reported before reading stops
}

// DefaultLimits are generous for furniture: a piece of 3 000 parts written out
// one by one stays below half of each.
var DefaultLimits = Limits{
	Bytes:      2 << 20,
	Depth:      64,
	Blocks:     20_000,
	Attributes: 200_000,
	Items:      4_096,
	Formulas:   1_000_000,
	Faults:     200,
}

// Work counts what reading took.
type Work struct {
	Bytes, Tokens, Blocks, Attributes, Formulas int
}

func (l Limits) orDefault() Limits {
	if l == (Limits{}) {
		return DefaultLimits
	}
	return l
}
