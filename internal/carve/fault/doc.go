// Package fault holds the codes of what can be wrong with cuts, rows of cuts and the
// forms of parts as documents write them, each with an example that yields it.
//
// In and out: nothing but constants; package carve reports them. It must not know
// how a cut is worked out.
package fault
