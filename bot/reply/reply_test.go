package reply

import (
	"encoding/json"
	"fmt"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"leafround/core/answer"
	"leafround/core/entry"
	"leafround/core/farm"
)

// everyEntry gives at least one entry of each kind and of each of its forms.
func everyEntry() []entry.Entry {
	out := []entry.Entry{
		tillers("1", nov(25), 2, 2.5, 2),
		entry.Count{Paddock: "2", Date: nov(25), Mean: 2.5},
		entry.Count{Paddock: "3", Date: nov(25), Mean: 3, N: 5, Past: 5, Said: nil},
		entry.Count{Paddock: "3", Date: nov(24), Mean: 2, N: 2, Skipped: entry.Skipped{Reproductive: 5}},
		entry.Canopy{Paddock: "9", Date: nov(25)},
		entry.Rain{Date: nov(25), Mm: 12.5},
		entry.Temperature{Date: nov(25), Celsius: new(12.0), Where: entry.Soil},
		entry.Temperature{Date: nov(25), Min: new(4.0), Max: new(15.0), Where: entry.Air},
		entry.Note{Text: "gate <b>broken</b>", Paddock: "3"},
		entry.Note{Text: "cow down", Alarm: entry.AlarmStock},
		entry.Note{Text: "quad rolled", Alarm: entry.AlarmPerson},
		entry.Undo{},
	}
	for _, e := range []entry.GrazeEvent{entry.In, entry.Out, entry.Grazed} {
		for _, u := range []entry.ResidualUnit{entry.Centimetres, entry.Inches, entry.Clicks, entry.KgDMPerHa} {
			out = append(out, entry.Graze{Paddock: "7", Date: nov(25), Event: e, Mob: "milkers", Head: 320, Part: 0.5,
				Residual: &entry.Residual{Value: 7, Unit: u}})
		}
	}
	for _, w := range []entry.CutKind{entry.Silage, entry.Hay, entry.Topped} {
		out = append(out, entry.Cut{Paddock: "8", Date: nov(25), What: w})
	}
	for _, r := range entry.Reasons() {
		out = append(out, entry.Hold{Paddock: "6", Date: nov(25), Reason: r},
			entry.Hold{Paddock: "5", Date: nov(25), Reason: r, Until: nov(30)},
			entry.Release{Paddock: "6", Date: nov(25), Reason: r})
	}
	out = append(out, entry.Release{Paddock: "6", Date: nov(25)},
		entry.Correct{Field: entry.FieldPaddock, From: "7", ToName: "8"},
		entry.Correct{Field: entry.FieldDate, ToDate: nov(24)},
		entry.Correct{Field: entry.FieldTillers, ToTillers: []entry.Tiller{{Score: 2}, {Score: 2.5}}},
		entry.Correct{Field: entry.FieldMob, From: "milkers", ToName: "heifers"})
	for _, w := range entry.Whats() {
		out = append(out, entry.Setup{What: w, Name: "Totara Bend", Zone: "Pacific/Auckland", Mob: "milkers", Head: 300,
			At: "06:15", Leaves: 2.75, Lat: new(-37.8), Lon: new(175.3), Paddock: "11", Grass: entry.Fescue, Date: nov(20),
			Reason: entry.HoldFertiliser, Days: 21, Ha: 3, Names: []string{"11", "12"}, To: "Dam", Unit: "hectares",
			Paddocks: []entry.Plot{{Name: "11", Area: 3}, {Name: "11B"}}})
	}
	return out
}

// plain requires that a text is worded: no template failed, no code words, no
// Go value shows through, within a screen.
func plain(t *testing.T, text string) {
	t.Helper()
	require.NotEmpty(t, text)
	require.NotContains(t, text, "could not word")
	require.NotContains(t, text, "no value")
	require.NotContains(t, text, "NaN")
	require.NotRegexp(t, `%!|0x|\{|\}|map\[|<nil>|_|\d\.\d\d\d`, Plain(text))
	require.NotRegexp(t, `[\x{1F300}-\x{1FAFF}]`, text, "no emoji")
	require.NotRegexp(t, ` [.,;:?]|\.\.|  `, Plain(text), "spacing")
	require.NotRegexp(t, `<(?:[^/b]|b[^>]|/[^b])`, text, "only bold, everything else is escaped")
	require.LessOrEqual(t, Units(text), Most)
}

// Every entry kind encodes, folds, answers and renders.
func TestEveryEntry(t *testing.T) {
	seen := map[entry.Kind]bool{}
	for i, e := range everyEntry() {
		t.Run(fmt.Sprint(i, e.Kind()), func(t *testing.T) {
			seen[e.Kind()] = true
			body, err := entry.Encode(e)
			require.NoError(t, err)
			back, err := entry.Decode(body)
			require.NoError(t, err)
			require.Equal(t, e.Kind(), back.Kind())
			l := season()
			logged := l.say(nov(25), "Jo", e)
			f := farm.Fold(*l)
			a := answer.Entry(f, logged, noon(nov(25)))
			require.Equal(t, string(e.Kind()), a.Subject())
			raw, err := json.Marshal(a)
			require.NoError(t, err)
			require.Regexp(t, fmt.Sprintf(`^\{"about":%q`, e.Kind()), string(raw))
			require.True(t, json.Valid(raw))
			for _, v := range []Voice{{}, {Acres: true, Inches: true}} {
				text := HTML(a, v)
				plain(t, text)
				require.LessOrEqual(t, strings.Count(text, "\n"), 4, text)
			}
			require.NotEmpty(t, Voice{}.Describe(e))
			Buttons(a)
		})
	}
	for _, k := range entry.Kinds() {
		require.True(t, seen[k], "no entry of kind %s is tried", k)
	}
}

// Every question is answered and worded, on a farm in season, on one with
// nothing but a register, and on one of which nothing is known.
func TestEveryQuestion(t *testing.T) {
	bare := (*season())[:4]
	farms := map[string]*farm.Farm{"season": farm.Fold(*season()), "bare": farm.Fold(bare), "empty": farm.New()}
	for name, f := range farms {
		for _, q := range questions() {
			t.Run(fmt.Sprintf("%s %s %+v", name, q.About, q), func(t *testing.T) {
				a := answer.Question(f, q, noon(nov(25)))
				raw, err := json.Marshal(a)
				require.NoError(t, err)
				require.True(t, json.Valid(raw))
				plain(t, HTML(a, Voice{}))
				plain(t, HTML(a, Voice{Acres: true}))
				if a.Subject() != "ask" {
					require.Equal(t, string(q.About), a.Subject())
				}
			})
		}
	}
}

// Every remark, caution and advice has its words.
func TestEveryRemarkHasWords(t *testing.T) {
	remarks := []answer.RemarkKind{answer.NeverGrazed, answer.NeverCounted, answer.Odd, answer.Few, answer.GrassUnknown,
		answer.AlsoCounted, answer.MovedSince, answer.CountedBefore, answer.ToldTwice, answer.StaysHeld, answer.Older, answer.Heading, answer.Floor, answer.ClosedEarly, answer.Held, answer.InIt,
		answer.Lax, answer.AskUntil, answer.Partly, answer.NoArea, answer.Unregistered, answer.Stale, answer.Suspect, answer.NotDone}
	for _, k := range []farm.RemarkKind{farm.Completes, farm.MobUntold, farm.Named, farm.HeldAlready, farm.AlreadyIn, farm.NeverIn, farm.TakenOut, farm.OthersIn, farm.WhileHeld,
		farm.StillHeld, farm.Lifted, farm.NotHeld, farm.Barred, farm.OverStayed} {
		remarks = append(remarks, answer.RemarkKind(k))
	}
	for _, k := range remarks {
		r := answer.Remark{Kind: k, Paddock: "12", Mob: "milkers", Member: "Jo", Reason: entry.HoldSpray, Date: nov(20),
			Days: 4, N: 3, Stage: 2.1, Part: 0.5, Text: "it grew too fast"}
		plain(t, string(Voice{}.remark(r, nov(25))))
		bare := answer.Remark{Kind: k, Paddock: "12", Date: r.Date}
		plain(t, string(Voice{}.remark(bare, nov(25))))
	}
	for _, d := range []answer.Danger{answer.Spray, answer.Effluent, answer.Fertiliser, answer.Sick, answer.Hurt,
		answer.Bloat, answer.Nitrate, answer.Staggers, answer.Tetany, answer.Eczema, answer.Pugging} {
		plain(t, string(Voice{}.caution(answer.Caution{Danger: d, Paddock: "5"})))
	}
	for _, k := range []string{"slow_down", "speed_up", "surplus", "shortage", "long_stay", "early_twice"} {
		a := answer.Advice{Kind: k, Mob: "milkers", On: nov(28), Running: 24, Needed: 32, Stage: 1.7, Held: 2.2, Ha: 6,
			Days: 4, Paddocks: []answer.Spot{{Paddock: "12", On: nov(28)}}}
		plain(t, string(Voice{}.advice(a, nov(25))))
		plain(t, string(Voice{}.advice(a, nov(28))))
		a.Again = true
		plain(t, string(Voice{}.advice(a, nov(25))))
	}
	for _, code := range []string{"canopy", "past", "window", "below", "odd", "unknown", "next", "near", "uncertain",
		"middle", "last", "shut", "no_mob", "later"} {
		require.NotEmpty(t, why(code), code)
	}
}

// A person who may be hurt: the emergency number first, and that the bot calls
// nobody; stock that look ill: the vet and the manager, never a diagnosis.
func TestHelpComesFirst(t *testing.T) {
	f := farm.Fold(*season())
	say := func(n entry.Note) string {
		return Plain(HTML(answer.Entry(f, entry.Logged{ID: 999, Entry: n, SentAt: noon(nov(25))}, noon(nov(25))), Voice{}))
	}
	hurt := say(entry.Note{Text: "came off the bike in hill", Alarm: entry.AlarmPerson})
	require.Regexp(t, `^Call 111 now`, hurt)
	require.Contains(t, hurt, "this bot calls nobody")
	sick := say(entry.Note{Text: "2 down in 11", Alarm: entry.AlarmStock, Paddock: "11"})
	require.Regexp(t, `^Ring the vet and tell the manager now`, sick)
	elsewhere := farm.New()
	text := HTML(answer.Entry(elsewhere, entry.Logged{Entry: entry.Note{Alarm: entry.AlarmPerson}, SentAt: noon(nov(25))}, noon(nov(25))), Voice{})
	require.Regexp(t, `^Call your emergency number now`, text)
}

// The summary keeps within twelve lines, whatever there is to tell, and help
// within one screen.
func TestSummaryAndHelpAreShort(t *testing.T) {
	l := season()
	for i := range 8 {
		l.say(nov(25), "Ana", entry.Setup{What: entry.SetMob, Mob: fmt.Sprint("mob ", string(rune('a'+i))), Head: 20})
		l.say(nov(25), "Ana", entry.Canopy{Paddock: fmt.Sprint(i + 1), Date: nov(25)})
	}
	f := farm.Fold(*l)
	text := HTML(answer.Question(f, entry.Question{About: entry.AskSummary}, noon(nov(25))), Voice{})
	require.LessOrEqual(t, len(strings.Split(text, "\n")), 12, text)
	help := HTML(answer.Question(f, entry.Question{About: entry.AskHelp}, noon(nov(25))), Voice{})
	require.LessOrEqual(t, len(strings.Split(help, "\n")), 12, help)
}

// What people typed is escaped: it can't become markup.
func TestTypedTextIsEscaped(t *testing.T) {
	f := farm.Fold(*season())
	text := HTML(answer.Question(f, entry.Question{About: entry.AskPaddock, Paddock: "Hill <top>"}, noon(nov(25))), Voice{})
	require.Contains(t, text, "Hill &lt;top&gt;")
	require.Contains(t, Plain(text), "Hill <top>")
	text = HTML(answer.FromAsk(entry.Ask{Reason: "<i>&", Options: []entry.Option{{Label: "<b>1"}}}), Voice{Understood: []string{"<u>"}})
	require.NotRegexp(t, regexp.MustCompile(`<`), text)
}

func TestDatesAreWordedAsPeopleSay(t *testing.T) {
	require.Equal(t, "Sat 28 Nov", day(nov(28)))
	require.Equal(t, "today", when(nov(25), nov(25)))
	require.Equal(t, "tomorrow", on(nov(26), nov(25)))
	require.Equal(t, "yesterday", on(nov(24), nov(25)))
	require.Equal(t, "on Sat 28 Nov", on(nov(28), nov(25)))
	require.Equal(t, time.Saturday, nov(28).Weekday())
}

func TestFiguresAreRoundedWithTheirUnits(t *testing.T) {
	require.Equal(t, "2.2 leaves", leaves(entry.LeafStage(2.208)))
	require.Equal(t, "1 leaf", leaves(0.98))
	require.Equal(t, "3 leaves or more", upTo(3.4, 3.0))
	require.Equal(t, "8.6 days a leaf", perLeaf(8.6037))
	require.Equal(t, "31 days a leaf", perLeaf(30.6))
	require.Equal(t, "1 day", days(1))
	require.Equal(t, "1,500 kg of dry matter a hectare", Voice{}.residual(&entry.Residual{Value: 1500, Unit: entry.KgDMPerHa}))
	require.Equal(t, "3.2 ha", Voice{}.area(3.2))
	// One hectare is 2.471 acres (international acre, 0.40468564224 ha).
	require.Equal(t, "2.5 acres", Voice{Acres: true}.area(1.0))
	require.Equal(t, "less than 0.1 %", percent(0.0004))
	require.Equal(t, "paddock 12", pdk("12"))
	require.Equal(t, "River 1", pdk("River 1"))
	require.Equal(t, "40 Acre", pdk("40 Acre"))
	require.Equal(t, "a, b and c", list([]string{"a", "b", "c"}))
	require.Equal(t, "a, b and 2 more", sumUp([]string{"a", "b", "c", "d"}, 2))
}

// Long texts are cut at line ends within Telegram's 4,096 UTF-16 units, and
// nothing is lost.
func TestSplit(t *testing.T) {
	require.Equal(t, []string{"short"}, Split("short"))
	line := strings.Repeat("grass ", 30) + "\U0001D11E" // two units by itself
	text := strings.TrimSuffix(strings.Repeat(line+"\n", 100), "\n")
	parts := Split(text)
	require.Greater(t, len(parts), 1)
	for _, p := range parts {
		require.LessOrEqual(t, Units(p), Most)
	}
	require.Equal(t, text, strings.Join(parts, "\n"))
	long := Split("<b>" + strings.Repeat("&amp;\U0001D11E", 3000) + "</b>")
	require.Greater(t, len(long), 1)
	joined := ""
	for _, p := range long {
		require.LessOrEqual(t, Units(p), Most)
		require.NotRegexp(t, `&[a-z]*$`, p, "no entity is cut")
		joined += Plain(p)
	}
	require.Equal(t, strings.Repeat("&\U0001D11E", 3000), joined)
}

// One reply words all entries of a message; what they say alike is said once.
func TestAllInOneReply(t *testing.T) {
	l := season()
	a := l.say(nov(25), "Jo", entry.Graze{Paddock: "11", Date: nov(25), Event: entry.Out, Mob: "milkers", Moved: true})
	b := l.say(nov(25), "Jo", entry.Graze{Paddock: "12", Date: nov(25), Event: entry.In, Mob: "milkers", Moved: true})
	f := farm.Fold(*l)
	at := noon(nov(25))
	text := Plain(Join(Each([]answer.Answer{answer.Entry(f, a, at), answer.Entry(f, b, at), answer.Entry(f, b, at)}, Voice{Understood: []string{"read “eleven” as 11"}})))
	require.Contains(t, text, "came out of paddock 11")
	require.Equal(t, 1, strings.Count(text, "went into paddock 12"))
	require.True(t, strings.HasSuffix(text, "I read “eleven” as 11."))
}

func TestButtons(t *testing.T) {
	f := farm.Fold(*season())
	labels := func(a answer.Answer) (out []string) {
		for _, b := range Buttons(a) {
			out = append(out, b.Label)
		}
		return out
	}
	require.Equal(t, []string{"Yes", "No"}, labels(answer.FromAsk(entry.Ask{Options: []entry.Option{{Label: "Yes"}, {Label: "No"}}})))
	a := answer.Question(f, entry.Question{About: entry.AskPaddock, Paddock: "1"}, noon(nov(25)))
	require.Equal(t, []string{"Why?", "Picture"}, labels(a))
	a = answer.Question(f, entry.Question{About: entry.AskPaddock, Paddock: "1", Why: true}, noon(nov(25)))
	require.Equal(t, []string{"Picture"}, labels(a))
}
