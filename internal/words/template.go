package words

import "strings"

// template is a text taken apart.
type template []part

// part is a stretch of a template: plain text, an argument, another entry, or a
// choice of forms by the count that an argument is.
type part struct {
	plain string
	arg   string
	entry string
	upper bool
	forms []template
}

// parse takes a text apart, and says whether it is written correctly.
func parse(text string) (template, bool) {
	p := taker{rest: text}
	t, ok := p.template(0)
	return t, ok && p.rest == ""
}

type taker struct{ rest string }

// template reads to the end of the text or, inside forms, to the bar or brace
// behind the form.
func (p *taker) template(depth int) (template, bool) {
	if depth > maxNest {
		return nil, false
	}
	var t template
	var plain strings.Builder
	flush := func() {
		if plain.Len() > 0 {
			t = append(t, part{plain: plain.String()})
			plain.Reset()
		}
	}
	for p.rest != "" {
		c := p.rest[0]
		if depth > 0 && (c == '|' || c == '}') {
			break
		}
		p.rest = p.rest[1:]
		switch c {
		case '\\':
			if p.rest == "" || !strings.Contains(`{}|\n`, p.rest[:1]) {
				return nil, false
			}
			if p.rest[0] == 'n' {
				plain.WriteByte('\n')
			} else {
				plain.WriteByte(p.rest[0])
			}
			p.rest = p.rest[1:]
		case '{':
			flush()
			hole, ok := p.hole(depth)
			if !ok {
				return nil, false
			}
			t = append(t, hole)
		case '}':
			return nil, false
		default:
			plain.WriteByte(c)
		}
	}
	flush()
	return t, true
}

// hole reads what stands between braces, behind the first.
func (p *taker) hole(depth int) (part, bool) {
	var h part
	p.rest, h.upper = strings.CutPrefix(p.rest, "^")
	end := strings.IndexAny(p.rest, ":}|{\\")
	if end < 0 || !isKey(p.rest[:end]) {
		return h, false
	}
	name, sign := p.rest[:end], p.rest[end]
	p.rest = p.rest[end+1:]
	if strings.Contains(name, ".") {
		h.entry = name
		return h, sign == '}'
	}
	h.arg = name
	if strings.Contains(name, " ") {
		return h, false
	}
	if sign != ':' {
		return h, sign == '}'
	}
	for {
		form, ok := p.template(depth + 1)
		if !ok || p.rest == "" {
			return h, false
		}
		h.forms = append(h.forms, form)
		end := p.rest[0]
		p.rest = p.rest[1:]
		if end == '}' {
			return h, len(h.forms) > 1
		}
	}
}

// String writes a template as it is written in a catalogue.
func (t template) String() string {
	escape := strings.NewReplacer(`\`, `\\`, `{`, `\{`, `}`, `\}`, `|`, `\|`, "\n", `\n`)
	var b strings.Builder
	for _, p := range t {
		if p.plain != "" {
			b.WriteString(escape.Replace(p.plain))
			continue
		}
		b.WriteByte('{')
		if p.upper {
			b.WriteByte('^')
		}
		b.WriteString(p.arg + p.entry)
		for i, f := range p.forms {
			b.WriteByte(":|"[min(i, 1)])
			b.WriteString(f.String())
		}
		b.WriteByte('}')
	}
	return b.String()
}

// wants visits the names of the arguments that a template needs.
func (t template) wants(visit func(name string)) {
	for _, p := range t {
		if p.arg != "" {
			visit(p.arg)
		}
		for _, f := range p.forms {
			f.wants(visit)
		}
	}
}

// refers visits the keys of the entries that a template holds.
func (t template) refers(visit func(key string)) {
	for _, p := range t {
		if p.entry != "" {
			visit(p.entry)
		}
		for _, f := range p.forms {
			f.refers(visit)
		}
	}
}
