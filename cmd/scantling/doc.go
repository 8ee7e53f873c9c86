// Command scantling plans furniture from the command line and serves the app.
//
// In: the arguments, the three standard streams, and an interrupt, which ends a
// running server. Out: the exit status. It must know nothing of furniture: what
// the arguments mean is in internal/surface/cli.
package main
