package main

import "sync"

// keptPages holds rendered pages of plans. A kept plan never changes, and its
// page is the largest there is: 20 ms of template for each reload otherwise.
// When full it starts again; the zero value is ready to use.
type keptPages struct {
	mu    sync.Mutex // guards pages
	pages map[string][]byte
}

// keepAtMost bounds the memory: a plan's page has some 150 kB.
const keepAtMost = 64

// get returns the page of a plan in some units, which both are its key,
// rendering it when it is not there yet.
func (k *keptPages) get(key string, render func() ([]byte, error)) ([]byte, error) {
	k.mu.Lock()
	page := k.pages[key]
	k.mu.Unlock()
	if page != nil {
		return page, nil
	}
	page, err := render()
	if err != nil {
		return nil, err
	}
	k.mu.Lock()
	defer k.mu.Unlock()
	if k.pages == nil || len(k.pages) >= keepAtMost {
		k.pages = map[string][]byte{}
	}
	k.pages[key] = page
	return page, nil
}
