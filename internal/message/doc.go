// Package message holds what is to be said, before it is put into words.
//
// A [Message] is a key and typed arguments; no prose. Findings, diagnostics and
// steps carry messages; the words package turns them into a language, with the
// region's words, units and denominator. The package knows no language.
package message
