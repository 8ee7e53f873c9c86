// Package boards solves the cutting of boards across their length: several
// kinds of boards with prices, limited offcuts, kerf, trims, defects.
//
// In: a checked [problem.Problem] of form Boards, a meter. Out: diagrams, a
// cost, a proven bound.
//
// Inside, lengths are whole multiples of the common measure of all lengths, one
// kerf is added to every part and to every clear length of stock, and equal
// lengths are one kind. A pattern is one board's filling. The incumbent comes
// from subset-sum filling and from diving in the linear relaxation over all
// patterns (column generation after Gilmore and Gomory, "A linear programming
// approach to the cutting-stock problem", Operations Research 9, 1961); the
// bound is that relaxation's, its prices rounded to whole numbers and checked
// by an exact knapsack; cuts, branching and trying everything out close what is
// left. Of plans that cost the same, one that leaves long rests in one piece is
// chosen, then one with few different patterns. Floats steer, whole numbers
// prove.
package boards
