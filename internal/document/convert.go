package document

import (
	"cmp"
	"math/big"
	"slices"
	"strings"

	"github.com/hashicorp/hcl/v2/hclsyntax"

	"scantling/internal/diag"
	"scantling/internal/message"
)

// convertBody turns a parsed body into our own tree, in the order of writing.
func (r *reader) convertBody(body *hclsyntax.Body) ([]*Attribute, []*Block) {
	attributes := make([]*Attribute, 0, len(body.Attributes))
	for _, a := range body.Attributes {
		attributes = append(attributes, &Attribute{Name: a.Name, Where: r.placeOf(a.NameRange), Whole: r.placeOf(a.SrcRange)})
	}
	byPlace := func(a, b *Attribute) int { return cmp.Compare(a.Where.Start, b.Where.Start) }
	slices.SortFunc(attributes, byPlace)
	for _, a := range attributes {
		a.Value = r.formula(body.Attributes[a.Name].Expr)
	}
	var blocks []*Block
	for _, b := range body.Blocks {
		blocks = append(blocks, r.convertBlock(b))
	}
	w := &r.file.Work
	w.Attributes += len(attributes)
	w.Blocks += len(blocks)
	if over := w.Attributes > r.limits.Attributes || w.Blocks > r.limits.Blocks; over && !r.full {
		r.full = true
		r.refuse(CodeTooMany, r.placeOf(body.SrcRange), max(w.Attributes, w.Blocks), min(r.limits.Attributes, r.limits.Blocks))
	}
	if r.full {
		return nil, nil
	}
	return attributes, blocks
}

func (r *reader) convertBlock(b *hclsyntax.Block) *Block {
	out := &Block{Type: b.Type, Labels: b.Labels, Where: r.placeOf(b.DefRange()), Whole: r.placeOf(b.Range())}
	out.Whole.End = max(out.Whole.End, r.placeOf(b.CloseBraceRange).End)
	for _, l := range b.LabelRanges {
		out.LabelAt = append(out.LabelAt, r.placeOf(l))
	}
	out.Attributes, out.Blocks = r.convertBody(b.Body)
	return out
}

var signs = map[*hclsyntax.Operation]string{
	hclsyntax.OpAdd: "+", hclsyntax.OpSubtract: "-", hclsyntax.OpMultiply: "*", hclsyntax.OpDivide: "/",
	hclsyntax.OpEqual: "==", hclsyntax.OpNotEqual: "!=", hclsyntax.OpLessThan: "<", hclsyntax.OpLessThanOrEqual: "<=",
	hclsyntax.OpGreaterThan: ">", hclsyntax.OpGreaterThanOrEqual: ">=", hclsyntax.OpLogicalAnd: "and", hclsyntax.OpLogicalOr: "or",
}

// formula converts one expression. What the language leaves out is reported and
// becomes Bad.
func (r *reader) formula(e hclsyntax.Expression) Expr {
	w := &r.file.Work
	if w.Formulas++; w.Formulas > r.limits.Formulas {
		if !r.full {
			r.full = true
			r.refuse(CodeTooMany, r.placeOf(e.Range()), w.Formulas, r.limits.Formulas)
		}
		return &Bad{At{r.placeOf(e.Range())}}
	}
	at := At{r.placeOf(e.Range())}
	switch e := e.(type) {
	case *hclsyntax.ParenthesesExpr:
		return r.formula(e.Expression)
	case *hclsyntax.LiteralValueExpr:
		return r.literal(e, at)
	case *hclsyntax.TemplateExpr:
		return r.template(e.Parts, at)
	case *hclsyntax.TemplateWrapExpr:
		return r.template([]hclsyntax.Expression{e.Wrapped}, at)
	case *hclsyntax.ScopeTraversalExpr, *hclsyntax.RelativeTraversalExpr, *hclsyntax.IndexExpr:
		return r.name(e, at)
	case *hclsyntax.FunctionCallExpr:
		return &Call{at, e.Name, r.formulas(e.Args, at)}
	case *hclsyntax.ConditionalExpr:
		return &Choose{at, r.formula(e.Condition), r.formula(e.TrueResult), r.formula(e.FalseResult)}
	case *hclsyntax.TupleConsExpr:
		return &List{at, r.formulas(e.Exprs, at)}
	case *hclsyntax.ObjectConsExpr:
		return r.object(e, at)
	case *hclsyntax.UnaryOpExpr:
		sign := "-"
		if e.Op == hclsyntax.OpLogicalNot {
			sign = "not"
		}
		return &Unary{at, sign, r.formula(e.Val)}
	case *hclsyntax.BinaryOpExpr:
		if sign, ok := signs[e.Op]; ok {
			return r.binary(e, sign, at)
		}
		return r.unsupported(at, "%")
	case *hclsyntax.ForExpr:
		return r.unsupported(at, "for")
	case *hclsyntax.SplatExpr:
		return r.unsupported(at, "[*]")
	case *hclsyntax.ExprSyntaxError:
		return &Bad{at}
	}
	return r.unsupported(at, "")
}

// binary walks down a chain of signs that lean left without recursion.
func (r *reader) binary(e *hclsyntax.BinaryOpExpr, sign string, at At) Expr {
	type link struct {
		sign string
		at   At
		y    hclsyntax.Expression
	}
	chain := []link{{sign, at, e.RHS}}
	left := e.LHS
	for {
		next, ok := left.(*hclsyntax.BinaryOpExpr)
		if !ok {
			break
		}
		s, ok := signs[next.Op]
		if !ok {
			break
		}
		chain = append(chain, link{s, At{r.placeOf(next.Range())}, next.RHS})
		left = next.LHS
	}
	if len(chain) > r.limits.Items {
		r.refuse(CodeTooMany, at.where, len(chain), r.limits.Items)
		return &Bad{at}
	}
	x := r.formula(left)
	for _, l := range slices.Backward(chain) {
		x = &Binary{l.at, l.sign, x, r.formula(l.y)}
	}
	return x
}

func (r *reader) formulas(es []hclsyntax.Expression, at At) []Expr {
	if len(es) > r.limits.Items {
		r.refuse(CodeTooMany, at.where, len(es), r.limits.Items)
		return nil
	}
	out := make([]Expr, len(es))
	for i, e := range es {
		out[i] = r.formula(e)
	}
	return out
}

func (r *reader) unsupported(at At, word string) Expr {
	if !r.broken {
		r.report(diag.Error, CodeUnsupported, at.where, message.Text("word", word))
	}
	return &Bad{at}
}

// literal takes numbers from the text, so that they are exact.
func (r *reader) literal(e *hclsyntax.LiteralValueExpr, at At) Expr {
	written := string(r.text[at.where.Start:at.where.End])
	switch written {
	case "true", "false":
		return &Truth{at, written == "true"}
	}
	n, ok := exact(written)
	if !ok {
		return r.unsupported(at, written)
	}
	return &Number{at, n}
}

// exact reads a number as it is written; long ones and great exponents are
// refused, for a rational would hold them in full.
func exact(written string) (*big.Rat, bool) {
	if len(written) > 32 || written == "" || strings.ContainsAny(written, "eExXpP_") {
		return nil, false
	}
	return new(big.Rat).SetString(written)
}

func (r *reader) template(parts []hclsyntax.Expression, at At) Expr {
	t := &Text{At: at}
	for _, p := range parts {
		if l, ok := p.(*hclsyntax.LiteralValueExpr); ok && l.Val.Type().FriendlyName() == "string" && l.Val.IsKnown() && !l.Val.IsNull() {
			t.Parts = append(t.Parts, TextPart{Words: l.Val.AsString()})
			continue
		}
		t.Parts = append(t.Parts, TextPart{Formula: r.formula(p)})
	}
	return t
}

func (r *reader) object(e *hclsyntax.ObjectConsExpr, at At) Expr {
	o := &Object{At: at}
	if len(e.Items) > r.limits.Items {
		r.refuse(CodeTooMany, at.where, len(e.Items), r.limits.Items)
		return &Bad{at}
	}
	for _, item := range e.Items {
		where := r.placeOf(item.KeyExpr.Range())
		name := strings.Trim(string(r.text[where.Start:where.End]), `"`)
		if slices.ContainsFunc(o.Fields, func(f Field) bool { return f.Name == name }) {
			r.report(diag.Error, CodeTwice, where, message.Text("name", name))
			continue
		}
		o.Fields = append(o.Fields, Field{name, where, r.formula(item.ValueExpr)})
	}
	return o
}
