// Package coarse replaces the sizes along one axis by small whole numbers, so
// that tables over an axis stay short whatever the unit of its sizes is.
//
// In: the sides that may lie along the axis, each with its copies; the rooms of
// the stock along it; all in whole units with one kerf added, so that sides in a
// row simply add up. Out: a [Scale]: a small whole number for each side, and for
// each room two: a loose one, in which every row fits that truly fits, and a
// tight one, in which only rows fit that truly do. Where both are equal nothing
// was lost: the same rows fit.
//
// That rows are looked at is enough for guillotine cuts. What a filling needs
// along an axis is a sum where parts lie behind each other and the greatest need
// where they lie beside each other, hence the greatest sum of some of its rows;
// so a filling fits where its rows do, in any number of stages. Columns that ask
// for sides of equal size need a scale that keeps unequal sides apart.
//
// The rooms are not worked out by rounding but by a knapsack over the small
// numbers, so that they are right however a side is rounded. What was laid out in
// the small numbers is laid out anew with true sizes by [True]. The package knows
// no kerf and no defects.
package coarse
