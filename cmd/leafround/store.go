package main

import (
	"context"
	"errors"
	"io"
	"log/slog"
	"path/filepath"

	"leafround/bot/ledger"
	"leafround/bot/pgembed"
)

// store is the open log, and the private PostgreSQL behind it where there is
// one.
type store struct {
	*ledger.Ledger
	server *pgembed.Server
}

// open gives the log: behind the address that was told, or in a private
// PostgreSQL in the data directory.
func (s storeFlags) open(ctx context.Context, folder string, brief bool, log *slog.Logger) (*store, error) {
	if err := s.check(); err != nil {
		return nil, err
	}
	address := s.DatabaseURL
	o := &store{}
	if address == "" {
		dir, err := s.dir()
		if err != nil {
			return nil, err
		}
		o.server, err = pgembed.Start(ctx, pgembed.Options{DataDir: filepath.Join(dir, folder), Log: log, Brief: brief})
		if err != nil {
			return nil, err
		}
		address = o.server.URL()
	}
	var err error
	if o.Ledger, err = ledger.Open(ctx, address, ledger.Options{Log: log}); err != nil {
		o.Close()
		return nil, err
	}
	return o, nil
}

// Close ends the connections and then the server.
func (s *store) Close() error {
	var errs []error
	if s.Ledger != nil {
		errs = append(errs, s.Ledger.Close())
	}
	if s.server != nil {
		errs = append(errs, s.server.Stop())
	}
	return errors.Join(errs...)
}

// logTo gives a logger for the operator, on standard error.
func logTo(w io.Writer) *slog.Logger {
	return slog.New(slog.NewTextHandler(w, &slog.HandlerOptions{Level: slog.LevelInfo}))
}
