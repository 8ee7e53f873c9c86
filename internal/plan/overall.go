package plan

import "scantling/internal/unit"

// Overall returns the size of the whole piece along right, back and up: the box
// around all its parts, with lids that are sawn off on their bases.
func (p *Plan) Overall() [3]unit.Length { return p.Piece.Overall() }
