package ledger_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"leafround/bot/chat"
	"leafround/bot/pgembed/pgtest"
)

// BenchmarkUpdate is one update through the inbox, the log and the outbox.
func BenchmarkUpdate(b *testing.B) {
	book := pgtest.Ledger(b)
	var batch []chat.Raw
	for i := range b.N {
		batch = append(batch, raw(int64(i+1), -100))
	}
	require.NoError(b, book.Receive(b.Context(), batch))
	b.ResetTimer()
	for range b.N {
		did, err := book.Next(b.Context(), handle)
		require.NoError(b, err)
		require.True(b, did)
	}
}
