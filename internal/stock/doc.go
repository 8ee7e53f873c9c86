// Package stock knows what timber and sheets are bought as: boards and sheets
// with what they really measure, the merchants' sizes, units and prices, and how
// much of a board is left when it is planed.
//
// In: a rack of boards and sheets as the maker measured them, nominal names.
// Out: actual sizes with their range and source, board feet, prices, clean
// thicknesses.
//
// Lengths are unit.Length, money is hundredths of the shop's currency, board feet
// are counted in sixty-fourths. Exact: everything; a price is rounded once, to
// the nearest hundredth, halves up.
//
// Frame: a board's length counts from its marked end, its width from its marked
// edge; a sheet likewise, with its grain along the length unless it says
// otherwise.
//
// Data: the tables in data/, a source and a status for each row.
//
// The package must not know species (a board names its wood), machines, parts or
// documents.
//
// Glossary: nominal is what a size is called, actual what it measures; sawn is as
// from the mill, planed is as from the merchant's planer; a defect is a stretch
// that no part may contain.
package stock
