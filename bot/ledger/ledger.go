package ledger

import (
	"context"
	"fmt"
	"log/slog"
	"net"
	"strings"
	"time"

	"github.com/jmoiron/sqlx"
	"github.com/lib/pq"

	"leafround/migrations"
)

// Options tunes a ledger; the zero value is what serve uses.
type Options struct {
	Log      *slog.Logger              // nil for silence
	Attempts int                       // times an update is tried before it is given up; 0 means 5
	Backoff  func(n int) time.Duration // wait after the n-th failure, from 1
	Conns    int                       // connections at most; 0 means 12
}

// Ledger is the open database.
type Ledger struct {
	db   *sqlx.DB
	url  string
	opts Options
	hub  *hub
}

// Open connects and brings the schema up to date.
func Open(ctx context.Context, url string, o Options) (*Ledger, error) {
	db, err := connect(ctx, url)
	if err != nil {
		return nil, err
	}
	l := &Ledger{db: db, url: url, opts: o.filled()}
	db.SetMaxOpenConns(l.opts.Conns)
	db.SetMaxIdleConns(l.opts.Conns)
	if err := migrations.Up(ctx, db.DB); err != nil {
		db.Close()
		return nil, fmt.Errorf("ledger: open: %w", err)
	}
	if l.hub, err = newHub(url, l.opts.Log); err != nil {
		db.Close()
		return nil, err
	}
	return l, nil
}

func (o Options) filled() Options {
	if o.Log == nil {
		o.Log = slog.New(slog.DiscardHandler)
	}
	if o.Attempts == 0 {
		o.Attempts = 5
	}
	if o.Backoff == nil {
		o.Backoff = func(n int) time.Duration { return 200 * time.Millisecond << min(2*n, 8) }
	}
	if o.Conns == 0 {
		o.Conns = 12
	}
	return o
}

// connect opens the database and makes sure that it answers; what goes wrong
// is one plain sentence.
func connect(ctx context.Context, url string) (*sqlx.DB, error) {
	if !strings.HasPrefix(url, "postgres://") && !strings.HasPrefix(url, "postgresql://") {
		return nil, fmt.Errorf("the database address must look like postgres://user@host/name (LEAFROUND_DATABASE_URL)")
	}
	config, err := pq.NewConfig(url)
	if err != nil {
		return nil, fmt.Errorf("the database address can't be read (LEAFROUND_DATABASE_URL): %w", err)
	}
	config.BinaryParameters = true // one round trip a statement instead of two
	connector, err := pq.NewConnectorConfig(config)
	if err != nil {
		return nil, fmt.Errorf("the database address can't be read (LEAFROUND_DATABASE_URL): %w", err)
	}
	connector.Dialer(dialer{})
	db := sqlx.NewDb(sqlOpen(connector), "postgres")
	if err := db.PingContext(ctx); err != nil {
		db.Close()
		return nil, fmt.Errorf("the database can't be reached (LEAFROUND_DATABASE_URL): %w", err)
	}
	return db, nil
}

// Close ends every connection.
func (l *Ledger) Close() error {
	l.hub.close()
	if err := l.db.Close(); err != nil {
		return fmt.Errorf("ledger: close: %w", err)
	}
	return nil
}

// Ping tells whether the database answers, for the readiness page.
func (l *Ledger) Ping(ctx context.Context) error {
	if err := l.db.PingContext(ctx); err != nil {
		return fmt.Errorf("ledger: ping: %w", err)
	}
	return nil
}

// dialer gives up on an address that does not answer within ten seconds.
type dialer struct{}

func (dialer) Dial(network, address string) (net.Conn, error) {
	return net.DialTimeout(network, address, 10*time.Second)
}

func (dialer) DialTimeout(network, address string, d time.Duration) (net.Conn, error) {
	return net.DialTimeout(network, address, d)
}

func (dialer) DialContext(ctx context.Context, network, address string) (net.Conn, error) {
	return (&net.Dialer{Timeout: 10 * time.Second}).DialContext(ctx, network, address)
}
