package solid

import (
	"os"
	"os/exec"
	"regexp"
	"testing"
)

// Products in sums must not be fused: one rounding instead of two would give
// other bits on arm64. The assembly of the geometry packages has no such
// instruction. Long tier, as it compiles for another platform.
func TestNoFusedProducts(t *testing.T) {
	if os.Getenv("LONG") == "" && os.Getenv("REQUIRE") != "all" {
		t.Skip("left out: arm64 assembly (LONG=1 or REQUIRE=all)")
	}
	cmd := exec.Command("go", "build", "-gcflags=-S", "../vec", "../polygon", "../solid", "../hidden", "../../shape")
	cmd.Env = append(os.Environ(), "GOOS=linux", "GOARCH=arm64")
	out, err := cmd.CombinedOutput()
	if err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	if len(out) < 100_000 {
		t.Fatalf("only %d bytes of assembly", len(out))
	}
	for _, line := range regexp.MustCompile(`(?m)^.*/(geom|shape)/.*\bFN?M(ADD|SUB)[SD]\b.*$`).FindAll(out, 10) {
		t.Errorf("%s", line)
	}
}
