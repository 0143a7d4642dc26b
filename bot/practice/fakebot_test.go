package practice_test

import (
	"bytes"
	"context"
	"image"
	"image/color"
	"image/png"
	"net/http/httptest"
	"strings"
	"testing"
	"time"

	"github.com/go-telegram/bot"
	"github.com/go-telegram/bot/models"
	"github.com/stretchr/testify/require"

	"leafround/bot/practice"
)

// fakeBot answers a few texts by rote, to try the page with.
func fakeBot(ctx context.Context, b *bot.Bot, u *models.Update) {
	switch {
	case u.CallbackQuery != nil:
		m := u.CallbackQuery.Message.Message
		_, _ = b.AnswerCallbackQuery(ctx, &bot.AnswerCallbackQueryParams{CallbackQueryID: u.CallbackQuery.ID, Text: "Taken back."})
		_, _ = b.EditMessageText(ctx, &bot.EditMessageTextParams{ChatID: m.Chat.ID, MessageID: m.ID, Text: "<s>Logged.</s> Taken back.", ParseMode: models.ParseModeHTML})
	case u.Message != nil && u.Message.Document != nil:
		fakeSay(ctx, b, u.Message, "Read the file "+u.Message.Document.FileName+".", nil)
	case u.Message != nil && u.Message.Location != nil:
		fakeSay(ctx, b, u.Message, "That is in paddock <b>7</b>.", nil)
	case u.Message != nil:
		fakeText(ctx, b, u.Message)
	case u.EditedMessage != nil:
		fakeSay(ctx, b, u.EditedMessage, "Read again: "+u.EditedMessage.Text, nil)
	}
}

func fakeText(ctx context.Context, b *bot.Bot, m *models.Message) {
	switch {
	case strings.Contains(m.Text, "rain"):
		_, _ = b.SetMessageReaction(ctx, &bot.SetMessageReactionParams{ChatID: m.Chat.ID, MessageID: m.ID,
			Reaction: []models.ReactionType{{Type: "emoji", ReactionTypeEmoji: &models.ReactionTypeEmoji{Emoji: "👍"}}}})
	case strings.Contains(m.Text, "plan"):
		_, _ = b.SendPhoto(ctx, &bot.SendPhotoParams{ChatID: m.Chat.ID, Caption: "The coming week, mob by mob.",
			Photo: &models.InputFileUpload{Filename: "plan.png", Data: bytes.NewReader(fakePicture())}, ReplyParameters: &models.ReplyParameters{MessageID: m.ID}})
	case strings.Contains(m.Text, "export"):
		_, _ = b.SendDocument(ctx, &bot.SendDocumentParams{ChatID: m.Chat.ID, Document: &models.InputFileUpload{Filename: "log.csv", Data: strings.NewReader("id,kind\n1,count\n")}})
	default:
		keys := [][]models.InlineKeyboardButton{{{Text: "Undo", CallbackData: "u"}, {Text: "Why", CallbackData: "w"}}}
		fakeSay(ctx, b, m, "<b>12 stands at 2.3 leaves</b> (2.0 to 2.6, six tillers).\nIn the window: ready from Wed 25 Nov, aim of 2.5 about <b>Fri 27 Nov</b>.", keys)
	}
}

func fakeSay(ctx context.Context, b *bot.Bot, m *models.Message, html string, keys [][]models.InlineKeyboardButton) {
	p := &bot.SendMessageParams{ChatID: m.Chat.ID, Text: html, ParseMode: models.ParseModeHTML, ReplyParameters: &models.ReplyParameters{MessageID: m.ID}}
	if keys != nil {
		p.ReplyMarkup = models.InlineKeyboardMarkup{InlineKeyboard: keys}
	}
	_, _ = b.SendMessage(ctx, p) // a refusal shows as a reply that never comes
}

// fakePicture is a striped picture with the size of a phone's width.
func fakePicture() []byte {
	m := image.NewRGBA(image.Rect(0, 0, 800, 500))
	for y := range 500 {
		for x := range 800 {
			m.Set(x, y, color.RGBA{uint8(230 - x/8), uint8(235 - y/8), uint8(200 - (x/100)%2*40), 255})
		}
	}
	var b bytes.Buffer
	if err := png.Encode(&b, m); err != nil {
		panic(err)
	}
	return b.Bytes()
}

// table is a practice page with the fake bot behind it.
type table struct {
	*practice.Server
	url   string
	farm  int64
	cast  []practice.Person
	clock *practice.Clock
}

func setTable(t *testing.T) *table {
	t.Helper()
	zone, err := time.LoadLocation("Pacific/Auckland")
	require.NoError(t, err)
	clock := practice.NewClock(time.Date(2026, 11, 25, 6, 10, 0, 0, zone))
	s := practice.New(practice.Options{Clock: clock})
	tb := &table{Server: s, clock: clock}
	for _, name := range []string{"Ana", "Wiremu", "Jo"} {
		tb.cast = append(tb.cast, s.AddPerson(name))
	}
	tb.farm = s.AddGroup(practice.Group{Title: "Totara Bend", Admins: []int64{tb.cast[0].ID}})
	server := httptest.NewServer(s.Page(practice.Page{Group: tb.farm, Zone: func(int64) string { return "Pacific/Auckland" }}))
	tb.url = server.URL
	ctx, cancel := context.WithCancel(t.Context())
	api, err := bot.New(s.Token(), bot.WithServerURL(server.URL), bot.WithNotAsyncHandlers(), bot.WithDefaultHandler(fakeBot),
		bot.WithErrorsHandler(func(error) {}))
	require.NoError(t, err)
	done := make(chan struct{})
	go func() { api.Start(ctx); close(done) }()
	t.Cleanup(func() {
		cancel()
		require.NoError(t, s.Close())
		server.CloseClientConnections()
		server.Close()
		<-done
	})
	return tb
}

// wait waits for the bot's reply to a message.
func (tb *table) wait(t *testing.T, match practice.Match) practice.Event {
	t.Helper()
	ctx, cancel := context.WithTimeout(t.Context(), 10*time.Second)
	defer cancel()
	e, err := tb.Await(ctx, 0, match)
	require.NoError(t, err)
	return e
}
