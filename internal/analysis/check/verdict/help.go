package verdict

import "strings"

// Help makes a check's help of its package's source: the comment in front of the
// package clause, without "Package x".
func Help(source string) string {
	var lines []string
	for line := range strings.Lines(source) {
		text, ok := strings.CutPrefix(strings.TrimRight(line, "\n"), "//")
		if !ok {
			break
		}
		lines = append(lines, strings.TrimPrefix(text, " "))
	}
	text := strings.TrimSpace(strings.Join(lines, "\n"))
	if rest, ok := strings.CutPrefix(text, "Package "); ok {
		if _, rest, ok = strings.Cut(rest, " "); ok && rest != "" {
			text = strings.ToUpper(rest[:1]) + rest[1:]
		}
	}
	return text
}
