package evaluate

import (
	"scantling/internal/address"
	"scantling/internal/diag"
	"scantling/internal/document"
	"scantling/internal/formula"
	"scantling/internal/message"
)

// scope is where names mean something: the outermost level of a document, or one
// instance of a group or of a recipe in use.
type scope struct {
	w     *world
	file  *document.File
	maker *formula.Maker
	// up is the enclosing scope of the same document; nil at its outermost level.
	up *scope
	// host is the scope of the "use" block, for the outermost level of a recipe.
	host *scope
	use  *document.Block
	// decl is the block that this is an instance of; nil for the piece itself.
	decl  *decl
	nth   int // its number, 0 if it stands alone
	of    int
	frame *frame
	addr  address.Address
	// group is the nearest group of the piece.
	group address.Address
	// types finds declared blocks by type and name; order keeps them all.
	types map[string]map[string]*decl
	order []*decl

	sizes     map[string]*sizeCell
	materials map[string]*material
	contents  map[string]*contents
	inputs    map[string]*input
	depth     int // of recipes within recipes
}

// decl is a declared block in one scope.
type decl struct {
	s     *scope
	block *document.Block
	name  string // as its members are addressed
	count cell[int]
	on    cell[bool]
	nodes cell[[]node]
	// failed says that it is not known how many there are.
	failed bool
	// family is set for joints.
	family *family
	lid    lidFigures // of a lid that is sawn off
}

// node is one instance of a declared block: *part, *space, *scope, *family,
// *cut, *series or *fitting.
type node interface {
	address() address.Address
}

func (s *scope) address() address.Address { return s.addr }

func (w *world) newScope(file *document.File, maker *formula.Maker) *scope {
	return &scope{w: w, file: file, maker: maker, types: map[string]map[string]*decl{}}
}

// declare indexes the blocks of a scope.
func (s *scope) declare(blocks []*document.Block) {
	taken := map[string]*decl{}
	for _, b := range blocks {
		if b.Label() == "" && b.Type != "sizes" {
			continue
		}
		d := &decl{s: s, block: b, name: b.Label()}
		if b.Type == "use" {
			d.name = s.useName(b)
		}
		if b.Type == "joint" {
			d.family = &family{d: d}
		}
		s.order = append(s.order, d)
		if b.Type == "use" && d.name == "" {
			continue
		}
		if s.types[b.Type] == nil {
			s.types[b.Type] = map[string]*decl{}
		}
		if s.types[b.Type][d.name] == nil {
			s.types[b.Type][d.name] = d
		}
		switch b.Type {
		case "part", "space", "group", "use":
			s.checkName(d, taken)
		}
	}
}

// checkName sees to it that a name can stand in an address, and means one thing.
func (s *scope) checkName(d *decl, taken map[string]*decl) {
	where := d.block.Where
	if !isName(d.name) {
		s.w.fault(CodeName, where, message.Text("name", d.name))
		d.name = slug(d.name)
	}
	if was := taken[d.name]; was != nil && was.block.Type != d.block.Type {
		s.w.report(diag.Diagnostic{Severity: diag.Error, Code: CodeNameTaken, Where: where,
			Text:    textOf(CodeNameTaken, message.Text("name", d.name), message.Word("first", "block."+was.block.Type), message.Word("second", "block."+d.block.Type)),
			Related: []diag.Related{{Text: message.New("related.first-here"), Where: was.block.Where}}})
		return
	}
	taken[d.name] = d
}

// useName is the name that a recipe in use is addressed by; empty where its
// parts stand directly in the scope.
func (s *scope) useName(b *document.Block) string {
	a := b.Attribute("as")
	if a == nil {
		return ""
	}
	t, ok := a.Value.(*document.Text)
	if !ok {
		s.w.fault(CodeName, a.Value.Place(), message.Text("name", s.file.Written(a.Value.Place())))
		return ""
	}
	plain, _ := t.Plain()
	return plain
}

// find looks a declared block up: here, in recipes used without a name, then
// outwards.
func (s *scope) find(kind, name string) *decl {
	for at := s; at != nil; at = at.up {
		if d := at.own(kind, name); d != nil {
			return d
		}
	}
	return nil
}

// own looks a declared block up in this scope and the recipes merged into it.
func (s *scope) own(kind, name string) *decl {
	if d := s.types[kind][name]; d != nil {
		return d
	}
	for _, u := range s.merged() {
		if d := u.own(kind, name); d != nil {
			return d
		}
	}
	return nil
}

// merged returns the scopes of the recipes that are used without a name.
func (s *scope) merged() []*scope {
	var out []*scope
	for _, d := range s.order {
		if d.block.Type == "use" && d.name == "" {
			for _, n := range d.members() {
				out = append(out, n.(*scope))
			}
		}
	}
	return out
}

// outermost returns the document's outermost scope.
func (s *scope) outermost() *scope {
	for s.up != nil {
		s = s.up
	}
	return s
}

// known lists the names of a type that are in reach, for suggestions.
func (s *scope) known(kind string) []string {
	var out []string
	for at := s; at != nil; at = at.up {
		for _, d := range at.order {
			if d.block.Type == kind && d.name != "" {
				out = append(out, d.name)
			}
		}
		for _, m := range at.merged() {
			out = append(out, m.known(kind)...)
		}
	}
	return out
}

// lost reports whether a name that cannot be found may stand in a stretch of the
// document that was not readable.
func (s *scope) lost() bool {
	if s.file.Lost {
		return true
	}
	for _, b := range s.file.Blocks {
		if b.Broken {
			return true
		}
	}
	return false
}

// env is where a formula stands: a scope, and the number of the repeated thing
// that it belongs to.
type env struct {
	s *scope
	// nth is the number of the repeated block; 0 if it is the scope's that counts.
	nth int
	// bare lets the names of the sizes stand alone, as inside their block.
	bare bool
}

// number returns the nth in force: the block's own or that of the nearest
// repeated group.
func (e env) number() int {
	if e.nth > 0 {
		return e.nth
	}
	for s := e.s; s != nil && s.host == nil; s = s.up {
		if s.nth > 0 {
			return s.nth
		}
	}
	return 0
}

// reader reads a block where it stands.
func (e env) reader(b *document.Block) formula.Reader {
	return formula.Reader{Maker: e.s.maker, Scope: e, File: e.s.file, Block: b}
}

// value works an attribute out; nothing if the block does not have it.
func (e env) value(b *document.Block, attribute, name string) formula.Value {
	return e.reader(b).Value(attribute, name)
}

// reader reads a block of the scope itself.
func (s *scope) reader(b *document.Block) formula.Reader { return env{s: s}.reader(b) }
