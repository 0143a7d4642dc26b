package telegram

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"leafround/bot/chat"
)

// The updates are written after https://core.telegram.org/bots/api#update.
func TestDecode(t *testing.T) {
	sent := time.Unix(1764000000, 0).UTC()
	ana := chat.Person{ID: 7, Name: "Ana"}
	const head = `"message_id":5,"date":1764000000,"chat":{"id":-100,"type":"supergroup","title":"Totara Bend"},"from":{"id":7,"is_bot":false,"first_name":"Ana"}`
	base := chat.Incoming{UpdateID: 1, Kind: chat.Message, Chat: -100, Title: "Totara Bend", From: ana, MessageID: 5, SentAt: sent}
	with := func(f func(*chat.Incoming)) chat.Incoming { in := base; f(&in); return in }

	for name, c := range map[string]struct {
		json string
		want chat.Incoming
	}{
		"text": {`"message":{` + head + `,"text":"p12 2 2.5 2"}`,
			with(func(in *chat.Incoming) { in.Text = "p12 2 2.5 2" })},
		"NUL and half a surrogate": {`"message":{` + head + `,"text":"a\u0000b\ud83d"}`,
			with(func(in *chat.Incoming) { in.Text = "ab\uFFFD" })},
		"reply in a topic": {`"message":{` + head + `,"text":"13","message_thread_id":3,"is_topic_message":true,"reply_to_message":{"message_id":4}}`,
			with(func(in *chat.Incoming) { in.Text, in.Topic, in.ReplyTo = "13", 3, 4 })},
		"first in a topic answers nothing": {`"message":{` + head + `,"text":"13","message_thread_id":3,"is_topic_message":true,"reply_to_message":{"message_id":3,"forum_topic_created":{"name":"Grass"}}}`,
			with(func(in *chat.Incoming) { in.Text, in.Topic = "13", 3 })},
		"a reply chain is no topic": {`"message":{` + head + `,"text":"13","message_thread_id":3,"reply_to_message":{"message_id":3}}`,
			with(func(in *chat.Incoming) { in.Text, in.ReplyTo = "13", 3 })},
		"edited": {`"edited_message":{` + head + `,"edit_date":1764000060,"text":"p13 2"}`,
			with(func(in *chat.Incoming) {
				in.Kind, in.Text, in.EditedAt = chat.Edited, "p13 2", sent.Add(time.Minute)
			})},
		"photo with a caption": {`"message":{` + head + `,"photo":[{}],"caption":"p12 2"}`,
			with(func(in *chat.Incoming) { in.Text, in.Media = "p12 2", "photo" })},
		"sticker": {`"message":{` + head + `,"sticker":{"emoji":"x"}}`,
			with(func(in *chat.Incoming) { in.Media = "sticker" })},
		"pin": {`"message":{` + head + `,"location":{"latitude":-37.81,"longitude":175.28}}`,
			with(func(in *chat.Incoming) { in.Pin = &chat.Pin{Lat: -37.81, Lon: 175.28} })},
		"document": {`"message":{` + head + `,"document":{"file_id":"f","file_name":"r.csv","file_size":9}}`,
			with(func(in *chat.Incoming) { in.File = &chat.File{ID: "f", Name: "r.csv", Size: 9} })},
		"somebody joined": {`"message":{` + head + `,"new_chat_members":[{"id":8,"first_name":"Jo"}]}`,
			with(func(in *chat.Incoming) { in.Kind = chat.Other })},
		"a kind of forward that nobody knows": {`"message":{` + head + `,"text":"p12 2","forward_origin":{"type":"dream"}}`,
			with(func(in *chat.Incoming) { in.Text = "p12 2" })},
		"migration told by the old group": {`"message":{` + head + `,"migrate_to_chat_id":-1001}`,
			with(func(in *chat.Incoming) { in.Kind, in.NewChat = chat.Migrated, -1001 })},
		"migration told by the new group": {`"message":{` + head + `,"migrate_from_chat_id":-99}`,
			with(func(in *chat.Incoming) { in.Kind, in.Chat, in.NewChat = chat.Migrated, -99, -100 })},
		"posted as the group": {`"message":{"message_id":5,"date":1764000000,"chat":{"id":-100,"type":"supergroup","title":"Totara Bend"},"from":{"id":1087968824,"is_bot":true,"first_name":"Group"},"sender_chat":{"id":-100,"title":"Totara Bend"},"text":"p12 2"}`,
			with(func(in *chat.Incoming) { in.From, in.Text = chat.Person{ID: -100, Name: "Totara Bend"}, "p12 2" })},
		"a button": {`"callback_query":{"id":"q","from":{"id":7,"first_name":"Ana"},"data":"ask 1 0","message":{` + head + `}}`,
			with(func(in *chat.Incoming) { in.Kind, in.PressID, in.PressData = chat.Press, "q", "ask 1 0" })},
		"a button under an old message": {`"callback_query":{"id":"q","from":{"id":7,"first_name":"Ana"},"data":"d","message":{"message_id":5,"date":0,"chat":{"id":-100,"type":"supergroup","title":"Totara Bend"}}}`,
			with(func(in *chat.Incoming) {
				in.Kind, in.PressID, in.PressData, in.SentAt = chat.Press, "q", "d", time.Time{}
			})},
		"added": {`"my_chat_member":{"date":1764000000,"chat":{"id":-100,"type":"supergroup","title":"Totara Bend"},"from":{"id":7,"first_name":"Ana"},"new_chat_member":{"status":"member"}}`,
			with(func(in *chat.Incoming) { in.Kind, in.MessageID = chat.Joined, 0 })},
		"removed": {`"my_chat_member":{"date":1764000000,"chat":{"id":-100,"type":"supergroup","title":"Totara Bend"},"from":{"id":7,"first_name":"Ana"},"new_chat_member":{"status":"kicked"}}`,
			with(func(in *chat.Incoming) { in.Kind, in.MessageID = chat.Left, 0 })},
		"an unknown kind": {`"dream":{"id":1}`, chat.Incoming{UpdateID: 1, Kind: chat.Other}},
		"nothing":         {`"message":null`, chat.Incoming{UpdateID: 1, Kind: chat.Other}},
	} {
		in, err := Decode([]byte(`{"update_id":1,` + c.json + `}`))
		require.NoError(t, err, name)
		require.Equal(t, c.want, in, name)
	}
}

func TestDecodeTellsWhatIsMalformed(t *testing.T) {
	for _, raw := range []string{``, `[]`, `{"update_id":1,`, `{"update_id":1,"message":"text"}`,
		`{"update_id":1,"message":{"message_id":1}}`, `{"update_id":1,"message":{"chat":{"id":-100},"text":"x"}}`,
		`{"update_id":1,"message":{"message_id":1,"chat":{"id":-100},"text":{"a":1}}}`,
		`{"update_id":1,"callback_query":7}`, `{"update_id":1,"my_chat_member":{}}`} {
		_, err := Decode([]byte(raw))
		require.Error(t, err, raw)
	}
}

func FuzzDecode(f *testing.F) {
	f.Add([]byte(`{"update_id":1,"message":{"message_id":5,"date":1,"chat":{"id":-100},"text":"x"}}`))
	f.Fuzz(func(t *testing.T, raw []byte) {
		in, err := Decode(raw)
		if err == nil && in.Kind == chat.Message && (in.Chat == 0 || in.MessageID == 0) {
			t.Errorf("a message without a chat or a number: %+v", in)
		}
	})
}
