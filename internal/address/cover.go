package address

import "strings"

// Covers reports whether a names b or what b lies in; a step of a without index
// or key stands for all of a repeat: drawer covers drawer[2].side. It takes
// nothing apart and is quick enough to be asked of every pair.
func (a Address) Covers(b Address) bool {
	left, right := string(a), string(b)
	for left != "" {
		var name, in, name2, in2 string
		name, in, left = cutStep(left)
		if right == "" {
			return false
		}
		name2, in2, right = cutStep(right)
		if name != name2 || in != "" && in != in2 {
			return false
		}
	}
	return true
}

// cutStep splits the first step off a printed address: its name, what stands in
// brackets with them, and the rest without the dot.
func cutStep(s string) (name, in, rest string) {
	i := strings.IndexAny(s, ".[")
	switch {
	case i < 0:
		return s, "", ""
	case s[i] == '.':
		return s[:i], "", s[i+1:]
	}
	end := i + 1
	for quoted := false; end < len(s) && (quoted || s[end] != ']'); end++ {
		switch {
		case s[end] == '\\':
			end++
		case s[end] == '"':
			quoted = !quoted
		}
	}
	end = min(end+1, len(s))
	return s[:i], s[i:end], strings.TrimPrefix(s[end:], ".")
}
