// Package cost says what must be got, in the merchant's own terms, and what it
// costs.
//
// In: how many boards and sheets of each stock are cut, the piece's fittings and
// fasteners, the shop's prices and what it holds. Out: buying lines and their
// sum. Boards and sheets are bought whole and named by the size that they are sold
// as; boards also in cubic metres and board feet. Pins and dowels are counted over
// all joints. Money is whole hundredths; what has no price is named, not guessed.
package cost
