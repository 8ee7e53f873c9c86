package address

import "testing"

func TestCovers(t *testing.T) {
	for _, c := range []struct {
		a, b Address
		want bool
	}{
		{"drawer", "drawer[2].side.left", true},
		{"drawer.side", "drawer[2].side.left", true},
		{"drawer[2].side", "drawer[2].side.left", true},
		{"drawer[1].side", "drawer[2].side.left", false},
		{"drawer", "drawer", true},
		{"drawer[2].side", "drawer", false},
		{"draw", "drawer", false},
		{"tray.channel", `tray.channel["4.0 a"]`, true},
		{`tray.channel["4.0 a"]`, `tray.channel["4.0 a"]`, true},
		{`tray.channel["a]b"]`, `tray.channel["a]c"]`, false},
		{`tray.x`, `tray["].\"x"].x`, true},
		{"", "drawer", true},
	} {
		if got := c.a.Covers(c.b); got != c.want {
			t.Errorf("%q covers %q: %v, want %v", c.a, c.b, got, c.want)
		}
	}
}

func BenchmarkCovers(b *testing.B) {
	for b.Loop() {
		Address("drawer.side").Covers("drawer[2].side.left")
	}
}
