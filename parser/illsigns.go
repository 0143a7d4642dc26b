package parser

import "strings"

// Signs of illness as people tell them, in their own words.
//
//	sign  = part { part }
//	part  = word { "|" word }, with "?" before it where it may be missing
//
// "$" stands for whose: her, its, their.

// signNeed is how near an animal must stand to a sign.
type signNeed uint8

const (
	needNear  signNeed = iota // an animal in the same breath, before it or behind
	needClose                 // an animal right before it or behind: dull, on the ground
	needOne                   // a single animal: bellowing
)

// signTable holds the signs by what they need.
var signTable = map[signNeed]string{
	needNear: `
		swelled; swole; swelling; puffed up; blown up; blew up; blowing up; up like a drum|balloon; like a drum|balloon|barrel; tight on the left;
		cant|cannot|couldnt|wont|wouldnt|doesnt|unable|able|struggling|refusing|refuses|refused|trying ?want ?even to get ?back ?herself|himself|itself|themselves up;
		cant|cannot|couldnt|wont|wouldnt|doesnt|struggling|refusing ?even get ?back ?herself|himself|itself up;
		cant|cannot|couldnt|wont|wouldnt ?even ?seem ?to rise|stand|swallow|breathe|calve|lamb;
		unable|struggling|refusing|refuses ?even to rise|stand|walk|swallow|breathe|eat|drink|calve|lamb; not ?really able to rise|stand|walk|get|eat|swallow|breathe; no|not ?want|wants|can ?to stand|get|eat|drink|walk|move up; no|not want|wants|can ?to stand|eat|drink|walk; no eat|drink|stand|walk;
		cant put ?any weight; no weight on $; not weight bearing; lying|lay|laid|laying|stretched|stretch ?out flat|stiff|prone|motionless; stretched out; flat out on $ side;
		legs|leg|hocks ?are|is|just|all|have|has going|gone|gave|giving|went|buckled|buckling|give|wobbly|shaking|trembling; leg|legs out from under; on three|3 legs; three legged; dragging $ ?back|hind|near|off|left|right|front leg|legs|foot|hind|back|backend;
		holding ?up $ ?near|off|hind|front|back|left|right leg|foot up; holding up $ leg|foot; keeled|keeling|keels|toppled|topples|toppling over; fell|falls|falling|fallen down|over|about; collapses; knuckling; buckling;
		limps; limped; hobbling; hobbles; hobbled; lameness; shakes; shivers; shivering; trembles; trembled; tremors; quivering; twitches; convulses; convulsed; fits; taken|took a fit;
		stumbling; stumbles; sways; swaying; wobbles; staggered; reeling; drunk looking; like ?a ?she|hes|shes|theyre ?is|was drunk; walking|going|goes|walks|wandering|running|turning ?round|around in circles; circling; round and round;
		head pressing|tilted|tilt|swinging|sideways|back; pressing $ head|heads; head to one side; star gazing; stargazing; bumping into; walking into things;
		froth; froths; frothed; foam; foams; slobbering; slobbers; drools; salivating; dribbling; tongue|tongues ?is|hanging|sticking|lolling out|hanging|lolling|swollen; eyes rolling|sunken|bulging|sunk|glazed; sunken eyes; eyes closed;
		weepy|weeping|runny|running|snotty|cloudy|sore|bad|crusty|closed|swollen|watery eye|eyes|nose|noses; snotty; snots; grunting; grunts; groaning; groans; grinding $ teeth; teeth grinding;
		kicking|kicks|kicked|biting|nipping|looking ?at $ ?own belly|stomach|tummy|gut|guts|flank|flanks; in pain|agony|distress|difficulty; colic; colicky; deaths door; last legs;
		head down; head|heads|ears hanging|low|drooping|droopy|cold; ears down; cold ears; head hanging ?down; not cudding; not chewing ?the|her cud; lost her cud; off $ cud;
		breathing heavy|heavily|hard|fast|funny|quick|rapid|laboured|labored|badly|rough; heavy|laboured|rapid|fast breathing; breathes heavy|hard; struggling for breath|air; short of breath; gasps; wheezes; wheezy; puffing|blowing hard|heavily|badly;
		coughs; cough; coughed; hoarse; husky cough; hunched; humped up; hunching; tucked up; off $ grub|milk|legs|meal|nuts|cake|ration|hay|tucker; gone off $ milk|feed|food|feet;
		not|isnt|arent|wasnt|never|doesnt|wont|wouldnt|hasnt ?been ?even eating|eat|eaten|drinking|drink|suckling|sucking|feeding|suck; not touched|touching $ ?feed|food|hay|meal|nuts;
		pissing|passing|peeing|scouring|shitting|dunging red|blood|brown; blood|bleeding from; blood in $ dung|muck|milk|urine|scour|water|nose|shit; bloody nose|dung|scour|mouth; bleeding ?badly; got|has|have|had ?all|got the runs|skitters|skitter|squits|scutters|skits|scoots|trots;
		bed out; bed is out; calf bed; lamb bed; womb out; insides out; pushed her bed|insides; breech; coming backwards; nothing coming; head|leg|legs|foot back; stuck halfway|half; stuck at the hips|shoulders; hung lamb; slipped|aborted|lost a|her|the|its calf|lamb|calves|lambs;
		aborted; aborting; abortion; stillborn; born dead; died; perished; drowned; carcass; carcase; legs|feet in the air; feet|legs|belly up; upside down; on $ back|backs ?in; cast on; rigid; lifeless; not moving; unresponsive;
		hot|hard|lumpy|swollen|sore|bad|blue|black|clotted ?hard quarter|udder|bag|elder|teat|teats; clots in; sore|bad|swollen|septic|rotten foot|feet|leg|legs|hock|hocks|knee|knees|joint|joints|face|jaw|throat|head|neck|navel|tail; sore on $ feet|foot|legs|leg;
		lump|lumps on|under; abscess; abcess; wounded; gashed; gash; bad|deep|open wound; cut open; torn open; broke|broken|snapped ?her|his|its|a ?front|back|hind leg|legs|pelvis|hip; maggots; maggoty; wasting away; stiff as; sprawled; sorry for itself|herself|himself|themselves; afterbirth; hasnt|not|havent cleansed; retained cleansing|cleanings;
		on her|his|its|their side|sides; off her|his|its|their feed|food; not|never|isnt|arent|stopped getting|got ?back up; having|had|has|taking|took|throwing a|another fit|fits|seizure|turn;
		passed away; shaky; skittery; blood; flat on $ ground|floor|deck|side; dead one|ones; not|wont|cant ?get to $ feet; pus; mucus; hair|wool falling out; scabs; scabby; mange; ringworm; lice;
		breathing; bellies|belly|sides|side like a|barrels|drums|balloons|footballs; out like a; foundered; gone to skin|nothing; crippled; paralysed; paralyzed; sunstroke; heat stress|stress; heatstroke; half dead; near death|dead; nearly dead; barely alive|breathing|moving|standing; lagging; gone lame|blind|stiff|weak;
		hit by; struck by; electrocuted; poisoned; mauled; attacked; worried by; savaged; dog bitten; bitten; skin and bone|bones; lathered in sweat;
		wrong|matter with a|the|one|that|this; milk fever; grass fever; pneumonia; redwater; red water; foot rot; footrot; pinkeye; pink eye; fly strike; fly struck; flystruck; struck with maggots|fly; blackleg; listeria; listeriosis; ketosis; tympany; joint ill; navel ill; twin lamb; photosensitive; photosensitised; salmonella; coccidiosis; husk; hoose; orf; woody tongue; lockjaw; tetanus; had|having|has a stroke; lead poisoning; nitrate poisoning; grass sickness`,
	needClose: `
		on $ ground|deck|floor; on ground; in a heap; flat out; dull; dozy; listless; droopy; depressed; woozy; drowsy; groggy; miserable; peaky; sickly; ailing; blind; limp; hurt; injured; poorly; rough looking; distressed; suffering; roaring in; weak;
		in a bad way; in bad shape|way; in trouble; under the weather; out of sorts; off form; off colour; not right; not ?just ?looking ?too ?very herself|himself|itself|themselves|well|thriving|thrifty; not doing well|good; not looking right|well|good;looks|look|looking ?a ?bit|little|wee off|rough|bad|poorly|awful|terrible;
		fit to drop; about to die; went down behind; ?has|had|got|have|running a|some temperature|temp|fever; very|real thin; skinny; scoury; bloaty; jerking; wobbly; stuck calving|lambing`,
	needOne: `hopping; hasnt|havent|not moved|stirred; very|awful|real slow; going|gone|goes down; bellows; bellowing; bellowed; roars; roaring; bawling; moaning; moans`,
}

// bodyParts of one animal are told of where something is amiss with them.
var bodyParts = wordSet(`eye eyes nose nostril nostrils mouth tongue jaw throat neck hip hips knee knees hock hocks leg legs foot hoof hooves belly stomach gut guts flank flanks udder teat teats
	breath ribs spine pelvis navel rump skin vulva`)

// sign is one way to tell of illness.
type sign struct {
	need  signNeed
	parts []signPart
}

type signPart struct {
	words  map[string]bool
	option bool
}

var whoseWords = wordSet(`her his its it their the a one both them`)

// signsOf are the signs by the words that they can begin with.
var signsOf = signIndex(signTable)

// signIndex parts tables of signs and files each under the words that it can begin with.
func signIndex(tables map[signNeed]string) map[string][]sign {
	all := map[string][]sign{}
	for need, list := range tables {
		for _, text := range strings.Split(list, ";") {
			s := sign{need: need}
			for _, f := range strings.Fields(text) {
				p := signPart{option: f[0] == '?'}
				if f = strings.TrimPrefix(f, "?"); f == "$" {
					p.words = whoseWords
				} else {
					p.words = wordSet(strings.ReplaceAll(f, "|", " "))
				}
				s.parts = append(s.parts, p)
			}
			for n, open := 0, true; n < len(s.parts) && open; n++ {
				open = s.parts[n].option
				for w := range s.parts[n].words {
					all[w] = append(all[w], s)
				}
			}
		}
	}
	return all
}

// signAt gives the token behind a sign that begins at i.
func (r *reader) signAt(s *sign, i, to int) (int, bool) {
	k := i
	for _, p := range s.parts {
		t := r.tok(k)
		switch {
		case k < to && (t.shape == word || t.shape == number) && p.words[t.text]:
			k++
		case !p.option:
			return i, false
		}
	}
	return k, k > i
}
