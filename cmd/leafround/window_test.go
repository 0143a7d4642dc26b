package main

import (
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// window is a headless Chromium with the practice page in it.
type window struct {
	t    *testing.T
	ctx  context.Context
	size string // stands in the names of its screenshots
}

// patience is the longest wait for anything to show in the page: the machine
// that runs the tests may be busy.
const patience = 45 * time.Second

// chromium finds the browser; the test is skipped where there is none.
func chromium(t *testing.T) string {
	t.Helper()
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome"} {
		if path, err := exec.LookPath(name); err == nil {
			return path
		}
	}
	t.Skip("no Chromium here")
	return ""
}

// openWindow opens a window of a size, as a phone's where it is one.
func openWindow(t *testing.T, width, height int64, phone bool) *window {
	t.Helper()
	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(chromium(t)), chromedp.NoSandbox,
		chromedp.Flag("disable-gpu", true), chromedp.Flag("disable-background-networking", true),
		chromedp.Flag("disable-component-update", true), chromedp.Flag("disable-domain-reliability", true),
		chromedp.WindowSize(int(width), int(height)), chromedp.UserDataDir(t.TempDir()))
	alloc, stop := chromedp.NewExecAllocator(t.Context(), options...)
	ctx, leave := chromedp.NewContext(alloc)
	ctx, cancel := context.WithTimeout(ctx, 5*time.Minute)
	t.Cleanup(func() { cancel(); leave(); stop() })
	emulate := []chromedp.EmulateViewportOption{chromedp.EmulateScale(1)}
	if phone {
		emulate = append(emulate, chromedp.EmulateMobile, chromedp.EmulateTouch)
	}
	w := &window{t, ctx, strconv.FormatInt(width, 10)}
	require.NoError(t, chromedp.Do(ctx, chromedp.EmulateViewport(width, height, emulate...)))
	return w
}

func (w *window) open(url string) {
	w.t.Helper()
	require.NoError(w.t, chromedp.Do(w.ctx, chromedp.Navigate(url), chromedp.WaitVisible(chromedp.CSS("#text"))))
	w.ready()
}

// ready waits until a page that was gone to has run its script.
func (w *window) ready() {
	w.t.Helper()
	w.until(`document.readyState === "complete"`)
}

func (w *window) click(css string) {
	w.t.Helper()
	w.retry(chromedp.Click(chromedp.CSS(css)), css)
}

func (w *window) fill(css, value string) {
	w.t.Helper()
	w.retry(chromedp.SetValue(chromedp.CSS(css), value), css)
}

// retry does a step again while the page is being left or drawn anew.
func (w *window) retry(step chromedp.Action[chromedp.Void], what string) {
	w.t.Helper()
	require.Eventually(w.t, func() bool {
		ctx, cancel := context.WithTimeout(w.ctx, 5*time.Second)
		defer cancel()
		return chromedp.Do(ctx, step) == nil
	}, patience, 50*time.Millisecond, what)
}

// js gives what an expression comes to.
func (w *window) js(expression string) string {
	w.t.Helper()
	v, err := chromedp.Run(w.ctx, chromedp.Evaluate[string](expression))
	require.NoError(w.t, err, expression)
	return v
}

// until waits until an expression holds in the page; a page that is just being
// left does not count.
func (w *window) until(expression string) {
	w.t.Helper()
	end := time.Now().Add(patience)
	for {
		ok, err := chromedp.Run(w.ctx, chromedp.Evaluate[bool]("!!("+expression+")"))
		if err == nil && ok {
			return
		}
		if time.Now().After(end) {
			w.artefact("failed")
			require.Failf(w.t, "it never held in the page: "+expression, "(%v) the page ends with:\n%s", err,
				w.js(`document.getElementById("log").innerText.slice(-1500)`))
		}
		time.Sleep(60 * time.Millisecond)
	}
}

// artefact keeps a screenshot under .artefacts at the top of the repository.
func (w *window) artefact(name string) {
	w.t.Helper()
	if name != "failed" {
		w.until(`document.getAnimations().length === 0`)
	}
	shot, err := chromedp.Run(w.ctx, chromedp.CaptureScreenshot())
	require.NoError(w.t, err)
	dir := filepath.Join("..", "..", ".artefacts")
	require.NoError(w.t, os.MkdirAll(dir, 0o755))
	require.NoError(w.t, os.WriteFile(filepath.Join(dir, "demo-"+name+"-"+w.size+".png"), shot, 0o644))
}
