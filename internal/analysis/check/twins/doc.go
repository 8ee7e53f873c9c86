// Package twins tells of mirrored parts that are easily swapped.
//
// A left part that, turned round, looks like the right one, but for cuts that lie within
// half an inch of where the other has them, is mounted on the wrong side at the end of the
// day: practitioners swap parts that differ by 1/8 to 1/2 in (their accounts; no source).
// Clearly different or quite alike is no danger.
package twins
