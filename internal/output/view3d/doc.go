// Package view3d turns a plan and its solids into a scene: the finished piece in
// three dimensions, every part with its address and mark, every face with the
// cut that made it.
//
// In: a plan and solids in their parts' own axes. Out: a [scene.Scene] in
// millimetres, in the piece's frame (right, back, up). Equal parts share one
// mesh. What is exact: nothing; this is for looking and picking. A part whose
// solid did not close is left out and named.
//
// Shades of timber are for telling one from another, from the eye's memory: no
// source. The package knows no file format and does not know how a plan is made.
package view3d
