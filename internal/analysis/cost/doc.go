// Package cost says what must be got, in the merchant's own terms, and what it
// costs.
//
// In: how many boards and sheets of each stock are cut, the piece's fittings and
// fasteners, the shop's prices and what it holds. Out: buying lines and their
// sum. Boards are bought whole. Money is whole hundredths; what has no price is
// named, not guessed.
package cost
