package piece

import (
	"scantling/internal/address"
	"scantling/internal/diag"
)

// Together are parts that are sawn from one board side by side, in order, so that
// the grain runs on from one to the next: the fronts of a chest.
type Together struct {
	Address address.Address   `json:"address"`
	Parts   []address.Address `json:"parts"`
	// Across says that they lie beside each other across the board, not one after
	// the other along it.
	Across bool       `json:"across,omitempty"`
	Where  diag.Place `json:"where"`
}
