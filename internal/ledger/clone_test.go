package ledger_test

import (
	"fmt"
	"testing"

	"scantling/internal/ledger"
	"scantling/internal/unit"
)

// TestClone: figures of the ledger are good in its clone, the same line has the same
// number, and neither sees what the other enters.
func TestClone(t *testing.T) {
	l := ledger.New(nil)
	a, b := l.Leaf("a", unit.MM(3), ledger.Document, ""), l.Leaf("b", unit.MM(4), ledger.Document, "")
	sum := l.Sum("sum", a, b)
	before := fmt.Sprint(l.Entries())
	c := l.Clone()
	if again := c.Sum("sum", a, b); again != sum {
		t.Errorf("the same sum is %v, and %v in the clone", sum, again)
	}
	tried := c.Less("rest", sum, b)
	if tried.Nm != unit.MM(3) || len(c.Verify()) > 0 {
		t.Errorf("%v, %v", tried, c.Verify())
	}
	if got := fmt.Sprint(l.Entries()); got != before {
		t.Errorf("the ledger was %s and is %s", before, got)
	}
	other := l.Sum("other", a, a)
	if e, _ := c.Entry(other.Entry); e.Name != "rest" {
		t.Errorf("the clone has %q at %d", e.Name, other.Entry)
	}
}
