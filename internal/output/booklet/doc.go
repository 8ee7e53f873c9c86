// Package booklet composes the plan that somebody else can build from.
//
// In: a plan, its solids, words, a paper. Out: a [page.Document]: cover view and
// who it is for, cautions, what to buy, the staged list, cutting diagrams, a
// dimensioned drawing with a table of cuts for each unique part, set-up cards,
// numbered steps with the cautions where they belong, what to measure, where the
// figures come from.
//
// Every figure is the plan's own, put into the reader's units; the package
// computes none. Every mark in the list stands in a drawing and in a step; tests
// hold that, and that nothing overlaps or leaves the margins.
package booklet
