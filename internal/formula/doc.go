// Package formula works out the formulas of documents: typed values, signs and
// functions, each step with its line in the ledger.
//
// In: a formula as package document keeps it, and a [Scope] that knows what
// names mean. Out: a [Value] whose ledger entry leads down to the literals, or
// nothing at all where something was wrong; that has been reported once, and
// everything that rests on it stays silent.
//
// A bare literal has no dimension until it stands beside something that has
// one: beside a length it counts in the document's own unit. A text becomes a
// length where a length should stand, never a number. A count and a length do
// not add up. Values are exact; nothing is rounded unless the document says so.
//
// A length may be a position: where a face lies along an axis of the frame it
// was named in. A position less a position is a plain length; a position and a
// length are a position.
//
// The functions are a closed list ([Functions]); the ledger can re-do each of
// them. Steps are counted against a limit, never timed.
//
// The package must not know parts, joints or documents' blocks.
package formula
