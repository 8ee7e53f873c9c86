// Package written reads a cutting problem as a person or a program writes it, in
// the JSON of docs/CUTTING-PROBLEM.md, and writes the answer.
//
// In: bytes of a problem ([Read]); a problem and its answer ([Answer]). Out: a
// [Question], which holds the problem as the engine takes it, or [Faults] that
// name the line, the place in the file and what would do; the answer's bytes.
// Lengths are numbers in the file's unit or texts as a maker writes them, both
// exact. Costs and values are kept in hundredths.
//
// Files come from strangers: bytes, depth, counts and the number of faults are
// bounded, a word that is not known is a fault, and so is one that is said twice.
// The package solves nothing.
package written
