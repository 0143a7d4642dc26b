package practice_test

import (
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// window is a headless Chromium with the practice page in it.
type window struct {
	t   *testing.T
	ctx context.Context
}

// browser opens a window of a size; the test is skipped where there is no
// Chromium.
func browser(t *testing.T, width, height int, phone bool) *window {
	t.Helper()
	path := ""
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome"} {
		if p, err := exec.LookPath(name); err == nil {
			path = p
			break
		}
	}
	if path == "" {
		t.Skip("no Chromium here")
	}
	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(path), chromedp.NoSandbox,
		chromedp.Flag("disable-gpu", true), chromedp.Flag("disable-background-networking", true),
		chromedp.Flag("disable-component-update", true), chromedp.Flag("disable-domain-reliability", true),
		chromedp.WindowSize(width, height), chromedp.UserDataDir(t.TempDir()))
	alloc, stop := chromedp.NewExecAllocator(t.Context(), options...)
	ctx, leave := chromedp.NewContext(alloc)
	ctx, cancel := context.WithTimeout(ctx, 60*time.Second)
	t.Cleanup(func() { cancel(); leave(); stop() })
	emulate := []chromedp.EmulateViewportOption{chromedp.EmulateScale(1)}
	if phone {
		emulate = append(emulate, chromedp.EmulateMobile, chromedp.EmulateTouch)
	}
	w := &window{t, ctx}
	w.do(chromedp.EmulateViewport(int64(width), int64(height), emulate...))
	return w
}

func (w *window) do(steps ...chromedp.Action[chromedp.Void]) {
	w.t.Helper()
	require.NoError(w.t, chromedp.Do(w.ctx, steps...))
}

func (w *window) open(url string) {
	w.t.Helper()
	w.do(chromedp.Navigate(url), chromedp.WaitVisible(chromedp.CSS("#text")))
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
	require.Eventually(w.t, func() bool { return chromedp.Do(w.ctx, step) == nil }, 10*time.Second, 50*time.Millisecond, what)
}

func (w *window) keys(keys string, o ...chromedp.KeyOption) {
	w.t.Helper()
	w.do(chromedp.KeyEvent(keys, o...))
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
	require.Eventually(w.t, func() bool {
		ok, err := chromedp.Run(w.ctx, chromedp.Evaluate[bool]("!!("+expression+")"))
		return err == nil && ok
	}, 10*time.Second, 25*time.Millisecond, expression)
}

// says waits until the log holds words.
func (w *window) says(words ...string) {
	w.t.Helper()
	for _, s := range words {
		w.until(`document.getElementById("log").textContent.includes(` + quote(s) + `)`)
	}
}

// artefact keeps a screenshot under .artefacts at the top of the repository.
func (w *window) artefact(name string) {
	w.t.Helper()
	shot, err := chromedp.Run(w.ctx, chromedp.CaptureScreenshot())
	require.NoError(w.t, err)
	dir := filepath.Join("..", "..", ".artefacts")
	require.NoError(w.t, os.MkdirAll(dir, 0o755))
	require.NoError(w.t, os.WriteFile(filepath.Join(dir, "practice-"+name+".png"), shot, 0o644))
}
