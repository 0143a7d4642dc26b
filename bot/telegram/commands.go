package telegram

import (
	"context"

	"github.com/go-telegram/bot"
	"github.com/go-telegram/bot/models"
)

// Command is a slash command and what it does, in plain words.
type Command struct{ Name, Does string }

// Scope says who is shown commands.
type Scope string

// The scopes.
const (
	Everyone Scope = "everyone"
	Groups   Scope = "groups"
	Private  Scope = "private"
	Admins   Scope = "admins" // administrators of groups
)

// SetCommands registers the commands that the clients offer.
func (c *Client) SetCommands(ctx context.Context, who Scope, commands []Command) error {
	p := &bot.SetMyCommandsParams{}
	for _, k := range commands {
		p.Commands = append(p.Commands, models.BotCommand{Command: k.Name, Description: k.Does})
	}
	switch who {
	case Groups:
		p.Scope = &models.BotCommandScopeAllGroupChats{}
	case Private:
		p.Scope = &models.BotCommandScopeAllPrivateChats{}
	case Admins:
		p.Scope = &models.BotCommandScopeAllChatAdministrators{}
	}
	_, err := c.bot.SetMyCommands(ctx, p)
	return c.classed(err)
}
