package outside

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"testing"
)

// Program returns the path of the first of the named programs that is
// installed; the check is known by name ("PDF structure by pdfinfo").
func Program(t testing.TB, check string, names ...string) string {
	t.Helper()
	for _, n := range names {
		if path, err := exec.LookPath(n); err == nil {
			note(t, "run", check, path)
			return path
		}
	}
	leaveOut(t, check, fmt.Sprintf("%v not installed", names))
	return ""
}

// Folder returns the folder of published data named by path below the folder in
// the variable SCANTLING_SHARED, which defaults to "shared" beside the project.
func Folder(t testing.TB, check, path string) string {
	t.Helper()
	base := os.Getenv("SCANTLING_SHARED")
	if base == "" {
		base = filepath.Join(Root(), "..", "shared")
	}
	dir := filepath.Join(base, filepath.FromSlash(path))
	if _, err := os.Stat(dir); err != nil {
		leaveOut(t, check, "data folder "+path+" is absent; name its parent in SCANTLING_SHARED")
		return ""
	}
	note(t, "run", check, path)
	return dir
}

// Module returns the folder of an installed Node module under tools/reference,
// and the path of node itself.
func Module(t testing.TB, check, name string) (node, dir string) {
	t.Helper()
	node, err := exec.LookPath("node")
	if err != nil {
		leaveOut(t, check, "node not installed")
		return "", ""
	}
	dir = filepath.Join(Root(), "tools", "reference", "node_modules", filepath.FromSlash(name))
	if _, err := os.Stat(dir); err != nil {
		leaveOut(t, check, "module "+name+" not installed: npm ci in tools/reference")
		return "", ""
	}
	note(t, "run", check, name)
	return node, dir
}

// Root returns the folder of the project.
func Root() string {
	_, file, _, _ := runtime.Caller(0)
	return filepath.Join(filepath.Dir(file), "..", "..")
}

// Long reports whether the long tiers are to be run (LONG=1).
func Long() bool { return os.Getenv("LONG") == "1" }

func leaveOut(t testing.TB, check, why string) {
	t.Helper()
	note(t, "left out", check, why)
	if os.Getenv("REQUIRE") == "all" {
		t.Fatalf("%s: %s, and REQUIRE=all", check, why)
	}
	t.Skipf("%s: %s", check, why)
}

func note(t testing.TB, what, check, detail string) {
	t.Helper()
	name := os.Getenv("OUTSIDE_LOG")
	if name == "" {
		return
	}
	f, err := os.OpenFile(name, os.O_APPEND|os.O_CREATE|os.O_WRONLY, 0o644)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	fmt.Fprintf(f, "%s\t%s\t%s\n", what, check, detail)
}
