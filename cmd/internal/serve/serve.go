// Package serve shows a pattern as a page in the browser of the same computer: its
// form and text, the drawing as a person types, what does not agree, and
// everything to download. It listens on loopback alone, keeps one file, and never
// writes over what it has not seen. What it shows comes from package job.
package serve

import (
	"context"
	"errors"
	"fmt"
	"log"
	"net"
	"net/http"
	"runtime"
	"strconv"
	"time"

	"flatwright/cmd/internal/files"
)

// Port is the port that is tried first. It stays the same from day to day, since a
// browser keeps unsaved text by the address.
const Port = 7407

// Options say what is served and where. The zero value shows an example, and
// saves into the working folder.
type Options struct {
	File    string // the pattern file to open and save to; empty: none yet
	Folder  string // where a pattern without a file is saved; empty: the working folder
	Example string // opened if there is no file, as the page names it; empty: the usual one
	Port    int    // 0: Port, or the next that is free; below 0: any that is free
	Unsaved string // folder for what is not saved yet; empty: where the system keeps such things
	Version string // of the program
}

// Server is a page for one pattern.
type Server struct {
	o        Options
	doc      *document
	unsaved  *unsaved
	keys     *keys
	listener net.Listener
	http     *http.Server
	jobs     chan struct{} // one for each that may be worked at once
	ended    context.Context
	end      context.CancelFunc
}

// New reads the file, if one is named, and listens. The error is that of the file
// or of the port.
func New(ctx context.Context, o Options) (*Server, error) {
	doc, err := open(ctx, o.File, o.Folder)
	if err != nil {
		return nil, err
	}
	l, err := listen(o.Port)
	if err != nil {
		return nil, err
	}
	s := &Server{o: o, doc: doc, unsaved: newUnsaved(o.Unsaved), keys: newKeys(), listener: l, jobs: make(chan struct{}, max(2, runtime.GOMAXPROCS(0)))}
	s.ended, s.end = context.WithCancel(context.Background())
	s.http = &http.Server{
		Handler:           s.guard(s.routes()),
		ReadHeaderTimeout: 10 * time.Second,
		ReadTimeout:       30 * time.Second,
		IdleTimeout:       2 * time.Minute,
		MaxHeaderBytes:    32 << 10,
		ErrorLog:          log.New(quiet{}, "", 0),
		BaseContext:       func(net.Listener) context.Context { return s.ended },
	}
	return s, nil
}

// quiet takes what the library would log: broken connections, of no use to anyone.
type quiet struct{}

func (quiet) Write(p []byte) (int, error) { return len(p), nil }

// listen takes the usual port or one of the next ten, on loopback.
func listen(port int) (net.Listener, error) {
	on := func(p int) (net.Listener, error) {
		return net.Listen("tcp", net.JoinHostPort("127.0.0.1", strconv.Itoa(p)))
	}
	switch {
	case port < 0:
		return on(0)
	case port > 0:
		l, err := on(port)
		if err != nil {
			return nil, fmt.Errorf("cannot listen on port %d: is another program using it? (%w)", port, err)
		}
		return l, nil
	}
	for p := Port; p < Port+10; p++ {
		if l, err := on(p); err == nil {
			return l, nil
		}
	}
	return on(0)
}

// Address is what a person opens in a browser. It lets in, once, whoever has it: she can read and change
// the pattern. What stands behind the # stays in the browser.
func (s *Server) Address() string {
	s.keys.mu.Lock()
	defer s.keys.mu.Unlock()
	return "http://" + s.listener.Addr().String() + "/#open=" + s.keys.once
}

// Run serves until ctx ends; then it lets what is being saved come to its end. The
// error is the listener's.
func (s *Server) Run(ctx context.Context) error {
	done := make(chan struct{})
	go func() {
		defer close(done)
		s.doc.watch(s.ended)
	}()
	stopped := make(chan error, 1)
	go func() { stopped <- s.http.Serve(s.listener) }()
	var err error
	select {
	case <-ctx.Done():
	case err = <-stopped:
	}
	s.end() // ends the drawings and the streams of events
	last, cancel := context.WithTimeout(context.Background(), 5*time.Second)
	defer cancel()
	s.doc.mu.Lock() // no save is half done
	s.doc.closed = true
	s.doc.mu.Unlock()
	if down := s.http.Shutdown(last); down != nil {
		_ = s.http.Close() // what still hangs is cut
	}
	<-done
	s.keys.mu.Lock()
	s.keys.tear()
	s.keys.mu.Unlock()
	s.unsaved.write()
	if errors.Is(err, http.ErrServerClosed) {
		return nil
	}
	return err
}

// work waits for its turn. It gives false if the one who asked has gone.
func (s *Server) work(ctx context.Context) (release func(), ok bool) {
	select {
	case s.jobs <- struct{}{}:
		if ctx.Err() != nil {
			<-s.jobs
			return nil, false
		}
		return func() { <-s.jobs }, true
	case <-ctx.Done():
		return nil, false
	}
}

// most is the largest request: a pattern file at its largest, every character of it
// escaped.
const most = 6*files.MaxRead + 64<<10
