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
	chromium := outside.Program(t, check, "chromium", "chromium-browser", "google-chrome")
	node := outside.Program(t, check, "node")
	modules := filepath.Join(outside.Root(), "web", "node_modules", "playwright-core")
	if _, err := os.Stat(modules); err != nil || !web.Built() {
		why := "the pages are not built: run make web"
		if os.Getenv("REQUIRE") == "all" {
			t.Fatal(why)
		}
		t.Skip(why)
	}
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
	run.Dir = filepath.Join(outside.Root(), "web")
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
