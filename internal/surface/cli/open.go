package cli

import (
	"fmt"
	"os/exec"
	"path/filepath"
	"runtime"

	"github.com/spf13/cobra"

	"scantling/internal/surface/folder"
	"scantling/internal/surface/web"
	pages "scantling/web"
)

// defaultPort is where the app is served unless another port is asked for.
const defaultPort = 8732

func openCommand() *cobra.Command {
	var port int
	var quiet bool
	c := &cobra.Command{
		Use:   "open FILE",
		Short: "Open the piece in the app, on this machine only",
		Args:  cobra.ExactArgs(1),
		RunE: func(c *cobra.Command, args []string) error {
			dir, name := filepath.Split(args[0])
			if dir == "" {
				dir = "."
			}
			w, err := folder.Open(dir)
			if err != nil {
				return err
			}
			defer w.Close()
			desk, err := web.Open(c.Context(), w, name)
			if err != nil {
				return err
			}
			server, err := web.NewServer(desk, pages.Pages())
			if err != nil {
				return err
			}
			listener, err := web.Listen(port)
			if err != nil {
				return fmt.Errorf("port %d is taken, by another piece perhaps: --port 0 takes a free one (%w)", port, err)
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
