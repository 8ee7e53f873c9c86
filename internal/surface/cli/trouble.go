package cli

import (
	"errors"
	"io/fs"
	"path/filepath"
	"strings"
	"syscall"

	"scantling"
	"scantling/internal/document"
	"scantling/internal/message"
	"scantling/internal/unit"
	"scantling/internal/words"
)

// usageError is what the user can mend: a word of the command line, a file that
// is not there. It says what, where and what would do.
type usageError struct {
	key  string
	args []message.Arg
	// near is what was probably meant; empty where nothing is near.
	near string
	// cause is what lies under it, for errors.Is.
	cause error
}

func complain(key string, args ...message.Arg) *usageError { return &usageError{key: key, args: args} }

// Error implements error.
func (e *usageError) Error() string {
	say := plain()
	text := say.Say(message.New(e.key, e.args...))
	if e.near != "" {
		text += " " + say.Label("cli.did-you-mean", message.Text("near", e.near))
	}
	return text
}

// Unwrap returns the cause, if there is one.
func (e *usageError) Unwrap() error { return e.cause }

// plain are the words for what is said before there is a shop.
func plain() *words.Words {
	return words.New(words.English, words.British, unit.Show{System: unit.Metric, Resolution: unit.Micrometre}, "")
}

// fileTrouble puts an error of the outside into words. File is the document that
// the user named.
func fileTrouble(err error, file string) error {
	var of *scantling.FileError
	if !errors.As(err, &of) {
		return err
	}
	name := filepath.Join(filepath.Dir(file), of.Name)
	arg := []message.Arg{message.Text("file", name), message.Word("role", "cli.role-"+string(of.Role))}
	switch {
	case errors.Is(err, fs.ErrNotExist):
		e := complain("cli.no-file", arg...)
		if of.Role == scantling.DesignFile {
			e.near = nearFile(file)
		}
		return e
	case errors.Is(err, fs.ErrPermission):
		return complain("cli.may-not-read", arg...)
	case errors.Is(err, syscall.EISDIR):
		return complain("cli.is-folder", arg...)
	}
	return complain("cli.cannot-read", append(arg, message.Text("why", bare(err)))...)
}

// nearFile looks for a design document that was probably meant: one of a name
// like it, or the only one there is.
func nearFile(file string) string {
	beside, err := filepath.Glob(filepath.Join(literally(filepath.Dir(file)), "*"+designEnding))
	if err != nil || len(beside) == 0 {
		return ""
	}
	if len(beside) == 1 {
		return beside[0]
	}
	return document.Nearest(filepath.Clean(file), beside)
}

// literally quotes what has a meaning in patterns of file names.
func literally(path string) string {
	return strings.NewReplacer(`\`, `\\`, `*`, `\*`, `?`, `\?`, `[`, `\[`).Replace(path)
}

// writeTrouble puts an error of writing to a folder or file into words.
func writeTrouble(err error, to string) error {
	arg := message.Text("to", to)
	switch {
	case errors.Is(err, syscall.ENOTDIR), errors.Is(err, fs.ErrExist):
		return complain("cli.output-is-file", arg)
	case errors.Is(err, fs.ErrPermission), errors.Is(err, syscall.EROFS):
		return complain("cli.may-not-write", arg)
	case errors.Is(err, syscall.ENOSPC):
		return complain("cli.disk-full", arg)
	}
	return complain("cli.cannot-write", arg, message.Text("why", bare(err)))
}

// bare takes the operation and the path off an error of the operating system.
func bare(err error) string {
	var path *fs.PathError
	if errors.As(err, &path) {
		return path.Err.Error()
	}
	return err.Error()
}

// recordTrouble puts a refusal of the record into words.
func recordTrouble(err error, of, file string) error {
	var parse *unit.ParseError
	switch {
	case errors.As(err, &parse):
		return complain("cli.no-quantity", message.Text("text", parse.Text), message.Word("why", "length-fault."+string(parse.Fault)))
	case errors.Is(err, scantling.ErrNoSuchThing):
		return &usageError{key: "cli.no-such-thing", args: []message.Arg{message.Text("of", of), message.Text("file", file)}, cause: err}
	case errors.Is(err, scantling.ErrNothingSaid):
		return complain("cli.nothing-said")
	}
	return fileTrouble(err, file)
}
