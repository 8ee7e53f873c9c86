// Package tape gives the sizes of a plan as they are read off a tape: in fractions of
// an inch what goes into something is rounded down, what takes something up, and rows
// still add up as printed.
//
// In: a plan, whose part list says what each size does, and how lengths are shown. Out:
// lengths on the step of the tape. Metric sizes stay as they are, since a metric tape is
// read as finely as they are shown. Nothing is worked out here but the rounding.
package tape
