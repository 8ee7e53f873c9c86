// Package hardware knows what is bought to hold or to work a piece: pins, screws,
// dowels, knobs, turn-buttons and hinges, with the sizes that matter to the wood.
//
// In: names and sizes as a document or a shop says them. Out: fasteners and
// fittings with the holes and recesses that they need.
//
// Lengths are unit.Length; holes are exact, rounded to a tenth of a millimetre
// where a drill is chosen by rule.
//
// Data: the tables in data/, a source and a status for each row; most are usual
// trade sizes quoted without a source having been seen, so that a fitting in hand
// should be measured and stated in the shop document.
//
// The package must not know species, parts or documents. What a screw or nail
// holds is a question of strength and stands elsewhere.
//
// Glossary: the root is the core of a screw under its thread; a lead hole is
// drilled for the thread, a clearance hole lets the shank through.
package hardware
