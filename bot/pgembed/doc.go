//go:build unix

// Package pgembed runs a private PostgreSQL for the program: one cluster in
// the data directory, a Unix socket and no TCP port, in a process group of its
// own. It finds PostgreSQL's binaries on the machine, or else fetches them.
//
//	server, err := pgembed.Start(ctx, pgembed.Options{DataDir: dir})
//	if err != nil { ... }
//	defer server.Stop()
//	db, err := sql.Open("postgres", server.URL())
//
// Several programs may start a server over one data directory: the first one
// starts it, the others join, and the last one out stops it. A program that is
// killed leaves whole data: its server shuts down by itself where the system
// can tell it (Linux), else the next start joins or recovers it.
//
// PostgreSQL refuses to run as root, so for root it runs as another user, in a
// folder that this user can reach. Who may connect is decided by the kernel's
// word for the other end of the socket (peer): root and the cluster's owner.
//
// The package never opens a connection of its own and never listens on TCP.
package pgembed
