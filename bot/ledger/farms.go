package ledger

import (
	"context"
	"fmt"
)

const farmIDsSQL = `SELECT id FROM farm ORDER BY id`

// FarmIDs lists the farms.
func (l *Ledger) FarmIDs(ctx context.Context) ([]int64, error) {
	var ids []int64
	if err := l.db.SelectContext(ctx, &ids, farmIDsSQL); err != nil {
		return nil, fmt.Errorf("ledger: list farms: %w", err)
	}
	return ids, nil
}
