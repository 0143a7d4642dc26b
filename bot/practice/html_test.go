package practice

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The accepted tags are those of Telegram's HTML style
// (core.telegram.org/bots/api#html-style, from memory).
func TestHTMLIsReadAndMadeAnew(t *testing.T) {
	for _, c := range []struct{ in, text, safe string }{
		{"plain", "plain", "plain"},
		{"<b>12</b> &lt; 3 &amp; more", "12 < 3 & more", "<b>12</b> &lt; 3 &amp; more"},
		{"<strong>a</strong><em>b</em>", "ab", "<b>a</b><i>b</i>"},
		{`<a href="https://example.org/?a=1&amp;b=2">go</a>`, "go", `<a href="https://example.org/?a=1&amp;b=2" rel="noopener noreferrer" target="_blank">go</a>`},
		{`<a href="javascript:alert(1)">go</a>`, "go", "<a>go</a>"},
		{`<b onclick="alert(1)">x</b>`, "x", "<b>x</b>"},
		{"&lt;script&gt;alert(1)&lt;/script&gt;", "<script>alert(1)</script>", "&lt;script&gt;alert(1)&lt;/script&gt;"},
		{`<code class="x">2.5</code>`, "2.5", "<code>2.5</code>"},
	} {
		read, err := parseHTML(c.in)
		require.NoError(t, err, c.in)
		assert.Equal(t, c.text, read.Text)
		assert.Equal(t, c.safe, read.Safe)
	}
}

func TestHTMLOutsideTheSubsetIsRefused(t *testing.T) {
	for _, in := range []string{"<script>x</script>", "<p>x</p>", "<img src=x onerror=alert(1)>", "<b>x", "x</b>", "<b><i>x</b></i>", "<b", "5 < 6", "<br>", "</"} {
		_, err := parseHTML(in)
		assert.Error(t, err, in)
	}
}

// Offsets are in UTF-16 units: the seedling is two, the umlaut one.
func TestEntitiesAreMeasuredInUTF16(t *testing.T) {
	read, err := parseHTML("🌱 ü <b>14</b>")
	require.NoError(t, err)
	assert.Equal(t, []Entity{{Type: "bold", Offset: 5, Length: 2}}, read.Entities)
}

func FuzzHTML(f *testing.F) {
	f.Add("<b>x</b>")
	f.Add(`<a href="x">y</a>`)
	f.Add("<b onclick='>'>x</b>")
	f.Fuzz(func(t *testing.T, in string) {
		read, err := parseHTML(in)
		if err != nil {
			return
		}
		again, err := parseHTML(strings.NewReplacer("<mark>", "<tg-spoiler>", "</mark>", "</tg-spoiler>").Replace(read.Safe))
		require.NoError(t, err, "what is shown is within the subset")
		assert.Equal(t, read.Text, again.Text)
	})
}
