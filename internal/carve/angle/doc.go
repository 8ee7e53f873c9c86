// Package angle carries lengths over angles: how far a slope comes in over a
// distance, and over what distance it comes in so far.
//
// In: figures and angles of one ledger. Out: figures of the same ledger, rounded to
// the nanometre; the tangents are rounded to twelve places (see package formula). It
// must not know what slopes.
package angle
