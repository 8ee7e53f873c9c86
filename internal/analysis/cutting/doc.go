// Package cutting decides which boards and sheets are used and how each is cut.
//
// In: blanks and strips with the stock that each comes from, the rack with
// prices, the saw's kerf and what is trimmed first. Out: cutting diagrams with
// the cuts in sawing order, what must be bought, and how good the answer is: the
// engine's cost beside its proven bound.
//
// Boards already in the rack are used before any are bought. Grain is kept: a
// blank lies with its length along the board. Sizes are the workpieces' own
// figures; a position is a sum of sizes and kerfs in the ledger. The search runs
// by counted work, so the same documents give the same diagrams everywhere.
package cutting
