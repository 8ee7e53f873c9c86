package evaluate

import (
	"scantling/internal/document"
	"scantling/internal/equip"
	"scantling/internal/message"
	"scantling/internal/unit"
)

// openShop reads the shop document, or the built-in one of the piece's units,
// and works it out.
func (w *world) openShop(units unit.System) {
	file := defaultShop(units)
	if len(w.src.Shop.Text) > 0 {
		given := w.read(w.src.Shop)
		switch {
		case given.Kind == document.Shop:
			file = given
		case given.Head != nil:
			w.fault(CodeWrongDocument, given.Head.Where, message.Word("got", "document."+string(given.Kind)), message.Word("want", "document.shop"))
		}
	}
	w.shop = equip.Shop(file, w.maker(unitsOf(file)))
}
