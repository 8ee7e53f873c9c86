package address

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
)

func TestParse(t *testing.T) {
	for _, s := range []string{"", "drawer[2].side.left", `tray.channel["4.0 a"]`, "a-b_c9", `x["a\"b.c]"]`, `x[""]`, "žebro[1]"} {
		a, err := Parse(s)
		if err != nil || string(a) != s {
			t.Errorf("%q reads as %q, %v", s, a, err)
		}
	}
	for _, s := range []string{".", "a.", ".a", "a..b", "a[0]", "a[01]", "a[-1]", "a[1000001]", "a[1", "a[\"x", "a[\"x\"", "a[1]b", "9a", "-a", "a b", "a[x]", "a[1][2]", "\xff",
		strings.Repeat("a.", MaxSteps) + "a", strings.Repeat("a", MaxBytes+1)} {
		if a, err := Parse(s); err == nil {
			t.Errorf("%.40q reads as %q", s, a)
		}
	}
}

func TestFamily(t *testing.T) {
	a := Address("").Nth("drawer", 2).Child("channel").Keyed("at", "4.0 a")
	if a != `drawer[2].channel.at["4.0 a"]` || a.Parent() != "drawer[2].channel" || a.Last() != (Step{Name: "at", Key: "4.0 a", HasKey: true}) {
		t.Errorf("got %q, parent %q, last %v", a, a.Parent(), a.Last())
	}
	for _, c := range []struct {
		a, b Address
		want bool
	}{{"", "a", true}, {"a", "a", true}, {"a", "a.b", true}, {"a", "ab", false}, {"a", "a[1]", false}, {"a.b", "a", false}, {"a[1]", "a[1].b", true}, {"a[1]", "a[10]", false}} {
		if c.a.Has(c.b) != c.want {
			t.Errorf("%q has %q: %v", c.a, c.b, !c.want)
		}
	}
}

func TestCompare(t *testing.T) {
	want := []Address{"", "a", "a.b", "a[2]", "a[10]", `c["2.0 a"]`, `c["2.0 b"]`, `c["10.0 a"]`, "d"}
	got := slices.Clone(want)
	rand.New(rand.NewPCG(1, 1)).Shuffle(len(got), func(i, j int) { got[i], got[j] = got[j], got[i] })
	slices.SortFunc(got, Compare)
	if !slices.Equal(got, want) {
		t.Errorf("sorted %q, want %q", got, want)
	}
}

// Law: what is read prints as what reads back to itself.
func FuzzParse(f *testing.F) {
	for _, s := range []string{"drawer[2].side.left", `tray.channel["4.0 a"]`, `x["\u00e9\n"]`, "a[1", `a["`} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		a, err := Parse(s)
		if err != nil {
			return
		}
		again, err := Parse(string(a))
		if err != nil || again != a {
			t.Fatalf("%q prints as %q, which reads as %q, %v", s, a, again, err)
		}
		if steps, _ := a.Steps(); Join(steps...) != a || !a.Parent().Has(a) || Compare(a, a) != 0 {
			t.Fatalf("%q does not hold together", a)
		}
	})
}
