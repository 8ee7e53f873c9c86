// Package rows adds up straight lines through the finished piece: wood and air by
// turns, from the first wood to the last, each stretch a figure of the ledger.
//
// In: a piece with the cuts of its joints. Out: a [plan.Row] for every clear
// space and every group that moves in a space, along all three axes, and for
// every series of cuts across its mouths. A row closes: its terms add up to its
// total, to the nanometre.
//
// Rows are worked out from the boxes of parts and cuts alone, without solids, so
// that solids can be held against them. A row carries the band of the two other
// axes within which every line has the same terms. Where a cut is curved across
// the line, the band ends where a term would change by more than [Slack]; lines
// through scoops and eased edges are not drawn. Of several lines through a moving
// group the one with the most terms is taken, for it says most, and among those
// the one with the widest band; through a space, the one nearest to its middle.
//
// Lengths are whole nanometres in the piece's axes. The width of a round-bottomed
// cut at its mouth is a root and is rounded to the nanometre.
package rows
