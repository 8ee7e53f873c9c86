// Package csv writes tables as comma-separated values after RFC 4180.
//
// In: a header and rows of text. Out: UTF-8, lines ended by CR LF, the same
// bytes for the same table. Numbers are the caller's text; nothing is rounded
// here.
//
// Text that a spreadsheet would take for a formula is made harmless, as part
// names come from documents of strangers: a cell that starts with one of
// = + - @ (or their full-width forms), a tab or a line break gets an apostrophe
// before it, unless it is a plain number. (The starts are those of OWASP's page
// "CSV Injection".)
//
// The package knows no wood and no page.
package csv
