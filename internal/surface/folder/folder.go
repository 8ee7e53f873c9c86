package folder

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path"
	"slices"
	"time"

	"scantling/internal/world"
)

// Folder is a world.World on disk.
type Folder struct {
	root *os.Root
	path string
}

var _ world.World = (*Folder)(nil)

// Open returns the world of an existing folder.
func Open(dir string) (*Folder, error) {
	root, err := os.OpenRoot(dir)
	if err != nil {
		return nil, err
	}
	return &Folder{root, dir}, nil
}

// Create is Open for a folder that is made first if there is none.
func Create(dir string) (*Folder, error) {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return nil, err
	}
	return Open(dir)
}

// Path returns the folder's own path.
func (f *Folder) Path() string { return f.path }

// Close lets go of the folder.
func (f *Folder) Close() error { return f.root.Close() }

// Read implements world.World.
func (f *Folder) Read(name string) ([]byte, error) {
	if err := world.CheckName(name); err != nil {
		return nil, err
	}
	file, err := f.root.Open(name)
	if err != nil {
		return nil, err
	}
	defer file.Close()
	data, err := io.ReadAll(io.LimitReader(file, world.MaxFile+1))
	if err == nil && len(data) > world.MaxFile {
		err = fmt.Errorf("%s is larger than %d bytes: %w", name, world.MaxFile, world.ErrTooLarge)
	}
	if err != nil {
		return nil, err
	}
	return data, nil
}

// Write implements world.World.
func (f *Folder) Write(name string, data []byte) error {
	if err := f.ready(name, len(data)); err != nil {
		return err
	}
	temp := path.Join(path.Dir(name), "."+path.Base(name)+".new")
	if err := f.writeSynced(temp, data, os.O_CREATE|os.O_WRONLY|os.O_TRUNC); err != nil {
		return err
	}
	if err := f.root.Rename(temp, name); err != nil {
		return errors.Join(err, f.root.Remove(temp))
	}
	return nil
}

// Append implements world.World.
func (f *Folder) Append(name string, data []byte) error {
	if err := f.ready(name, len(data)); err != nil {
		return err
	}
	return f.writeSynced(name, data, os.O_CREATE|os.O_WRONLY|os.O_APPEND)
}

// ready checks a name and makes the folders above it.
func (f *Folder) ready(name string, size int) error {
	if err := world.CheckName(name); err != nil {
		return err
	}
	if size > world.MaxFile {
		return fmt.Errorf("%s would be %d bytes, %d are allowed: %w", name, size, world.MaxFile, world.ErrTooLarge)
	}
	if dir := path.Dir(name); dir != "." {
		return f.root.MkdirAll(dir, 0o755)
	}
	return nil
}

func (f *Folder) writeSynced(name string, data []byte, how int) error {
	file, err := f.root.OpenFile(name, how, 0o644)
	if err != nil {
		return err
	}
	_, err = file.Write(data)
	if err == nil {
		err = file.Sync()
	}
	return errors.Join(err, file.Close())
}

// List implements world.World. Names that start with a dot are passed over.
func (f *Folder) List(folder string) ([]string, error) {
	if err := world.CheckFolder(folder); err != nil {
		return nil, err
	}
	if folder == "" {
		folder = "."
	}
	var names []string
	err := fs.WalkDir(f.root.FS(), folder, func(name string, d fs.DirEntry, err error) error {
		switch {
		case errors.Is(err, fs.ErrNotExist) && name == folder:
			return fs.SkipAll
		case err != nil:
			return err
		case name != "." && path.Base(name)[0] == '.':
			if d.IsDir() {
				return fs.SkipDir
			}
			return nil
		case !d.IsDir():
			if len(names) == world.MaxFiles {
				return fmt.Errorf("more than %d files: %w", world.MaxFiles, world.ErrTooLarge)
			}
			names = append(names, name)
		}
		return nil
	})
	slices.Sort(names)
	return names, err
}

// Today implements world.World.
func (f *Folder) Today() world.Date {
	y, m, d := time.Now().Date()
	return world.Date{Year: y, Month: int(m), Day: d}
}
