// Package starter writes the first documents of a piece: a design that puts one
// built-in recipe to work, with every input of the recipe written out, and a shop
// to be filled in.
//
// In: a recipe and the units that the maker works in. Out: the two documents'
// texts ([Design], [Shop]). In inches the recipe's own figures are rounded to
// sixteenths, so that a maker finds figures that stand on a rule. The package
// writes text; it neither evaluates nor reads files.
package starter
