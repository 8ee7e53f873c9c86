package evaluate

import "scantling/internal/piece"

// collectTogether writes parts that are sawn from one board in order into the
// piece.
func (d *decl) collectTogether() {
	w, e := d.s.w, env{s: d.s}
	if !d.block.Has("of") {
		d.s.missing(d.block, "of")
		return
	}
	out := piece.Together{Address: d.top(), Parts: w.addresses(e, d.block, "of"), Where: d.block.Where}
	switch row := e.words(d.block, "row"); row {
	case "", "along":
	case "across":
		out.Across = true
	default:
		e.reader(d.block).BadWord("row", row, []string{"along", "across"})
		return
	}
	w.out.Together = append(w.out.Together, out)
}
