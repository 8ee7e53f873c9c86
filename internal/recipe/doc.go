// Package recipe holds the built-in recipes: documents of the design language
// with inputs and outputs, for parts of a piece that are made again and again.
//
// In: a name. Out: the document's text ([Find]), or the list of all ([All]). The
// package reads no documents; package evaluate does.
package recipe
