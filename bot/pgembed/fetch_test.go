//go:build unix

package pgembed

import (
	"archive/zip"
	"bytes"
	"crypto/sha256"
	"fmt"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	embedded "github.com/fergusstrange/embedded-postgres"
	"github.com/stretchr/testify/require"
)

// archive packs stand-ins for the binaries as the repository has them: a jar
// with a tar in it.
func archive(t *testing.T) []byte {
	t.Helper()
	tree := t.TempDir()
	require.NoError(t, os.MkdirAll(filepath.Join(tree, "bin"), 0o755))
	for name, script := range map[string]string{
		"postgres": "#!/bin/sh\necho 'postgres (PostgreSQL) 18.3'\n",
		"initdb":   "#!/bin/sh\necho no >&2; exit 1\n",
		"pg_ctl":   "#!/bin/sh\nexit 1\n",
	} {
		require.NoError(t, os.WriteFile(filepath.Join(tree, "bin", name), []byte(script), 0o755))
	}
	txz, err := exec.Command("tar", "-C", tree, "-cJf", "-", "bin").Output()
	if err != nil {
		t.Skip("tar can't pack with xz here")
	}
	var jar bytes.Buffer
	z := zip.NewWriter(&jar)
	f, err := z.Create("postgres-linux.txz")
	require.NoError(t, err)
	_, err = f.Write(txz)
	require.NoError(t, err)
	require.NoError(t, z.Close())
	return jar.Bytes()
}

func TestBinariesAreFetchedWhole(t *testing.T) {
	jar := archive(t)
	s := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if strings.HasSuffix(r.URL.Path, ".sha256") {
			fmt.Fprintf(w, "%x", sha256.Sum256(jar))
			return
		}
		w.Write(jar)
	}))
	defer s.Close()
	repository = func() embedded.Config { return embedded.DefaultConfig().BinaryRepositoryURL(s.URL) }
	defer func() { repository = embedded.DefaultConfig }()
	defer syscall.Umask(syscall.Umask(0o077))

	p, err := findPlace(filepath.Join(dataDir(t), "data"))
	require.NoError(t, err)
	defer func() {
		if p.away {
			os.RemoveAll(p.home)
		}
	}()
	bin, err := p.fetch()
	require.NoError(t, err)
	require.Equal(t, "18", majorOf(bin))
	require.Contains(t, candidates(p.fetched()), bin)
	info, err := os.Stat(filepath.Join(bin, "initdb"))
	require.NoError(t, err)
	require.Equal(t, os.FileMode(0o755), info.Mode().Perm(), "another user can't run it")
}

func TestWithoutANetworkOnePlainSentence(t *testing.T) {
	repository = func() embedded.Config { return embedded.DefaultConfig().BinaryRepositoryURL("http://127.0.0.1:1") }
	defer func() { repository = embedded.DefaultConfig }()
	p := place{home: dataDir(t)}
	_, err := p.fetch()
	require.ErrorContains(t, err, "install it")
	require.NotContains(t, err.Error(), "\n")
}
