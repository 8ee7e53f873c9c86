package equip

import (
	"scantling/internal/document"
	"scantling/internal/formula"
	"scantling/internal/message"
)

// nameless is the scope of a shop document, in which there are no names.
type nameless struct{ r *reader }

// Name reports that a shop has no names to refer to.
func (n nameless) Name(x *document.Name) formula.Value {
	formula.Reader{Maker: n.r.maker}.Fault(CodeShopName, x.Place(), message.Text("name", x.Root))
	return formula.Value{}
}

// Pick takes members of a value.
func (n nameless) Pick(v formula.Value, steps []document.Step) formula.Value {
	for _, s := range steps {
		next, ok := n.r.maker.Pick(v, s, n)
		if !ok {
			formula.Reader{Maker: n.r.maker}.Fault(CodeShopName, s.Where, message.Text("name", s.Member))
			return formula.Value{}
		}
		v = next
	}
	return v
}

// Call knows no functions of its own.
func (n nameless) Call(c *document.Call, _ []formula.Value, _ string) (formula.Value, bool) {
	formula.Reader{Maker: n.r.maker}.Fault(CodeShopName, c.Place(), message.Text("name", c.Func))
	return formula.Value{}, false
}
