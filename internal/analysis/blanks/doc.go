// Package blanks derives what each part is made from.
//
// In: the part rows, the piece (for lands and channels), the shop's rack and
// machines, the house's allowances. Out: the graph of workpieces board → blank →
// strips → panel → part → assembly, with the reason for whatever is unusual: a
// panel is glued up because no board is wide enough, a blank is kept long
// because the machines need length, short parts of one profile share a blank.
//
// Every size is a sum of figures in the ledger: finished size and allowances.
// Nothing is rounded. One answer, no search: what is decided by an optimiser
// (which board, where on it) is the cutting analysis' business.
//
// Words: an allowance is what comes off later; a gang is one blank that several
// short parts are cut from at the end.
package blanks
