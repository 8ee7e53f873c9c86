package document

import "testing"

// A board has as many defects as it has; a machine is still said once.
func TestDefects(t *testing.T) {
	const board = `scantling = 1
shop "s" {
  units = "mm"
}
board "oak" {
  defect {
    kind = "knot"
  }
  defect {
    kind = "check"
  }
}
`
	f, found := Read(Source{"shop.hcl", []byte(board)}, Limits{})
	if len(found) > 0 {
		t.Errorf("two defects: %v", found)
	}
	if f == nil {
		t.Fatal("nothing was read")
	}
	if _, found = Read(Source{"shop.hcl", []byte(board + "board \"oak\" {\n}\n")}, Limits{}); len(found) != 1 || found[0].Code != CodeTwice {
		t.Errorf("two boards of one name: %v", found)
	}
}
