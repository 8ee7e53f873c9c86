// Package unit holds the quantities that the rest of Scantling counts in.
//
// In: text as a maker writes it ("18", "5 3/8 in", "1' 2 1/2\"", "2.4 m"; see
// [Parse]). Out: [Length], whole nanometres, and [Value], a typed exact quantity
// (length, angle, count, ratio, area, mass, force, money, time, humidity, text,
// or a list of these); and text again ([Show]), metric to a resolution or inches
// as reduced fractions, rounded towards the side that is asked for, in rows that
// add up as printed ([ShowRow]).
//
// One micrometre and one sixty-fourth of an inch (396 875 nm) are exact, so a
// document may mix millimetres and inches without a rounding between them. What
// is not exact is refused with its neighbours, never rounded in reading. A Value
// is an exact rational of at most 512 bits above and below its bar; it is
// rounded once, when it becomes a Length.
//
// Errors are typed ([ParseError], [OpError]): they carry a [Fault], the text or
// the two dimensions, and the two lengths that are nearest, so that others can
// tell them in any language.
//
// The package knows no wood, no document and no language.
package unit
