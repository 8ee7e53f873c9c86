// Package blanks derives what each part is made from.
//
// In: the part rows, the piece (for lands and channels), the shop's rack and
// machines, the house's allowances. Out: the graph of workpieces board → blank →
// strips → panel → part → assembly, with the reason for whatever is unusual: a
// panel is glued up because no board is wide enough, a blank is kept long
// because the machines need length, short parts of one profile share a blank,
// much of a thick board is planed away. Strips of a panel are as equal as can be,
// no wider than the board gives over the jointer, and meet in the middle of lands
// or clear of whatever else is cut along the part. A panel that is wider than the
// thicknesser is made from narrow panels that it takes, and strips left over. A part that no stock serves is
// told with the two figures that clash. Other ways to share a panel out are listed
// for whoever chooses among them (Choices), and taken if told (Input.Layouts).
//
// Which stock: what the material names, if the part comes out of it; else of the
// rack, then of the shop's list, the thinnest that is thick and long enough, the
// widest of these.
//
// Every size is a sum of figures in the ledger: finished size and allowances.
// Nothing is rounded. One answer, no search: what is decided by an optimiser
// (which board, where on it) is the cutting analysis' business.
//
// Words: an allowance is what comes off later; a gang is one blank that several
// short parts are cut from at the end.
package blanks
