// Package rules puts the trade's rules into the form of the ledger: pure
// functions of typed values, so that a figure that a rule gave can be worked out
// again from the entry alone.
//
// In: typed values (lengths, counts, lists of names and sizes). Out: a typed
// value, or an error of the rule (see packages proportion, share, timber). Lengths
// are whole nanometres; moistures arrive as the exact values of the floats that
// they were. The package must not know parts or documents.
//
// Arguments stand at each function: a rod is a list of key, diameter, length and,
// with a head, its diameter and length; a wood is a list of species and how it is
// sawn; a cutter is a list of name, diameter and cutting length.
package rules
