// Package problems holds cutting problems with known answers: small ones with
// their references, and a reader of benchmark files in the form cutbench/1.
//
// In: bytes of a cutbench/1 file. Out: [Set], whose instances become
// [problem.Problem] values, and [Known], problems with the proven optimum.
//
// cutbench/1 sizes are whole numbers without a unit; they are read as whole
// millimetres. Its w is our Length and its h our Width, so a "vertical" first
// cut is a [problem.Crosscut] and a "horizontal" one a [problem.Rip].
package problems
