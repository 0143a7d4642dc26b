package ledger

import (
	"context"
	"crypto/rand"
	"fmt"
	"net/url"
	"strings"

	"github.com/lib/pq"
)

// Fresh makes an empty database on the server of another one, for a test or a
// replay. It gives its address and what drops it. template names a database to
// copy, "" for none.
func Fresh(ctx context.Context, address, template string) (fresh string, drop func() error, err error) {
	name := "lr_" + strings.ToLower(rand.Text())
	create := "CREATE DATABASE " + pq.QuoteIdentifier(name)
	if template != "" {
		create += " TEMPLATE " + pq.QuoteIdentifier(template)
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
