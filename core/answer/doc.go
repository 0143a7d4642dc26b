// Package answer joins a question, or an entry that was just logged, with the
// farm and gives a value that carries every figure the reply will show, under
// the JSON keys of the project's contract and unrounded.
//
// It never words a sentence, never rounds and never changes the farm: packages
// bot/reply and bot/picture take its values from here.
//
//	a := answer.Question(f, entry.Question{About: entry.AskNext}, now)
//	a.Subject() // "next"
//	json.Marshal(a) // {"about":"next","ranked":[...],"left_out":[...]}
//
// Beside the figures an answer carries [Remark] values (an odd count, stock
// that were in already, a grass taken for ryegrass) and [Caution] values
// (where it can hurt, and to whom we defer). Background cautions come at most
// once a week for a paddock or mob; what concerns a held paddock or a sick
// animal comes every time.
package answer
