// Package shop holds one maker's workshop as plain data: what is in the rack, the
// machines and cutters with their limits, fittings and prices, the air at the
// bench and where the work will live, and the rules of the house.
//
// In: nothing; package evaluate makes a [Shop] from a shop document. Out: the
// data, with the place in the document that each thing was written at, so that
// a figure can be traced there; and the documents of two built-in shops, metric
// and inch ([Default]).
//
// Lengths are unit.Length, money is hundredths of the shop's currency. The
// package must not know parts, plans or how documents are read.
//
// Glossary: the rack is the boards and sheets, those that are there and those
// that can be bought (Have 0); a rule is a habit of the house that goes before a
// proportion of the trade.
package shop
