// Package tipping judges whether the piece stays on its feet: empty and loaded, with its
// drawers out one by one and together.
//
// It falls where what holds it down about its front feet comes to nothing. A piece that a
// small pull tips is told as well: less than 50 N at its top or its highest drawer, about
// what a child pulls, where it is higher than 600 mm (common practice, no source). Furniture that can tip is fixed to
// the wall; where a standard governs it, that is another check.
package tipping
