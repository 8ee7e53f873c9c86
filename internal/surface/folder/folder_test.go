package folder

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"scantling/internal/world"
)

func TestFolder(t *testing.T) {
	dir := t.TempDir()
	f, err := Create(filepath.Join(dir, "out"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if err := f.Write("drawings/a.svg", []byte("one")); err != nil {
		t.Fatal(err)
	}
	if err := f.Write("drawings/a.svg", []byte("two")); err != nil {
		t.Fatal(err)
	}
	if err := f.Append("log", []byte("x")); err != nil {
		t.Fatal(err)
	}
	if err := f.Append("log", []byte("y")); err != nil {
		t.Fatal(err)
	}
	for name, want := range map[string]string{"drawings/a.svg": "two", "log": "xy"} {
		if got, err := f.Read(name); err != nil || string(got) != want {
			t.Errorf("Read(%q) = %q, %v, want %q", name, got, err, want)
		}
	}
	names, err := f.List("")
	if want := []string{"drawings/a.svg", "log"}; err != nil || !slices.Equal(names, want) {
		t.Errorf("List = %v, %v, want %v", names, err, want)
	}
	if names, err := f.List("nowhere"); err != nil || len(names) != 0 {
		t.Errorf("List of no folder = %v, %v", names, err)
	}
}

func TestFolderKeepsInside(t *testing.T) {
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "secret"), []byte("s"), 0o600); err != nil {
		t.Fatal(err)
	}
	f, err := Create(filepath.Join(dir, "in"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if err := os.Symlink(filepath.Join(dir, "secret"), filepath.Join(dir, "in", "link")); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"../secret", "/etc/hosts", "link", "a/../../secret", ""} {
		if got, err := f.Read(name); err == nil {
			t.Errorf("Read(%q) = %q, want an error", name, got)
		}
		if err := f.Write(name, []byte("x")); err == nil && name != "link" {
			t.Errorf("Write(%q) gave no error", name)
		}
	}
	if got, _ := os.ReadFile(filepath.Join(dir, "secret")); string(got) != "s" {
		t.Errorf("the file outside is now %q", got)
	}
	if _, err := f.Read("missing"); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("Read of a missing file: %v", err)
	}
	if err := f.Write("big", make([]byte, world.MaxFile+1)); !errors.Is(err, world.ErrTooLarge) {
		t.Errorf("Write of too much: %v", err)
	}
}
