// Package checktest runs checks in tests: a small shop, a chest that every check
// passes, and one check with all that it requires on a piece.
//
// Nothing of the product may use it.
package checktest
