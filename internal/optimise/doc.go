// Package optimise is the cutting engine: it says which stock to use and how to
// cut it so that all parts come out at the least cost, and proves how close
// that is to the best possible.
//
// In: a [problem.Problem] and a [problem.Budget]. Out: a [problem.Answer]:
// trees of guillotine cuts, cost, bound and what proves it, status, work.
// Lengths are exact; a bound is called proved only after a check in whole
// numbers. The answer depends on the problem and the budget alone, not on the
// machine, the time or the number of workers, unless its status is stopped.
//
// [boards] and [sheets] hold the methods; this package is the door. It knows no
// wood beyond stock, part, kerf, trim and grain.
package optimise
