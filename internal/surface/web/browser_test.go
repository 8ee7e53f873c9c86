package web

import (
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"scantling/internal/outside"
	"scantling/web"
)

// The pages work in a real browser: they change the plan and the maker's file,
// can be used by keyboard, have no violations in any look or size, and fit the
// screen. Pictures of all of them are left in the folder that PICTURES names.
func TestBrowser(t *testing.T) {
	const check = "the app in a browser"
	root := filepath.Join(outside.Root(), "web")
	// Read here too, so that the test is not taken for done when they change.
	for _, name := range []string{"tests/run.js", "tests/browser.js", "node_modules/playwright-core/package.json"} {
		if _, err := os.ReadFile(filepath.Join(root, name)); err != nil || !web.Built() {
			why := check + ": the pages are not built: run make web"
			if os.Getenv("REQUIRE") == "all" {
				t.Fatal(why)
			}
			t.Skip(why)
		}
	}
	chromium := outside.Program(t, check, "chromium", "chromium-browser", "google-chrome")
	node := outside.Program(t, check+", driven by node", "node")
	b := newBench(t)
	s, err := NewServer(b.desk, web.Pages())
	if err != nil {
		t.Fatal(err)
	}
	l, err := Listen(0)
	if err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithTimeout(context.Background(), 10*time.Minute)
	defer stop()
	ended := make(chan error, 1)
	go func() { ended <- s.Serve(ctx, l) }()
	pictures := os.Getenv("PICTURES")
	if pictures == "" {
		pictures = t.TempDir()
	}
	run := exec.CommandContext(ctx, node, "tests/run.js", chromium, "http://"+l.Addr().String()+"/", filepath.Join(b.dir, demo), pictures)
	run.Dir = root
	out, err := run.CombinedOutput()
	t.Logf("%s", out)
	if err != nil {
		t.Error(err)
	}
	stop()
	if err := <-ended; err != nil {
		t.Error(err)
	}
}
