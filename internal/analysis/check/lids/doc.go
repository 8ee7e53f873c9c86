// Package lids judges where a lid is sawn off its closed box.
//
// A key, a dowel, a loose tenon, a hole or a nail in the saw's way is cut through, and
// metal breaks teeth; beside the line a corner needs whole wood, so that base and lid
// each hold together. Of a finger or a tail the saw must not leave a sliver. A groove
// along the line leaves edges that are no longer as thick as the wall. A lid must be
// high enough to be taken hold of and hinged.
//
// Limits are common practice without a source; the rules of the house "beside a lid's
// line" and "least lid" go before them. That a part inside stands through the line is
// told by the documents themselves.
package lids
