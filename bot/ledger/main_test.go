package ledger_test

import (
	"testing"

	"leafround/bot/pgembed/pgtest"
)

func TestMain(m *testing.M) { pgtest.Main(m) }
