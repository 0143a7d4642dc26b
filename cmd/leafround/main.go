// Command leafround is a chat bot for a farm's team: staff text leaf counts
// and stock moves from the paddock, the bot keeps them in one shared log and
// answers which paddock is next. One file a subcommand; README.md shows them
// in use.
package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"strings"
	"syscall"
	_ "time/tzdata" // farms have zones even where the machine has no table of them

	"github.com/alecthomas/kong"
)

// The exit statuses.
const (
	exitOK      = 0
	exitFailure = 1
	exitUsage   = 2
)

// commands are the subcommands; each has a Run method in its own file.
type commands struct {
	Demo    demoCmd    `cmd:"" help:"The whole bot with nothing to configure: an invented farm and a practice chat in the browser."`
	Serve   serveCmd   `cmd:"" help:"The bot on Telegram, until it is told to stop."`
	Replay  replayCmd  `cmd:"" help:"Play a conversation script against an empty log and print it with the bot's replies."`
	Parse   parseCmd   `cmd:"" help:"Read one message a line and print what each says as JSON."`
	Export  exportCmd  `cmd:"" help:"Print a farm's log as CSV."`
	Weather weatherCmd `cmd:"" help:"Read a CSV of daily weather into a farm's log."`
}

// streams are what a subcommand reads and writes.
type streams struct {
	in       io.Reader
	out, err io.Writer
}

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	code := run(ctx, os.Args[1:], streams{os.Stdin, os.Stdout, os.Stderr})
	stop()
	os.Exit(code)
}

// leave carries an exit status out of the command-line library.
type leave int

// run runs one command line and gives the exit status.
func run(ctx context.Context, args []string, s streams) (code int) {
	defer func() {
		switch p := recover().(type) {
		case nil:
		case leave:
			code = int(p)
		default:
			panic(p)
		}
	}()
	var cli commands
	k, err := kong.New(&cli, kong.Name("leafround"),
		kong.Description("A chat bot that keeps a farm's leaf counts and stock moves, and answers which paddock is next."),
		kong.Writers(s.out, s.err), kong.Exit(func(c int) { panic(leave(c)) }),
		kong.BindTo(ctx, (*context.Context)(nil)), kong.Bind(s), kong.UsageOnError())
	if err != nil {
		panic(err) // the commands above are declared wrongly
	}
	words, err := k.Parse(args)
	if err != nil {
		fmt.Fprintf(s.err, "leafround: %s; leafround -h shows what there is\n", oneLine(err))
		return exitUsage
	}
	var usage usageError
	switch err := words.Run(); {
	case err == nil:
		return exitOK
	case errors.As(err, &usage):
		fmt.Fprintf(s.err, "leafround: %s\n", oneLine(err))
		return exitUsage
	default:
		fmt.Fprintf(s.err, "leafround: %s\n", oneLine(err))
		return exitFailure
	}
}

// usageError is a fault in how the program was called.
type usageError string

func (e usageError) Error() string { return string(e) }

func oneLine(err error) string { return strings.Join(strings.Fields(err.Error()), " ") }
