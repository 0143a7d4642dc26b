package telegram

import (
	"context"
	"errors"
	"fmt"
	"io"
	"net/http"
	"strings"
	"time"

	"github.com/go-telegram/bot"

	"leafround/bot/chat"
)

// Options says where the Bot API is.
type Options struct {
	ServerURL string        // "" for Telegram's own
	Timeout   time.Duration // of one call; 0 means 30 seconds
}

// defaultServer is Telegram's own Bot API (https://core.telegram.org/bots/api).
const defaultServer = "https://api.telegram.org"

// Client speaks to one bot's Bot API.
type Client struct {
	bot    *bot.Bot
	http   *http.Client
	server string
	token  string
}

// New makes a client; it makes no call yet.
func New(token string, o Options) (*Client, error) {
	if o.Timeout == 0 {
		o.Timeout = 30 * time.Second
	}
	token = strings.TrimSpace(token)
	if strings.ContainsAny(token, "/ \t\r\n?#") || token == "" {
		return nil, errors.New("the bot's token is not one: copy it whole from BotFather into LEAFROUND_TOKEN")
	}
	c := &Client{http: &http.Client{Timeout: o.Timeout}, server: Server(o.ServerURL), token: token}
	quiet := func(error) {} // what matters comes back with the call
	b, err := bot.New(token, bot.WithSkipGetMe(), bot.WithServerURL(c.server),
		bot.WithHTTPClient(o.Timeout, c.http), bot.WithErrorsHandler(quiet))
	if err != nil {
		return nil, fmt.Errorf("telegram: %w", err)
	}
	c.bot = b
	return c, nil
}

// Server gives the base address of the Bot API, without a slash at its end.
func Server(url string) string {
	if url == "" {
		return defaultServer
	}
	return strings.TrimRight(url, "/")
}

// MethodURL gives the address of a method, the token in it: never to be shown.
func (c *Client) MethodURL(method string) string {
	return c.server + "/bot" + c.token + "/" + method
}

// Me asks the server who the bot is. A wrong token is one plain sentence.
func (c *Client) Me(ctx context.Context) (me chat.Person, username string, err error) {
	u, err := c.bot.GetMe(ctx)
	if errors.Is(err, bot.ErrorUnauthorized) || errors.Is(err, bot.ErrorNotFound) {
		return me, "", &chat.SendError{Fate: chat.BadToken,
			Err: fmt.Errorf("the Bot API at %s does not know this token: copy it again from BotFather into LEAFROUND_TOKEN", c.server)}
	}
	if err != nil {
		return me, "", c.classed(err)
	}
	return chat.Person{ID: u.ID, Name: u.FirstName, IsBot: u.IsBot}, u.Username, nil
}

// ReadyToPoll takes away a webhook that was set once; while one is set the
// server refuses to be polled. What waits is kept.
func (c *Client) ReadyToPoll(ctx context.Context) error {
	_, err := c.bot.DeleteWebhook(ctx, &bot.DeleteWebhookParams{})
	return c.classed(err)
}

// SetWebhook asks the server to bring updates to an address, with a secret in
// the header of each.
func (c *Client) SetWebhook(ctx context.Context, url, secret string, kinds []string) error {
	_, err := c.bot.SetWebhook(ctx, &bot.SetWebhookParams{URL: url, SecretToken: secret, AllowedUpdates: kinds})
	return c.classed(err)
}

// Download fetches a file that was sent, up to a size in bytes.
func (c *Client) Download(ctx context.Context, fileID string, atMost int64) ([]byte, error) {
	f, err := c.bot.GetFile(ctx, &bot.GetFileParams{FileID: fileID})
	if err != nil {
		return nil, c.classed(err)
	}
	req, err := http.NewRequestWithContext(ctx, http.MethodGet, c.bot.FileDownloadLink(f), nil)
	if err != nil {
		return nil, c.hidden(err)
	}
	resp, err := c.http.Do(req)
	if err != nil {
		return nil, c.hidden(err)
	}
	defer resp.Body.Close()
	if resp.StatusCode != http.StatusOK {
		return nil, fmt.Errorf("telegram: download: the server says %s", resp.Status)
	}
	b, err := io.ReadAll(io.LimitReader(resp.Body, atMost+1))
	if err != nil {
		return nil, c.hidden(err)
	}
	if int64(len(b)) > atMost {
		return nil, fmt.Errorf("telegram: download: the file has more than %d bytes", atMost)
	}
	return b, nil
}

// hidden tells an error without the token that an address in it may show.
func (c *Client) hidden(err error) error {
	return errors.New("telegram: " + strings.ReplaceAll(err.Error(), c.token, "<token>"))
}
