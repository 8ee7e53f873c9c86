package cli

import (
	"context"
	"path/filepath"

	"scantling"
	"scantling/internal/message"
	"scantling/internal/surface/folder"
)

// designEnding is how the name of a design document ends.
const designEnding = ".piece.hcl"

// beside opens the folder in which a file lies or is to lie, and returns it with
// the file's name there.
func beside(file string, role scantling.Role) (*folder.Folder, string, error) {
	dir, name := filepath.Split(file)
	if name == "" || name == "." || name == ".." {
		return nil, "", complain("cli.is-folder", message.Text("file", file), message.Word("role", "cli.role-"+string(role)))
	}
	if dir == "" {
		dir = "."
	}
	w, err := folder.Open(dir)
	if err != nil {
		return nil, "", fileTrouble(&scantling.FileError{Role: role, Name: name, Err: err}, file)
	}
	return w, name, nil
}

// planFile plans the document at a path of the disk. The caller closes the
// folder.
func planFile(ctx context.Context, file string, inputs map[string]string) (*scantling.Result, *folder.Folder, error) {
	w, name, err := beside(file, scantling.DesignFile)
	if err != nil {
		return nil, nil, err
	}
	r, err := scantling.Plan(ctx, w, name, scantling.Options{Inputs: inputs})
	if err == nil {
		err = settingsTrouble(r, inputs)
	} else {
		err = fileTrouble(err, file)
	}
	if err != nil {
		w.Close()
		return nil, nil, err
	}
	return r, w, nil
}
