// Package booklet composes the plan that somebody else can build from.
//
// In: a plan, its solids, words, a paper. Out: a [page.Document]: cover view and
// the choices it is made for, general cautions and how to read, views, section
// and what is taken apart, joints, what to buy and what it holds, the staged list,
// sums that close, cutting diagrams, a dimensioned drawing with a table of cuts
// for each unique part, set-up cards, numbered steps, forms to write readings
// into, findings, care.
//
// The general cautions stand once in front and one line opens every card; what
// belongs to one kind of work stands on its card, and a sign at the step leads
// there.
//
// Every figure is the plan's own, put into the reader's units; printed sums are
// rounded so that they add up as printed. Every mark in the list stands in a drawing and in a step; tests
// hold that, and that nothing overlaps or leaves the margins.
package booklet
