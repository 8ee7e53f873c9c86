// Package check lists the checks: what can be judged of a piece and its plan.
//
// Each check is a folder of its own with a declared analysis, whose help is the
// documentation of its package, the codes of its findings, and tests on pieces
// that fail by a hair, pass by a hair, and lack what the check must know. Adding a
// check is adding a folder and a line of [All].
//
// A check says pass, fail, error or unknown: pass once where nothing is wrong, and
// one finding for each thing that is; unknown says what is missing.
package check
