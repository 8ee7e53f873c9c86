// Package screen turns a plan into what the app's pages show.
//
// In: a plan, its solids, words, and the bytes of the design document. Out: a
// [State], plain data in the reader's words and units: nothing in it has to be
// computed, translated or rounded by a page. Drawings are SVG elements without a
// style sheet of their own; [StyleSheet] has the one that they all share.
//
// Figures are text, as they are printed. What is exact stays in the plan. The
// package knows no network and no files, so that any surface may use it; it must
// not know how a plan is made.
//
// The types of the front end (web/src/state.ts) are generated from [State] and
// the catalogue; a test holds the committed file to it:
//
//	go test ./internal/surface/screen -run TestTypes -update
package screen
