// Package supplies judges the glues and finishes that the document names: whether
// they are known, and whether they set in the air of the shop today.
//
// A glue or finish that neither the shop nor the trade's catalogue knows is
// unknown: the steps then have no times for a glue, and a day between coats for a
// finish. A glue below its least
// temperature turns to chalk and never holds; a finish outside its range dries
// badly. Every figure is told with its status: what the tin says, stated in the
// shop document, goes before them all.
package supplies
