// Package conform checks cutting answers independently of the engine, and holds
// the suite that every solver must pass.
//
// In: a [problem.Problem] and a [problem.Answer]. Out: what is wrong with it
// ([Verify]). It follows the cuts as a sawyer would, from the stock as bought,
// with the plain types of package problem alone: nothing of the engine is
// imported, and the layer test keeps it so. It cannot know whether a bound is
// true; it checks that the bound does not exceed the cost, and [Suite] compares
// with known optima.
package conform
