// Package unit holds the quantities that the rest of Scantling counts in.
//
// In: text as a maker writes it ("18", "5 3/8 in", "1' 2 1/2\"", "2.4 m").
// Out: [Length], whole nanometres, and [Value], a typed exact quantity
// (length, angle, count, ratio, area, mass, force, money, time, humidity, text,
// or a list of these); and text again, metric to a resolution or inches as
// reduced fractions, rounded towards the side that is asked for.
//
// One micrometre and one sixty-fourth of an inch (396 875 nm) are exact, so a
// document may mix millimetres and inches without a rounding between them. A
// Value is an exact rational; it is rounded once, when it becomes a Length.
//
// The package knows no wood, no document and no language.
package unit
