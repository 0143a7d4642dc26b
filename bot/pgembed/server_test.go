//go:build unix

package pgembed

import (
	"context"
	"os"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

func TestStartStop(t *testing.T) {
	dir := t.TempDir()
	begin := time.Now()
	s, err := Start(context.Background(), Options{DataDir: dir, Fast: true})
	require.NoError(t, err)
	t.Log("first start", time.Since(begin), s.URL(), s.place)
	begin = time.Now()
	require.NoError(t, s.Stop())
	t.Log("stop", time.Since(begin))
	begin = time.Now()
	s, err = Start(context.Background(), Options{DataDir: dir, Fast: true})
	require.NoError(t, err)
	t.Log("again", time.Since(begin))
	require.NoError(t, s.Stop())
	os.RemoveAll(s.place.home)
}
