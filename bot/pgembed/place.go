//go:build unix

package pgembed

import (
	"errors"
	"fmt"
	"hash/fnv"
	"os"
	"os/user"
	"path/filepath"
	"strconv"
	"syscall"
)

// rootHome is where root's clusters go when the data directory lies where no
// other user can enter (below /root, or in a temporary folder of root's).
const rootHome = "/var/lib/leafround"

// place is where a cluster lies and who runs it.
type place struct {
	home    string // folder of the locks, the log and the cluster
	cluster string // PGDATA
	owner   owner
	away    bool // not in the data directory: its user could not reach that
}

// owner is the user under whom PostgreSQL runs.
type owner struct {
	name     string
	uid, gid int
	other    bool // not the user of this process: we are root
}

// findPlace settles where the cluster of a data directory lies, and makes the
// folder.
func findPlace(dir string) (place, error) {
	dir, err := filepath.Abs(dir)
	if err != nil {
		return place{}, fmt.Errorf("pgembed: data directory: %w", err)
	}
	if os.Geteuid() == 0 {
		return placeForRoot(dir)
	}
	u, err := user.Current()
	if err != nil {
		return place{}, fmt.Errorf("PostgreSQL needs to know the name of the user who starts it, and user %d has none", os.Geteuid())
	}
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return place{}, fmt.Errorf("can't make the data directory %s: %w", dir, err)
	}
	p := place{home: dir, cluster: filepath.Join(dir, "postgres")}
	p.owner = owner{name: u.Username, uid: os.Geteuid(), gid: os.Getegid()}
	return p, nil
}

// placeForRoot picks the user that runs PostgreSQL and a folder that this user
// can reach: the data directory, or else one of its own under rootHome, to
// which a link in the data directory points.
func placeForRoot(dir string) (place, error) {
	if err := makePassable(dir); err != nil {
		return place{}, fmt.Errorf("can't make the data directory %s: %w", dir, err)
	}
	p := place{home: dir, cluster: filepath.Join(dir, "postgres")}
	var err error
	if p.owner, err = ownerFor(p.cluster); err != nil {
		return place{}, err
	}
	if reachable(filepath.Dir(dir), p.owner) && openUp(dir, p.owner) {
		return p, nil
	}
	return p.moveAway(dir)
}

// moveAway puts the cluster into a folder of its own under rootHome.
func (p place) moveAway(dir string) (place, error) {
	h := fnv.New64a()
	h.Write([]byte(dir))
	p.away = true
	p.home = filepath.Join(rootHome, fmt.Sprintf("for-%016x", h.Sum64()))
	p.cluster = filepath.Join(p.home, "postgres")
	if err := makePassable(p.home); err != nil {
		return place{}, fmt.Errorf("can't make %s, which PostgreSQL needs because user %s can't enter %s: %w", p.home, p.owner.name, dir, err)
	}
	if !reachable(p.home, p.owner) {
		return place{}, fmt.Errorf("PostgreSQL runs as user %s, who can enter neither %s nor %s: set LEAFROUND_DATA_DIR to a folder that others may pass through", p.owner.name, dir, p.home)
	}
	link := filepath.Join(dir, "postgres")
	if err := os.Symlink(p.cluster, link); err != nil && !errors.Is(err, os.ErrExist) {
		return place{}, fmt.Errorf("can't note in %s where the data lies: %w", dir, err)
	}
	return p, nil
}

// makePassable makes a folder and those above it that are missing, so that
// others may pass through whatever our umask is.
func makePassable(dir string) error {
	err := os.Mkdir(dir, 0o711)
	if errors.Is(err, os.ErrNotExist) {
		if err := makePassable(filepath.Dir(dir)); err != nil {
			return err
		}
		err = os.Mkdir(dir, 0o711)
	}
	if errors.Is(err, os.ErrExist) {
		info, err := os.Stat(dir)
		if err == nil && !info.IsDir() {
			err = fmt.Errorf("%s is not a folder", dir)
		}
		return err
	}
	if err != nil {
		return err
	}
	return os.Chmod(dir, 0o711)
}

// ownerFor gives the owner of the cluster where there is one, else the user
// postgres, nobody or daemon, whichever the system has.
func ownerFor(cluster string) (owner, error) {
	if info, err := os.Stat(filepath.Join(cluster, "PG_VERSION")); err == nil {
		if st, ok := info.Sys().(*syscall.Stat_t); ok && st.Uid != 0 {
			if u, err := user.LookupId(strconv.Itoa(int(st.Uid))); err == nil {
				return ownerOf(u)
			}
		}
	}
	for _, name := range []string{"postgres", "nobody", "daemon"} {
		if u, err := user.Lookup(name); err == nil {
			return ownerOf(u)
		}
	}
	return owner{}, errors.New("PostgreSQL can't run as root: make a user named postgres (useradd --system postgres) and try again")
}

func ownerOf(u *user.User) (owner, error) {
	uid, err := strconv.Atoi(u.Uid)
	if err != nil {
		return owner{}, fmt.Errorf("pgembed: user %s: %w", u.Username, err)
	}
	gid, err := strconv.Atoi(u.Gid)
	if err != nil {
		return owner{}, fmt.Errorf("pgembed: user %s: %w", u.Username, err)
	}
	return owner{name: u.Username, uid: uid, gid: gid, other: uid != os.Geteuid()}, nil
}

// reachable tells whether a user may pass through a folder and all above it.
func reachable(dir string, o owner) bool {
	dir, err := filepath.EvalSymlinks(dir)
	if err != nil {
		return false
	}
	for {
		info, err := os.Stat(dir)
		if err != nil || !mayPass(info, o) {
			return false
		}
		if dir == "/" {
			return true
		}
		dir = filepath.Dir(dir)
	}
}

// mayPass reads the permission to search a folder, as the kernel does.
func mayPass(info os.FileInfo, o owner) bool {
	st, ok := info.Sys().(*syscall.Stat_t)
	if !ok {
		return false
	}
	switch {
	case int(st.Uid) == o.uid:
		return info.Mode()&0o100 != 0
	case int(st.Gid) == o.gid:
		return info.Mode()&0o010 != 0
	}
	return info.Mode()&0o001 != 0
}

// openUp lets the owner pass through the data directory itself, if it may
// already or if the directory is ours alone: empty, or holding our cluster.
// Passing through shows nothing of what lies in it.
func openUp(dir string, o owner) bool {
	if reachable(dir, o) {
		return true
	}
	files, err := os.ReadDir(dir)
	link, _ := os.Lstat(filepath.Join(dir, "postgres"))
	ours := link != nil && link.IsDir()
	if err != nil || (len(files) > 0 && !ours) {
		return false
	}
	info, err := os.Stat(dir)
	if err != nil || os.Chmod(dir, info.Mode().Perm()|0o011) != nil {
		return false
	}
	return reachable(dir, o)
}
