// Package journal reads and writes append-only files of JSON lines: one entry a
// line, none ever changed.
//
// In: bytes. Out: entries in order, and how many bytes are good. Sizes are
// bounded; unknown fields are refused, so that a slip of the pen or a newer
// form is noticed and not left out. The package knows nothing of what an entry
// says.
package journal
