// Package problem holds the question and the answer of the cutting engine as
// plain data, and the rules by which a question is refused.
//
// In: nothing. Out: [Problem] (stock, parts, kerf, trims, defects, how cuts may
// follow each other), [Budget], and [Answer] (a tree of guillotine cuts for each
// used piece of stock, cost, proven bound, status, work counted).
//
// All lengths are exact ([unit.Length]); costs are whole numbers of whatever
// small unit of money the caller counts in. The frame of a piece of stock has
// its origin at the start end and the low edge: Along runs with the length (the
// grain, where there is one), Across with the width. Boards are cut across
// only, and their widths are not looked at.
//
// The package solves nothing and checks no answer, so that the engine and the
// checker may both stand on it and share nothing else. It knows no wood beyond
// stock, part, kerf, trim and grain.
package problem
