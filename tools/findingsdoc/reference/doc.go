// Package reference reads the codes of findings, and of what is reported beside them,
// from the sources of the analyses.
//
// In: the sources below internal/analysis. Out: every constant of type diag.Code with its
// comment and example ([Codes]), and the page that lists them with the rules of the house
// that change their limits ([Page]). It plans nothing.
package reference
