package analysis

import (
	"scantling/internal/diag"
	"scantling/internal/plan"
)

// Kind is what sort of answer an analysis gives.
type Kind string

// The kinds.
const (
	Derive Kind = "derive" // follows from what goes in
	Decide Kind = "decide" // an optimiser picks
	Judge  Kind = "judge"  // pass, fail, error or unknown
)

// Info is what is known of an analysis without running it.
type Info struct {
	// Name is a short name in plain words, unique in a list.
	Name string
	// Doc says in a sentence or more what question it answers.
	Doc  string
	Kind Kind
	// Requires are the analyses whose results it reads.
	Requires []Analysis
	// Solids says that it reads the shapes of the context.
	Solids bool
	// DespiteErrors says that it can work on a piece with errors.
	DespiteErrors bool
}

// Analysis is a declared analysis of any result. [Declare] makes the only ones.
type Analysis interface {
	// Info returns what was declared.
	Info() Info
	run(c *Context) diag.List
	findings(c *Context) []plan.Finding
}

// Of is an analysis with a result of type T.
type Of[T any] struct {
	info Info
	do   func(*Context) (T, diag.List)
}

// Check is an analysis that judges.
type Check = *Of[[]plan.Finding]

// Declare makes an analysis. The function must be pure: it reads the context and
// the results of what it requires, and writes nothing but the ledger.
func Declare[T any](info Info, do func(*Context) (T, diag.List)) *Of[T] {
	return &Of[T]{info, do}
}

// Info returns what was declared.
func (a *Of[T]) Info() Info { return a.info }

// Result returns what the analysis found; false if it has not run, or was left
// out because the piece has errors. An analysis may read only what it requires:
// reading anything else is our own mistake and panics.
func (a *Of[T]) Result(c *Context) (T, bool) {
	c.mayRead(a)
	r, ok := c.results[a].(T)
	return r, ok
}

// Get is Result without the question whether the analysis has run: the zero
// result if it has not.
func (a *Of[T]) Get(c *Context) T {
	r, _ := a.Result(c)
	return r
}

func (a *Of[T]) run(c *Context) diag.List {
	r, faults := a.do(c)
	c.results[a] = r
	return faults
}

func (a *Of[T]) findings(c *Context) []plan.Finding {
	f, _ := c.results[a].([]plan.Finding)
	return f
}
