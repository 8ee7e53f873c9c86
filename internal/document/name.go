package document

import (
	"slices"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
)

// name flattens what the parser splits three ways: a.b.c, a.b[formula] and what
// follows those.
func (r *reader) name(e hclsyntax.Expression, at At) Expr {
	var steps []Step // from the end to the start
	for {
		switch x := e.(type) {
		case *hclsyntax.ParenthesesExpr:
			e = x.Expression
		case *hclsyntax.IndexExpr:
			steps = append(steps, Step{Index: r.formula(x.Key), Where: r.placeOf(x.BracketRange)})
			e = x.Collection
		case *hclsyntax.RelativeTraversalExpr:
			steps = append(steps, r.steps(x.Traversal)...)
			e = x.Source
		case *hclsyntax.ScopeTraversalExpr:
			steps = append(steps, r.steps(x.Traversal[1:])...)
			if len(steps) > r.limits.Depth {
				r.refuse(CodeTooDeep, at.where, len(steps), r.limits.Depth)
				return &Bad{at}
			}
			slices.Reverse(steps)
			return &Name{at, x.Traversal.RootName(), steps}
		default:
			slices.Reverse(steps)
			return &Pick{at, r.formula(e), steps}
		}
		if len(steps) > r.limits.Depth {
			r.refuse(CodeTooDeep, at.where, len(steps), r.limits.Depth)
			return &Bad{at}
		}
	}
}

// steps converts a traversal, last step first.
func (r *reader) steps(t hcl.Traversal) []Step {
	out := make([]Step, 0, len(t))
	for _, s := range slices.Backward(t) {
		where := r.placeOf(s.SourceRange())
		switch s := s.(type) {
		case hcl.TraverseAttr:
			out = append(out, Step{Member: s.Name, Where: where})
		case hcl.TraverseIndex:
			out = append(out, Step{Index: r.index(s, At{where}), Where: where})
		default:
			out = append(out, Step{Index: r.unsupported(At{where}, "[*]"), Where: where})
		}
	}
	return out
}

// index is the key of a step that the parser has evaluated already.
func (r *reader) index(s hcl.TraverseIndex, at At) Expr {
	r.file.Work.Formulas++
	kind := s.Key.Type().FriendlyName()
	switch {
	case !s.Key.IsKnown() || s.Key.IsNull() || kind != "string" && kind != "number":
		return r.unsupported(at, "[]") // what the parser puts where it lost its way
	case kind == "string":
		return &Text{At: at, Parts: []TextPart{{Words: s.Key.AsString()}}}
	}
	n, exact := s.Key.AsBigFloat().Rat(nil)
	if n == nil || exact != 0 || !n.IsInt() || !n.Num().IsInt64() {
		return r.unsupported(at, "[]")
	}
	return &Number{at, n}
}
