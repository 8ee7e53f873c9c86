package screen

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"scantling/internal/outside"
	"scantling/internal/unit"
	"scantling/internal/words"
)

var update = flag.Bool("update", false, "write the front end's generated files anew")

// The front end's types, words and drawing styles are those of this package.
func TestTypes(t *testing.T) {
	for name, want := range map[string]string{"state.ts": types(), "drawing.css": StyleSheet()} {
		path := filepath.Join(outside.Root(), "web", "src", name)
		if *update {
			if err := os.WriteFile(path, []byte(want), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		got, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if string(got) != want {
			t.Errorf("%s is out of date; run: go test ./internal/surface/screen -run TestTypes -update", path)
		}
	}
}

// types writes State and all that it is made of as TypeScript.
func types() string {
	var b strings.Builder
	b.WriteString("// Generated from the Go package internal/surface/screen. Do not edit.\n")
	seen := map[reflect.Type]bool{}
	var write func(reflect.Type) string
	write = func(t reflect.Type) string {
		switch t.Kind() {
		case reflect.String:
			if values, ok := unions[t]; ok {
				if !seen[t] {
					seen[t] = true
					fmt.Fprintf(&b, "\nexport type %s = '%s';\n", t.Name(), strings.Join(values, "' | '"))
				}
				return t.Name()
			}
			return "string"
		case reflect.Int, reflect.Float64:
			return "number"
		case reflect.Bool:
			return "boolean"
		case reflect.Slice:
			return write(t.Elem()) + "[]"
		case reflect.Map:
			return "Record<Word, string>"
		case reflect.Pointer:
			return write(t.Elem()) + " | null"
		case reflect.Struct:
			if !seen[t] {
				seen[t] = true
				var body strings.Builder
				for i := range t.NumField() {
					f := t.Field(i)
					fmt.Fprintf(&body, "  %s: %s;\n", f.Tag.Get("json"), write(f.Type))
				}
				fmt.Fprintf(&b, "\nexport interface %s {\n%s}\n", t.Name(), body.String())
			}
			return t.Name()
		}
		panic("no TypeScript for " + t.String())
	}
	write(reflect.TypeFor[State]())
	write(reflect.TypeFor[Fault]())
	var keys []string
	for _, k := range words.Keys() {
		if strings.HasPrefix(k, labelPrefix) {
			keys = append(keys, "'"+k+"'")
		}
	}
	fmt.Fprintf(&b, "\n/** The pages' own labels. */\nexport type Word =\n  | %s;\n", strings.Join(keys, "\n  | "))
	return b.String()
}

var unions = map[reflect.Type][]string{
	reflect.TypeFor[Kind](): {string(LengthInput), string(CountInput), string(ChoiceInput), string(YesInput), string(OtherInput)},
	reflect.TypeFor[Sign](): {string(StopSign), string(CheckSign), string(NoteSign), string(RightSign), string(IdleSign)},
}

// Every label is there, and what only a page can fill in stays in braces.
func TestLabels(t *testing.T) {
	labels := Labels(words.New(words.English, words.British, unit.Show{}, ""))
	if len(labels) < 50 {
		t.Fatalf("%d labels", len(labels))
	}
	if got, want := labels["app.step-of"], "Step {n} of {all}"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	for key, text := range labels {
		if strings.ContainsAny(text, "⟦⟧") {
			t.Errorf("%s: %q", key, text)
		}
	}
}
