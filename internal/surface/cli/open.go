package cli

import (
	"errors"
	"fmt"
	"io/fs"
	"os/exec"
	"runtime"
	"strconv"
	"syscall"

	"github.com/spf13/cobra"

	"scantling"
	"scantling/internal/message"
	"scantling/internal/surface/web"
	pages "scantling/web"
)

// defaultPort is where the app is served unless another port is asked for.
const defaultPort = 8732

func openCommand() *cobra.Command {
	var port int
	var quiet bool
	c := &cobra.Command{
		Use:               "open FILE",
		Short:             "Open the piece in the app, on this machine only",
		Args:              wants(1, 1),
		ValidArgsFunction: completeDesign,
		RunE: func(c *cobra.Command, args []string) error {
			w, name, err := beside(args[0], scantling.DesignFile)
			if err != nil {
				return err
			}
			defer w.Close()
			desk, err := web.Open(c.Context(), w, name)
			if err != nil {
				return fileTrouble(err, args[0])
			}
			server, err := web.NewServer(desk, pages.Pages())
			if err != nil {
				return err
			}
			listener, err := web.Listen(port)
			if err != nil {
				return portTrouble(err, port)
			}
			at := "http://" + listener.Addr().String()
			if !pages.Built() {
				fmt.Fprintln(c.ErrOrStderr(), "The app's pages have not been built; `make web` builds them. Until then one page says so.")
			}
			fmt.Fprintf(c.OutOrStdout(), "%s is open at %s (stop with Ctrl-C)\n", name, at)
			if !quiet {
				showBrowser(at)
			}
			return server.Serve(c.Context(), listener)
		},
	}
	c.Flags().IntVar(&port, "port", defaultPort, "port of this machine; 0 takes a free one")
	c.Flags().BoolVar(&quiet, "no-browser", false, "do not open a browser")
	return c
}

// portTrouble says why a port could not be listened at, and what would do.
func portTrouble(err error, port int) error {
	n := message.Text("port", strconv.Itoa(port))
	switch {
	case port < 0 || port > 65535:
		return complain("cli.no-port", n)
	case errors.Is(err, syscall.EADDRINUSE):
		return complain("cli.port-taken", n)
	case errors.Is(err, fs.ErrPermission):
		return complain("cli.port-denied", n)
	}
	return complain("cli.port", n, message.Text("why", err.Error()))
}

// showBrowser asks the desktop to show the app; where there is none, the address
// has been printed.
func showBrowser(at string) {
	name := map[string]string{"darwin": "open", "windows": "explorer"}[runtime.GOOS]
	if name == "" {
		name = "xdg-open"
	}
	if path, err := exec.LookPath(name); err == nil {
		if cmd := exec.Command(path, at); cmd.Start() == nil {
			go func() { _ = cmd.Wait() }()
		}
	}
}
