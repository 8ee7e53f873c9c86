// Package cutting decides which boards and sheets are used and how each is cut.
//
// In: blanks and strips with the stock that each comes from, the rack with
// prices, the saw's kerf and what is trimmed first. Out: cutting diagrams with
// the cuts in sawing order, what must be bought, and how good the answer is: the
// engine's cost beside its proven bound.
//
// A blank is cut from its own stock as long as the rack has it; where something
// must be bought, other stock of the same kind (it differs in length, width and
// price only) stands in. All of the rack goes before anything that is bought,
// cheap before dear. Boards that are cut alike and give the same marks share a
// diagram with a count.
//
// First the stock is squared up: both ends of a board, all sides of a sheet; a
// board's edges are made straight on the jointer. Then long and wide pieces come
// off before short and narrow ones, as far as what is in hand stays long enough
// for the saw. No piece is put to the saw that is shorter or narrower than the shop's
// table saw takes; what falls off for good may be smaller, as it lies free on the far
// side of the blade: waste, and a blank that is done (whether that can be ripped at
// all is judged by the check on limits). Grain is kept: a blank lies with its length along the board; only
// on a sheet without grain it may turn.
//
// Which strips a glued-up panel is made of is decided with it: Share tries the ways
// that blanks lists against the boards, by the search of package strips.
//
// Sizes are the workpieces' own figures; a position is a sum of sizes and kerfs
// in the ledger. Areas are square millimetres. The search runs by counted work, so
// the same documents give the same diagrams everywhere.
package cutting
