// Package font holds the embedded faces and lays one line of text out.
//
// In: a weight and a string. Out: a [Line] of pieces (runs of glyphs, drawn
// signs, the bars of fractions) placed in em along a baseline, with its width
// and its true ink box. Page, PDF and SVG all draw these pieces, so that a
// fraction looks the same everywhere.
//
// Units: em, that is, multiples of the type size. Frame: origin on the
// baseline at the start of the text, X to the right, Y down.
//
// The rules of the line:
//   - Digits are tabular, so that columns of figures stand under each other.
//   - Digits, U+2044 FRACTION SLASH, digits is a fraction: numerator over a bar
//     over denominator, each at [FractionSize] of the text, within the height
//     of the line. The vulgar fractions (½ and its kin) and raised and lowered
//     digits (¹³⁄₆₄) are drawn the same way.
//     A space between a whole number and its fraction narrows and never breaks.
//   - Signs that the faces lack (⌀ → ☐ ✓ ⚠ ■ ▲ ● ′ ″ and others, see [HasSign])
//     are drawn as outlines. Any other missing character is drawn as an empty
//     box, never left out silently.
//
// Exact: advances and boxes are whole font units (1/1000 em) as in the face.
// There is no shaping beyond pair kerning: no ligatures and no scripts that
// need them. The faces are Atkinson Hyperlegible Next, Regular and Bold,
// under the SIL Open Font License 1.1 (data/OFL.txt), unmodified.
//
// The package knows no page and no file format other than TrueType.
package font
