// Package cases judges whether cases stand up to a push from the side.
//
// A case without a back, or with a loose one, is held square by its corners alone: each
// bears its part of a push at the top by a fifth of the weight that stands, and no less
// than 100 N (common practice, no source). What a corner bears is estimated by published
// formulae for dowels, tenons, fingers, screws and nails, with a safety factor taken out
// (see strength and mechanics); where only the weakest of the sources' ranges is passed, a
// note says so. A back that is glued in, or fixed with pins or screws at every edge, holds
// the case, and so does a rail across it that is joined to both sides.
//
// For a plain glued housing, rebate or butt joint no published estimate was found: an open
// case on such corners is unknown. It is no verdict on a case that is fixed to a wall.
package cases
