// Package cli is the command line: a thin layer over the front door.
//
// In: arguments, files of a folder. Out: files, findings on the terminal or as
// JSON, an exit status: 0 fine, 1 findings of error severity, 2 wrong usage or
// input that cannot be read. Nothing is computed here.
package cli
