package practice_test

import (
	"bytes"
	"context"
	"image"
	"image/png"
	"net/http/httptest"
	"testing"
	"time"

	"github.com/go-telegram/bot"
	"github.com/go-telegram/bot/models"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"leafround/bot/practice"
)

// stage is a practice chat with the client that the program itself uses.
type stage struct {
	*practice.Server
	api      *bot.Bot
	ctx      context.Context
	farm     int64
	ana, jo  practice.Person
	incoming chan *models.Update
}

// start sets up a farm's group and a polling client.
func start(t *testing.T, o practice.Options) *stage {
	t.Helper()
	s := practice.New(o)
	server := httptest.NewServer(s)
	ctx, cancel := context.WithTimeout(t.Context(), 20*time.Second)
	st := &stage{Server: s, ctx: ctx, incoming: make(chan *models.Update, 100)}
	st.ana, st.jo = s.AddPerson("Ana"), s.AddPerson("Jo")
	st.farm = s.AddGroup(practice.Group{Title: "Totara Bend", Admins: []int64{st.ana.ID}})
	api, err := bot.New(s.Token(), bot.WithServerURL(server.URL), bot.WithNotAsyncHandlers(),
		bot.WithDefaultHandler(func(_ context.Context, _ *bot.Bot, u *models.Update) { st.incoming <- u }))
	require.NoError(t, err)
	st.api = api
	done := make(chan struct{})
	go func() { api.Start(ctx); close(done) }()
	t.Cleanup(func() { cancel(); require.NoError(t, s.Close()); server.Close(); <-done })
	return st
}

// next gives the next update that the client was handed.
func (st *stage) next(t *testing.T) *models.Update {
	t.Helper()
	select {
	case u := <-st.incoming:
		return u
	case <-st.ctx.Done():
		require.Fail(t, "no update came")
		return nil
	}
}

func TestTextIsPolledAndAnswered(t *testing.T) {
	at := time.Date(2026, 11, 25, 6, 15, 0, 0, time.UTC)
	st := start(t, practice.Options{Now: func() time.Time { return at }})
	id, updateID := st.Say(st.farm, st.ana, "p12 2 2.5 2")
	u := st.next(t)
	require.NotNil(t, u.Message)
	assert.Equal(t, updateID, u.ID)
	assert.Equal(t, "p12 2 2.5 2", u.Message.Text)
	assert.Equal(t, "Ana", u.Message.From.FirstName)
	assert.Equal(t, int(at.Unix()), u.Message.Date)
	assert.Equal(t, models.ChatTypeSupergroup, u.Message.Chat.Type)

	sent, err := st.api.SendMessage(st.ctx, &bot.SendMessageParams{ChatID: st.farm, Text: "<b>12</b> &lt;3",
		ParseMode: models.ParseModeHTML, ReplyParameters: &models.ReplyParameters{MessageID: id},
		ReplyMarkup: models.InlineKeyboardMarkup{InlineKeyboard: [][]models.InlineKeyboardButton{{{Text: "Undo", CallbackData: "u:1"}}}}})
	require.NoError(t, err)
	assert.Equal(t, "12 <3", sent.Text)
	assert.Equal(t, id, sent.ReplyToMessage.ID)
	require.Len(t, sent.Entities, 1)
	assert.Equal(t, models.MessageEntity{Type: "bold", Offset: 0, Length: 2}, sent.Entities[0])
	reply, err := st.Await(st.ctx, 0, practice.ReplyFrom(st.farm, id))
	require.NoError(t, err)
	assert.Equal(t, [][]practice.Button{{{Text: "Undo", Data: "u:1"}}}, reply.Message.Buttons)
}

func TestPressEditAndReaction(t *testing.T) {
	st := start(t, practice.Options{})
	id, _ := st.Say(st.farm, st.ana, "12 grazed")
	st.next(t)
	sent, err := st.api.SendMessage(st.ctx, &bot.SendMessageParams{ChatID: st.farm, Text: "Logged.",
		ReplyMarkup: models.InlineKeyboardMarkup{InlineKeyboard: [][]models.InlineKeyboardButton{{{Text: "Undo", CallbackData: "u:1"}}}}})
	require.NoError(t, err)
	_, ok := st.PressButton(st.farm, st.jo, sent.ID, 0)
	require.True(t, ok)
	u := st.next(t)
	require.NotNil(t, u.CallbackQuery)
	assert.Equal(t, "u:1", u.CallbackQuery.Data)
	assert.Equal(t, st.jo.ID, u.CallbackQuery.From.ID)
	require.NotNil(t, u.CallbackQuery.Message.Message)
	assert.Equal(t, sent.ID, u.CallbackQuery.Message.Message.ID)
	answer := &bot.AnswerCallbackQueryParams{CallbackQueryID: u.CallbackQuery.ID, Text: "Ana's to undo"}
	_, err = st.api.AnswerCallbackQuery(st.ctx, answer)
	require.NoError(t, err)
	toast, err := st.Await(st.ctx, 0, practice.Toasted(st.jo))
	require.NoError(t, err)
	assert.Equal(t, "Ana's to undo", toast.Press.Answer)
	_, err = st.api.AnswerCallbackQuery(st.ctx, answer)
	assert.ErrorContains(t, err, "query is too old", "a press is answered once")

	_, err = st.api.EditMessageReplyMarkup(st.ctx, &bot.EditMessageReplyMarkupParams{ChatID: st.farm, MessageID: sent.ID})
	require.NoError(t, err)
	edited, err := st.Await(st.ctx, 0, practice.ChangedIn(st.farm, sent.ID))
	require.NoError(t, err)
	assert.Empty(t, edited.Message.Buttons)
	assert.Zero(t, edited.Message.EditedAt)
	_, err = st.api.EditMessageText(st.ctx, &bot.EditMessageTextParams{ChatID: st.farm, MessageID: sent.ID, Text: "Logged."})
	assert.ErrorContains(t, err, "message is not modified")

	_, err = st.api.SetMessageReaction(st.ctx, &bot.SetMessageReactionParams{ChatID: st.farm, MessageID: id,
		Reaction: []models.ReactionType{{Type: "emoji", ReactionTypeEmoji: &models.ReactionTypeEmoji{Emoji: "👍"}}}})
	require.NoError(t, err)
	assert.Equal(t, "👍", st.Messages(st.farm)[0].Reaction)
}

func TestFilesBothWays(t *testing.T) {
	st := start(t, practice.Options{})
	st.SendFile(st.farm, st.ana, "register.csv", []byte("name,area_ha\n1,3.2\n"), "our paddocks")
	u := st.next(t)
	require.NotNil(t, u.Message.Document)
	assert.Equal(t, "register.csv", u.Message.Document.FileName)
	assert.Equal(t, "our paddocks", u.Message.Caption)
	file, err := st.api.GetFile(st.ctx, &bot.GetFileParams{FileID: u.Message.Document.FileID})
	require.NoError(t, err)
	assert.Equal(t, "name,area_ha\n1,3.2\n", fetch(t, st.api.FileDownloadLink(file)))

	var b bytes.Buffer
	require.NoError(t, png.Encode(&b, image.NewGray(image.Rect(0, 0, 30, 20))))
	sent, err := st.api.SendPhoto(st.ctx, &bot.SendPhotoParams{ChatID: st.farm, Caption: "<i>stages</i>",
		ParseMode: models.ParseModeHTML, Photo: &models.InputFileUpload{Filename: "stages.png", Data: &b}})
	require.NoError(t, err)
	assert.Equal(t, "stages", sent.Caption)
	require.Len(t, sent.Photo, 1)
	assert.Equal(t, [2]int{30, 20}, [2]int{sent.Photo[0].Width, sent.Photo[0].Height})
	var larger bytes.Buffer
	require.NoError(t, png.Encode(&larger, image.NewGray(image.Rect(0, 0, 60, 40))))
	swapped, err := st.api.EditMessageMedia(st.ctx, &bot.EditMessageMediaParams{ChatID: st.farm, MessageID: sent.ID,
		Media: &models.InputMediaPhoto{Media: "attach://new.png", Caption: "<b>new</b>", ParseMode: models.ParseModeHTML, MediaAttachment: &larger}})
	require.NoError(t, err)
	assert.Equal(t, "new", swapped.Caption)
	assert.Equal(t, 60, swapped.Photo[0].Width)
	_, err = st.api.SendDocument(st.ctx, &bot.SendDocumentParams{ChatID: st.farm,
		Document: &models.InputFileUpload{Filename: "log.csv", Data: bytes.NewBufferString("id\n1\n")}})
	require.NoError(t, err)
	last := st.FromBot(st.farm)[1]
	kept, ok := st.File(last.File.ID)
	require.True(t, ok)
	assert.Equal(t, "id\n1\n", string(kept.Content))
}

func TestRefusals(t *testing.T) {
	st := start(t, practice.Options{})
	_, err := st.api.SendMessage(st.ctx, &bot.SendMessageParams{ChatID: 555, Text: "hello"})
	assert.ErrorIs(t, err, bot.ErrorBadRequest)
	_, err = st.api.SendMessage(st.ctx, &bot.SendMessageParams{ChatID: st.jo.ID, Text: "hello"})
	assert.ErrorIs(t, err, bot.ErrorForbidden, "Jo has not written to the bot yet")
	st.Say(st.jo.ID, st.jo, "/start")
	_, err = st.api.SendMessage(st.ctx, &bot.SendMessageParams{ChatID: st.jo.ID, Text: "hello"})
	assert.NoError(t, err)
	_, err = st.api.SendMessage(st.ctx, &bot.SendMessageParams{ChatID: st.farm, Text: "<p>12</p>", ParseMode: models.ParseModeHTML})
	assert.ErrorContains(t, err, "can't parse entities")
	_, err = st.api.SendMessage(st.ctx, &bot.SendMessageParams{ChatID: st.farm, Text: string(bytes.Repeat([]byte("x"), 4097))})
	assert.ErrorContains(t, err, "message is too long")
	_, err = st.api.SendMessage(st.ctx, &bot.SendMessageParams{ChatID: st.farm, Text: "x", ReplyParameters: &models.ReplyParameters{MessageID: 77}})
	assert.ErrorContains(t, err, "message to be replied not found")
	moved := st.Migrate(st.farm, st.ana)
	_, err = st.api.SendMessage(st.ctx, &bot.SendMessageParams{ChatID: st.farm, Text: "x"})
	var migrated *bot.MigrateError
	require.ErrorAs(t, err, &migrated)
	assert.Equal(t, moved, int64(migrated.MigrateToChatID))
	st.RemoveBot(moved, st.ana)
	_, err = st.api.SendMessage(st.ctx, &bot.SendMessageParams{ChatID: moved, Text: "x"})
	assert.ErrorIs(t, err, bot.ErrorForbidden)
}

func TestMembersAndCommands(t *testing.T) {
	st := start(t, practice.Options{})
	me, err := st.api.GetMe(st.ctx)
	require.NoError(t, err)
	assert.True(t, me.IsBot)
	assert.Equal(t, "leafround_bot", me.Username)
	for id, want := range map[int64]models.ChatMemberType{st.ana.ID: models.ChatMemberTypeAdministrator, st.jo.ID: models.ChatMemberTypeMember} {
		m, err := st.api.GetChatMember(st.ctx, &bot.GetChatMemberParams{ChatID: st.farm, UserID: id})
		require.NoError(t, err)
		assert.Equal(t, want, m.Type)
	}
	_, err = st.api.SetMyCommands(st.ctx, &bot.SetMyCommandsParams{Scope: &models.BotCommandScopeAllGroupChats{},
		Commands: []models.BotCommand{{Command: "next", Description: "Which paddock next"}}})
	require.NoError(t, err)
	assert.Equal(t, []practice.Command{{Command: "next", Description: "Which paddock next"}}, st.CommandsFor("all_group_chats"))
	_, err = st.api.SetMyCommands(st.ctx, &bot.SetMyCommandsParams{Commands: []models.BotCommand{{Command: "Next", Description: "x"}}})
	assert.ErrorContains(t, err, "BOT_COMMAND_INVALID")
}
