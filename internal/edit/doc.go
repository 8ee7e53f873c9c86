// Package edit applies edits to documents and keeps their history.
//
// In: the bytes of documents and [diag.Edit] values: replace this stretch, which
// says that, of the document with this hash. Out: new bytes, or a [*Refusal]
// where the document is another, the old text no longer stands, or two edits
// overlap. A remedy, a form of the app and another window all change documents
// in this one way, so comments and layout survive and nothing is overwritten
// unseen.
//
// The history is a journal: each change is a line that is appended; undo and
// redo are lines of their own that name the change they undo or redo. All is
// pure: functions take bytes and history and return both. The package knows
// nothing of the language of the documents.
package edit
