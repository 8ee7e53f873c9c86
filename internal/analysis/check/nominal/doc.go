// Package nominal judges whether cuts and parts go by what sheet goods really
// measure, and not by what they are called.
//
// Ply that is sold as 6 measures 5.6 or 5.8: a groove of 6 rattles. Parts of sheet
// goods must be drawn as thick as the shop's sheet measures; a groove, housing or
// rebate of a joint that takes a sheet must be as wide as that and a clearance; and
// a cut of the document's own whose width is the nominal size of a sheet in the
// piece is taken to be meant for it.
//
// Up to 0.3 mm of clearance is common practice without a source (rule of the house
// "sheet clearance"). A sheet that nobody measured is unknown: the standards allow
// it to be thinner or thicker.
package nominal
