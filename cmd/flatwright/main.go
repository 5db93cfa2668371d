// Flatwright draws the flat schematics and measurement tables of a crochet or
// knitted garment pattern from the pattern's own numbers, and proves that the
// numbers agree with each other.
package main

import (
	"context"
	"fmt"
	"os"
	"os/signal"
	"runtime/debug"
	"syscall"

	"github.com/spf13/cobra"

	"flatwright/cmd/internal/serve"
)

func main() {
	os.Exit(realMain())
}

func realMain() int {
	debug.SetGCPercent(400) // a command ends before its heap is worth clearing often: a fifth of its time
	debug.SetMemoryLimit(128 << 20)
	cobra.MousetrapHelpText = "" // a double click opens the page; see started
	ctx, cancel := context.WithCancelCause(context.Background())
	defer cancel(nil)
	signals := make(chan os.Signal, 1)
	signal.Notify(signals, os.Interrupt, syscall.SIGTERM)
	if !signal.Ignored(syscall.SIGHUP) { // as nohup has it
		signal.Notify(signals, syscall.SIGHUP)
	}
	go func() {
		s := <-signals
		signal.Stop(signals) // a second one ends the program at once
		cancel(fmt.Errorf("%s", s))
	}()
	return run(ctx, os.Args[1:], environment{
		in: os.Stdin, out: os.Stdout, err: os.Stderr,
		colour: colourful(os.Stderr, os.Getenv), outColour: colourful(os.Stdout, os.Getenv),
		opened: started().opened(), browse: serve.Browse,
	})
}
