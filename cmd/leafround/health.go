package main

import (
	"context"
	"errors"
	"fmt"
	"net"
	"net/http"
	"time"

	"github.com/prometheus/client_golang/prometheus"
	"github.com/prometheus/client_golang/prometheus/promhttp"

	"leafround/bot/ledger"
)

// listen opens an address, or says in one sentence why it can't.
func listen(address string) (net.Listener, error) {
	l, err := net.Listen("tcp", address)
	if err != nil {
		return nil, fmt.Errorf("the address %s can't be listened on: choose another with --listen or LEAFROUND_LISTEN (%w)", address, cause(err))
	}
	return l, nil
}

func cause(err error) error {
	var op *net.OpError
	if errors.As(err, &op) {
		return op.Err
	}
	return err
}

// healthPages answers whether the program lives, whether it can work, and how
// much waits.
func healthPages(book *ledger.Ledger) *http.ServeMux {
	mux := http.NewServeMux()
	mux.HandleFunc("/healthz", func(w http.ResponseWriter, _ *http.Request) { fmt.Fprintln(w, "alive") })
	mux.HandleFunc("/readyz", func(w http.ResponseWriter, r *http.Request) {
		ctx, cancel := context.WithTimeout(r.Context(), 3*time.Second)
		defer cancel()
		if err := book.Ping(ctx); err != nil {
			http.Error(w, "the database does not answer", http.StatusServiceUnavailable)
			return
		}
		fmt.Fprintln(w, "ready")
	})
	registry := prometheus.NewRegistry()
	registry.MustRegister(waiting{book})
	mux.Handle("/metrics", promhttp.HandlerFor(registry, promhttp.HandlerOpts{}))
	return mux
}

// waiting tells Prometheus what the ledger holds.
type waiting struct{ book *ledger.Ledger }

var (
	inboxGauge  = prometheus.NewDesc("leafround_inbox_waiting", "Updates committed and not yet handled.", nil, nil)
	failedGauge = prometheus.NewDesc("leafround_inbox_failed", "Updates kept that could not be handled.", nil, nil)
	outboxGauge = prometheus.NewDesc("leafround_outbox_waiting", "Messages that wait to be sent.", nil, nil)
	refused     = prometheus.NewDesc("leafround_outbox_failed", "Messages that the server refused for good.", nil, nil)
)

// Describe names the figures.
func (waiting) Describe(to chan<- *prometheus.Desc) {
	for _, d := range []*prometheus.Desc{inboxGauge, failedGauge, outboxGauge, refused} {
		to <- d
	}
}

// Collect reads the figures.
func (c waiting) Collect(to chan<- prometheus.Metric) {
	ctx, cancel := context.WithTimeout(context.Background(), 3*time.Second)
	defer cancel()
	w, err := c.book.Waiting(ctx)
	if err != nil {
		to <- prometheus.NewInvalidMetric(inboxGauge, err)
		return
	}
	for d, n := range map[*prometheus.Desc]int64{inboxGauge: w.Inbox, failedGauge: w.Failed, outboxGauge: w.Outbox, refused: w.Refused} {
		to <- prometheus.MustNewConstMetric(d, prometheus.GaugeValue, float64(n))
	}
}

// serveUntil serves pages until the context ends.
func serveUntil(ctx context.Context, l net.Listener, h http.Handler) error {
	server := &http.Server{Handler: h, ReadHeaderTimeout: 10 * time.Second}
	over := make(chan error, 1)
	go func() { over <- server.Serve(l) }()
	select {
	case err := <-over:
		return fmt.Errorf("the pages on %s have ended: %w", l.Addr(), err)
	case <-ctx.Done():
	}
	end, cancel := context.WithTimeout(context.WithoutCancel(ctx), 2*time.Second)
	defer cancel()
	if server.Shutdown(end) != nil {
		return server.Close()
	}
	return nil
}
