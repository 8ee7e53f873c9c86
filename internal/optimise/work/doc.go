// Package work counts what a search spends, so that a budget means the same on
// every machine.
//
// In: a context and a number of units. Out: a [Meter] that says whether the
// next piece of work may be done. One unit is about one step of an inner loop.
// A meter belongs to one goroutine; work that is done side by side gets meters
// of its own ([Meter.Split]), so the count does not depend on which runs first.
// No clock is read.
package work
