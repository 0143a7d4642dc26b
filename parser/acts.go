package parser

// What a clause can say, bit by bit.

// place is a paddock as named in a text.
type place struct {
	name    string // the register's spelling, or as typed where there is no register
	known   bool   // it is in the register, or any name may be one
	guess   string // a known name that is one typing error away
	marked  bool   // "p", "paddock" or "#" stood before it
	either  string // another paddock that it may be: the 2 of "River 1 and 2"
	shorter string // a shorter name that starts at the same word
	role    role
	at      int // its first token
	next    int // the token behind it
}

// role tells which way stock go at a place.
type role uint8

const (
	roleNone role = iota
	roleIn        // into it
	roleOut       // out of it
	roleAt        // something happened in it
)

// act is a bit for each thing that a clause can say happened.
type act uint32

const (
	actGrazed act = 1 << iota
	actIn
	actOut
	actMoved
	actOrder   // move, shift, put: may be an order
	actGoing   // moving, going: may not have happened
	actCut     // cut, without its purpose
	actSilage  // silage, as a purpose or a cut
	actHay     // hay
	actBale    // baled
	actTopped  // topped
	actMow     // mown
	actCanopy  // canopy closed
	actClosed  // closed: shut, or the canopy
	actShut    // shut up
	actHold    // held, skipped
	actRelease // fit to graze again
	actSpray
	actFert
	actEff
	actSow
	actWet
	actDry
	actCrop
	actRain
	actTemp
	actNote
	actPlace   // the verb "left" or a residual
	actDone    // done, finished
	actDamp    // wet, but not said to be too wet
	actHoldOff // "hold off": held, or no longer
)

const (
	actsHold  = actShut | actHold | actSpray | actFert | actEff | actSow | actWet | actCrop
	actsGraze = actGrazed | actIn | actOut | actMoved
	actsCut   = actCut | actSilage | actHay | actBale | actTopped | actMow
)

// guard is a bit for each reason not to take a clause at its word.
type guard uint16

const (
	guardPlan   guard = 1 << iota
	guardNeg          // denied
	guardCond         // if, when
	guardWish         // wish
	guardHear         // hearsay
	guardJoke         // joke
	guardAsk          // a question
	guardFuture       // a day to come
)
