// Package diag holds diagnostics: what is wrong, where, by how much, and what
// would mend it, as plain values.
//
// A stage reports everything that it can in a [List] and goes on; a plain error
// is for the outside world only. Codes are constants that are never renamed;
// the comment of each code carries an example document that yields it. A
// [Remedy] is a set of [Edit] values that can be applied, and tests apply them.
package diag
