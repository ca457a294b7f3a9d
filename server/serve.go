package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"log/slog"
	"net"
	"net/http"
	"path/filepath"
	"time"

	"coatwright/content"
	"coatwright/search"
	"coatwright/store"
)

// Limits of a connection. A page is sent in milliseconds; what takes longer is
// a slow or a hostile client.
const (
	readTimeout  = 10 * time.Second
	writeTimeout = 30 * time.Second
	idleTimeout  = 2 * time.Minute
	stopTimeout  = 5 * time.Second
)

func serveCommand(ctx context.Context, args []string, stdout, stderr io.Writer) int {
	flags := flag.NewFlagSet("coatwright", flag.ContinueOnError)
	flags.SetOutput(stderr)
	flags.Usage = func() { fmt.Fprint(stderr, usage) }
	listen := flags.String("listen", "127.0.0.1:8080", "address to listen on")
	data := flags.String("data", "./data", "folder for plans and the search index")
	if err := flags.Parse(args); err != nil {
		if errors.Is(err, flag.ErrHelp) {
			return exitOK
		}
		return exitMalformed
	}
	if err := serve(ctx, *listen, *data, stdout, stderr); err != nil {
		fmt.Fprintln(stderr, "coatwright:", err)
		return exitFailed
	}
	return exitOK
}

// serve runs until ctx ends. It prints one line, with the address.
func serve(ctx context.Context, listen, data string, stdout, stderr io.Writer) error {
	site, err := openSite(data, stderr)
	if err != nil {
		return err
	}
	defer site.close()
	listener, err := net.Listen("tcp", listen)
	if err != nil {
		return fmt.Errorf("listening on %s: %w", listen, err)
	}
	fmt.Fprintf(stdout, "coatwright is at http://%s\n", listener.Addr())
	server := &http.Server{
		Handler:     site.handler(),
		ReadTimeout: readTimeout, WriteTimeout: writeTimeout, IdleTimeout: idleTimeout,
		ErrorLog: slog.NewLogLogger(site.log.Handler(), slog.LevelWarn),
	}
	failed := make(chan error, 1)
	go func() { failed <- server.Serve(listener) }()
	select {
	case err := <-failed:
		return err
	case <-ctx.Done():
	}
	stopping, cancel := context.WithTimeout(context.Background(), stopTimeout)
	defer cancel()
	return server.Shutdown(stopping)
}

// site is what the pages are served from.
type site struct {
	notes *content.Library
	plans *store.Store
	index *search.Index
	log   *slog.Logger
	now   func() time.Time
	kept  keptPages
	grids keptGrids
}

// openSite opens a data folder, making what is missing.
func openSite(data string, stderr io.Writer) (*site, error) {
	notes, err := content.Load(content.BuiltIn(), nil)
	if err != nil {
		return nil, err
	}
	plans, err := store.Open(data)
	if err != nil {
		return nil, err
	}
	index, err := search.Open(filepath.Join(data, "search"), notes.Notes())
	if err != nil {
		plans.Close()
		return nil, err
	}
	return &site{
		notes: notes, plans: plans, index: index,
		log: slog.New(slog.NewTextHandler(stderr, &slog.HandlerOptions{Level: slog.LevelWarn})),
		now: time.Now,
	}, nil
}

func (s *site) close() {
	if err := errors.Join(s.index.Close(), s.plans.Close()); err != nil {
		s.log.Error("closing the data folder", "error", err)
	}
}

// healthCommand asks a running server whether it is well; the container's
// health check calls it.
func healthCommand(ctx context.Context, args []string, stderr io.Writer) int {
	address := "http://127.0.0.1:8080/healthz"
	if len(args) > 0 {
		address = args[0]
	}
	ctx, cancel := context.WithTimeout(ctx, 3*time.Second)
	defer cancel()
	request, err := http.NewRequestWithContext(ctx, http.MethodGet, address, nil)
	if err != nil {
		fmt.Fprintln(stderr, "coatwright:", err)
		return exitMalformed
	}
	response, err := http.DefaultClient.Do(request)
	if err != nil {
		fmt.Fprintln(stderr, "coatwright:", err)
		return exitFailed
	}
	defer response.Body.Close()
	if response.StatusCode != http.StatusOK {
		fmt.Fprintf(stderr, "coatwright: %s answers %s\n", address, response.Status)
		return exitFailed
	}
	return exitOK
}
