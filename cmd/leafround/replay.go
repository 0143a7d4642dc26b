package main

import (
	"bufio"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"time"

	"github.com/mattn/go-isatty"

	"leafround/bot"
	"leafround/bot/pgembed"
	"leafround/bot/play"
	"leafround/bot/script"
)

// replayCmd plays a conversation script against an empty log.
type replayCmd struct {
	File string `arg:"" help:"The script: lines such as 2026-11-25 17:40 Jo: p12 2 2.5 2"`
	JSON bool   `name:"json" help:"Print one JSON object a message, with the figures behind each reply."`
}

// Run prints the script again with the bot's words as they are now. Nothing is
// kept.
func (c replayCmd) Run(ctx context.Context, s streams) (err error) {
	text, err := os.ReadFile(c.File)
	if err != nil {
		return fmt.Errorf("the script can't be read: %w", err)
	}
	lines, err := script.Read(string(text))
	if err != nil {
		return err
	}
	dir, err := os.MkdirTemp("", "leafround-replay-")
	if err != nil {
		return fmt.Errorf("no folder for the replay's log: %w", err)
	}
	defer os.RemoveAll(dir)
	server, err := pgembed.Start(ctx, pgembed.Options{DataDir: dir, Fast: true})
	if err != nil {
		return err
	}
	defer func() {
		if end := server.Stop(); err == nil {
			err = end
		}
	}()
	return c.play(ctx, s, server.URL(), lines)
}

func (c replayCmd) play(ctx context.Context, s streams, url string, lines []script.Line) error {
	p, err := play.New(ctx, play.Options{URL: url, Dir: filepath.Dir(c.File)})
	if err != nil {
		return err
	}
	defer p.Close()
	w := bufio.NewWriter(s.out)
	out := play.Text(w)
	if c.JSON {
		out = play.JSON(w)
	}
	if f, ok := s.err.(*os.File); ok && isatty.IsTerminal(f.Fd()) {
		out = &progress{Printer: out, to: f, of: messages(lines)}
	}
	if err := p.Play(ctx, lines, out); err != nil {
		w.Flush()
		return err
	}
	return w.Flush()
}

func messages(lines []script.Line) (n int) {
	for _, l := range lines {
		if l.Message != nil {
			n++
		}
	}
	return n
}

// progress tells on a terminal how far a long script has come.
type progress struct {
	play.Printer
	to   *os.File
	n    int
	of   int
	last time.Time
}

func (p *progress) Message(m *script.Message, at time.Time, outcomes []bot.Outcome) error {
	p.n++
	if time.Since(p.last) > 500*time.Millisecond || p.n == p.of {
		p.last = time.Now()
		end := "\r"
		if p.n == p.of {
			end = "\n"
		}
		fmt.Fprintf(p.to, "\rmessage %d of %d, %s%s", p.n, p.of, m.Local, end)
	}
	return p.Printer.Message(m, at, outcomes)
}
