// Package sawing turns a diagram as the engine thinks of it into one that can
// be sawn.
//
// In: nested [Block]s in whole engine units, in which every size includes one
// kerf (a part of 300 and a kerf of 3 is 303 long, stock of 2400 has 2403), so
// that sizes simply add up. Out: a [problem.Node] tree of single cuts in exact
// lengths.
package sawing
