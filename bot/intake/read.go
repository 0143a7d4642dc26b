package intake

import (
	"encoding/json"
	"regexp"
	"slices"
	"strconv"
	"time"

	"leafround/bot/chat"
)

// Read makes out an update's number and chat, from whatever of it can be read.
func Read(raw []byte, at time.Time) chat.Raw {
	u := chat.Raw{JSON: raw, At: at, Chat: chatOf(raw)}
	if m := numberPattern.FindSubmatch(raw); m != nil {
		id, err := strconv.ParseInt(string(m[1]), 10, 64)
		u.UpdateID, u.HasID = id, err == nil
	}
	return u
}

// numberPattern finds the number even where the JSON around it is broken. No
// other object of the Bot API has a field of this name.
var numberPattern = regexp.MustCompile(`"update_id"\s*:\s*"?(-?\d+)`)

// chatOf gives the chat of an update of any kind, 0 where it has none. Word that
// a group became a supergroup counts to the supergroup, so that it is handled
// before what is said there.
func chatOf(raw []byte) int64 {
	var parts map[string]json.RawMessage
	if json.Unmarshal(raw, &parts) != nil {
		return 0
	}
	var names []string
	for name := range parts {
		names = append(names, name)
	}
	slices.Sort(names)
	for _, name := range names {
		var part struct {
			Chat    holder `json:"chat"`
			Became  int64  `json:"migrate_to_chat_id"`
			Message struct {
				Chat holder `json:"chat"`
			} `json:"message"`
		}
		json.Unmarshal(parts[name], &part) // what can't be read stays 0
		if part.Became != 0 {
			return part.Became
		}
		if part.Chat.ID != 0 {
			return part.Chat.ID
		}
		if part.Message.Chat.ID != 0 {
			return part.Message.Chat.ID
		}
	}
	return 0
}

type holder struct {
	ID int64 `json:"id"`
}
