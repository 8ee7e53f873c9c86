package evaluate

import (
	"scantling/internal/document"
	"scantling/internal/equip"
	"scantling/internal/message"
	"scantling/internal/shop"
	"scantling/internal/unit"
)

// openShop reads the shop document, or the built-in one of the piece's units,
// and works it out.
func (w *world) openShop(units unit.System) {
	src := w.src.Shop
	if len(src.Text) == 0 {
		src.Name, src.Text = shop.Default(units)
	}
	file := w.read(src)
	if file.Kind != document.Shop {
		if file.Head != nil {
			w.fault(CodeWrongDocument, file.Head.Where, message.Word("got", "document."+string(file.Kind)), message.Word("want", "document.shop"))
		}
		name, text := shop.Default(units)
		file, _ = document.Read(document.Source{Name: name, Text: text}, document.Limits{})
	}
	w.shop = equip.Shop(file, w.maker(unitsOf(file)))
}
