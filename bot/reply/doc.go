// Package reply words answers for the chat. It gets values that carry every
// figure (package answer) and only rounds and words them; it reckons nothing,
// knows no farm and sends nothing.
//
//	text := reply.HTML(a, reply.Voice{})   // escaped HTML for one message
//	parts := reply.Split(text)             // each within Telegram's length
//	buttons := reply.Buttons(a)
//
// # The rules of the voice
//
//   - The answer comes first, in one sentence that a tired person understands
//     in the rain; the figures follow.
//   - At most four short lines. Lists of steps, paddocks or entries stand apart
//     from them, one a line.
//   - Plain words. No code words, no abbreviations that need learning, no
//     colours or emoji that stand for something.
//   - Dates as "Sat 28 Nov", or today, yesterday, tomorrow. A forecast is
//     "about Sat 28 Nov, give or take 2 days".
//   - Every figure has its unit: leaves, days, days a leaf, ha, mm, °C.
//   - Round as a person would: leaves and hectares to a tenth, rounds to a day.
//     What was not reckoned is not shown.
//   - Say what was understood, so that a misread is seen at once: the paddock,
//     the mob, the day.
//   - A forecast is an estimate to be checked by eye; a plan is advice. The bot
//     never orders.
//   - Where it can hurt, one line, and defer: to the label and local rules, the
//     vet, the feed test, the person on the ground. Never a diagnosis, never a
//     number of days that the label should give. A person who may be hurt: the
//     emergency number comes first, and that the bot calls nobody.
//   - A mistake is nobody's fault: say what is missing and how to send it.
//   - Everything that people typed is escaped.
//
// One answer has one template (templates/NAME.tmpl) and, where it takes more
// than words, one file.
package reply
