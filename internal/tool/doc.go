// Package tool knows the machines of a small workshop and their cutters: what a
// machine can hold, how fast and how deep a cutter may go, which cutter makes a
// width.
//
// In: a maker's machines and cutters with sizes as unit.Length, workpiece sizes.
// Out: the limits that a workpiece breaks, speeds in revolutions per minute,
// depths of passes, choices of cutter; each with its source. What the maker's
// own machine manual says goes before every published figure.
//
// Exact: lengths and passes. Speeds come from published bands and are not
// interpolated: the more cautious row counts.
//
// Data: data/speeds.csv and data/machines.csv, a source and a status for each
// row.
//
// The package must not know species, parts or documents. Choosing a round-nose
// cutter for a rod needs the geometry of grooves and lives in package share.
//
// Glossary: a cutter is anything that turns and removes wood; a pass is one feed
// at one depth; the mark is the greatest speed printed on the cutter; the hands'
// distance is how near the cutter a hand may come.
package tool
