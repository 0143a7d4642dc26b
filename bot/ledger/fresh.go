package ledger

import (
	"context"
	"crypto/rand"
	"errors"
	"fmt"
	"net/url"
	"strings"

	"github.com/lib/pq"
)

// freshPrefix begins the names of the databases that Fresh makes.
const freshPrefix = "lr_"

// Fresh makes an empty database on the server of another one, for a test or a
// replay. It gives its address and what drops it. template names a database to
// copy, "" for none.
func Fresh(ctx context.Context, address, template string) (fresh string, drop func() error, err error) {
	name := freshPrefix + strings.ToLower(rand.Text())
	create := "CREATE DATABASE " + pq.QuoteIdentifier(name)
	if template != "" {
		create += " WITH TEMPLATE " + pq.QuoteIdentifier(template)
	}
	if err := admin(ctx, address, create); err != nil {
		return "", nil, err
	}
	u, err := url.Parse(address)
	if err != nil {
		return "", nil, fmt.Errorf("ledger: fresh database: %w", err)
	}
	u.Path = "/" + name
	drop = func() error {
		return admin(context.Background(), address, "DROP DATABASE "+pq.QuoteIdentifier(name)+" WITH (FORCE)")
	}
	return u.String(), drop, nil
}

const emptySQL = `
DO $$ BEGIN EXECUTE (
  SELECT 'TRUNCATE ' || string_agg(quote_ident(tablename), ', ') || ' RESTART IDENTITY'
  FROM pg_tables WHERE schemaname = 'public' AND tablename <> 'goose_db_version'); END $$`

// Empty takes everything out of a database that Fresh made, and out of no
// other: it is quicker than a new one.
func Empty(ctx context.Context, address string) error {
	u, err := url.Parse(address)
	if err != nil || !strings.HasPrefix(u.Path, "/"+freshPrefix) {
		return errors.New("ledger: only a throw-away database is ever emptied")
	}
	return admin(ctx, address, emptySQL)
}

func admin(ctx context.Context, address, statement string) error {
	db, err := connect(ctx, address)
	if err != nil {
		return err
	}
	defer db.Close()
	if _, err := db.ExecContext(ctx, statement); err != nil {
		return fmt.Errorf("ledger: %s: %w", statement, err)
	}
	return nil
}
