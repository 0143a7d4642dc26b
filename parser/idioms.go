package parser

// idiomTable holds expressions of several words that mean something else than
// their words do one by one.
var idiomTable = map[effect]string{
	{acts: actShut}: `laid up; laid up for; saved for; kept for; set aside for; put by for; 
		shut up; shut off; locked up; lock up; locked in; closed up; close up; close off; closed off; shutting up; locking up; put up for`,
	{acts: actCanopy}: `
		canopy closed; canopy has closed; canopy is closed; canopys closed; canopy shut; canopy is shut; canopy now closed; canopy closed over;
		closed over; canopy over; closed canopy; canopy full; full canopy; cant see dirt; cant see the dirt; cant see any dirt; cant see soil; cant
		see the soil; cant see any soil; cant see ground; cant see the ground; cant see any ground; cant see bare ground; cannot see dirt; cannot
		see soil; cannot see the ground; can not see the ground; can not see ground; can not see any ground; can not see dirt; can not see the dirt;
		can not see any dirt; can not see soil; can not see the soil; can not see any soil; cant see any clay; cant see the clay; cant see clay; no
		clay showing; no clay to be seen; theres no bare ground; theres no bare ground to be seen; theres no ground to be seen; theres no bare dirt; no bare ground to be seen; no bare soil to be seen; no bare dirt to be seen; no ground to be seen; no soil to be seen; no dirt to be seen; no dirt showing; no bare ground; no bare
		dirt; no soil showing; no ground showing; no bare soil; no dirt visible; no soil visible; covered over; grass closed over; canopy closure`,
	{acts: actWet}: `
		churned up; churned to mud; turned to mud; cut to ribbons; cut to bits; ripped to bits; torn to bits; torn up; destroyed wet; drowned wet; destroyed with water; destroyed with wet; destroyed with the wet; all mud; its a swamp; a
		swamp; like a swamp; is a bog; a right bog; a total bog; an absolute bog; a complete bog; turned to bog; a quagmire; a mudhole; a mud hole; a mudbath; a mud bath; like soup; way too wet; far too wet; much too wet; bit too wet; too wet; too wet to
		graze; too wet for cows; too wet for stock; too wet for grazing; too wet to go in; too wet yet; too wet for the cows; too wet for anything;
		too wet still; still too wet; under water; bit wet to graze; flooded out; pugged up; wet to graze`,
	{acts: actRelease}: `
		can come back in the round; can go back in the round; can come back into the round; can go back into the round; can come back in; come back
		in the round; come back into the round; can be used; can be used again; can be grazed now; ok to graze; okay to graze; fit to graze; good to
		graze; safe to graze; right to graze; clear to graze; ready to graze again; can be grazed; can be grazed again; can graze; can graze now;
		end of withholding; end of the withholding; end of hold; end of the hold; no longer sprayed; can graze again; ok to go; fine to graze; back
		in the round; back in round; back in the rotation; back in rotation; back into the round; back in the mix; available again; open again;
		opened up; open up; opened again; back on the list; free to graze; back in play; all clear; ok again; fit again; ok to use; ok to go in;
		grazable again; graze again; ok for grazing; hold is off; hold over; hold is over; hold lifted; hold is up; hold up; hold finished; hold
		done; holds off; withholding off; withholding finished; withholding over; withholding up; withholding done; withholding is up; withholding
		is over; withholding period up; withholding period over; withholding period is up; withholding period is over; withholding period done;
		withholding period finished; days are up; days up; days done; days are done; time is up; times up; stand down over; off hold; allowed again; good to go again; right to go again; good to go now; ok to go again`,
	{acts: actRelease | actSilage}: `out of silage; back out of silage; taking it out of silage; taking it back out of silage; taken out of silage; taken back out of silage; took it out of silage; took it back out of silage; pulled out of silage; pulled it out of silage`,
	{acts: actRelease | actHay}:    `out of hay; back out of hay; taking it out of hay; taking it back out of hay; taken out of hay; taken back out of hay; took it out of hay; took it back out of hay; pulled out of hay; pulled it out of hay`,
	{acts: actRelease | actSpray}:  `spray is off; sprays off; spray off`,
	{acts: actRelease | actEff}:    `effluent is off; effluent off; eff off; eff is off`,
	{acts: actRelease | actFert}:   `fert is off; fert off; urea is off`,
	{acts: actHold | actHoldOff}:   `hold off; holding off`,
	{acts: actRelease | actWet}:    `wet hold off; wet hold is off; wet hold lifted; wet hold is lifted; wet hold over; wet hold is over; wet hold done; wet hold finished; off the wet hold; lift the wet hold on; lift the wet hold off; lift the wet hold for`,
	{acts: actHold}: `have to stay off; have to keep off; have to stay off it; have to stay off them; have to keep stock off; have to keep them off; must stay off; must keep off; must keep stock off; need to stay off; need to keep off; need to keep stock off; got to stay off; got to keep off; everything keeps off; everything keeps off it; everything keeps out; everything keeps out of it; everything stays off; everything stays off it; everything stays out; everything stays out of it; all stock stay off; all stock stay out; keep it out of the round; keep it out; leave it out; leave it out of the round; leave it be; leave it alone; leave it off; leaving it off; leave that off; leave them off; rest it; leaving it out; 
		hold off grazing; hold off on; holding off on; not to be grazed; nothing to go in; nothing to go into; nothing in; not to go in; dont put
		anything in; dont put anyone in; dont put stock in; dont put any stock in; dont let anything in; do not put stock in; dont go in; dont use;
		do not use; out of the round; out of round; out of the rotation; out of rotation; keep off; keep out; keep out of; stay out of; stay off;
		stay out; staying off; staying out; staying out of; keep stock off; keep stock out; stock off; hands off; leave out; off limits; no go; no graze; no
		grazing; no stock; dont graze; do not graze; withholding period; with holding; with hold; out of action; out of bounds; left out`,
	{acts: actSilage | actCut}: `chopped silage; silage chopped; chopped for silage; silage made; baleage made; haylage made; made silage; made baleage; made haylage; silage baled; silage lifted`,
	{acts: actHay | actCut}:    `hay made; made hay; hay baled`,
	{acts: actDry}:             `isnt wet any more; isnt wet anymore; not wet any more; not wet anymore; no longer wet; dried out enough; dried up enough; dried enough; drained enough; dried out; dried up; dry enough; drained off; drying out`,
	{acts: actSow}: `
		down to new grass; no till drilled; no tilled; frost seeded; over seeded; direct drilled; new grass sown; sown down; put in new grass; re sown; over sown; re
		seeded; under sown; stitched in; new pasture`,
	{acts: actCrop}:  `in crop; into crop; under crop; summer crop; winter crop`,
	{acts: actSpray}: `sprayed out; sprayed off; spray on; spraying off; weed spray; weed sprayed`,
	{acts: actFert}:  `fert on; urea on; n on; lime on; top dressed; topdress; super on; fert spread`,
	{acts: actEff}: `
		effluent on; slurry on; eff on; under effluent; dirty water; effluent pond; pond water; muck spread; spread muck; dung spread`,
	{acts: actOut | actDone}: `finished grazing; done grazing; stopped grazing; finished off; all done; finished up; finished with; done with`,
	{guard: guardNeg, kept: true}: `
		couldnt graze; couldnt get in; couldnt go in; couldnt get into; couldnt use; didnt graze; didnt go in; didnt go into; cant graze; cant go
		in; cant get in; cant use; wont graze; havent grazed; havent been in; not going in; not gone in`,
	{acts: actOut}: `
		out of; came out; come out; cleared out; came off; taken out; taken off; pulled out; pulled off; let out of; turned out of; put out of`,
	{acts: actIn}: `
		back in; turned out; turned out in; turned out into; let into; let in; in on; back into; gone onto; put on; put in; put into; went into;
		went in; gone in; gone into; moved in; moved into; moved onto`,
	{acts: actGrazed}: `
		not grazed well; not well grazed; break fed; strip grazed; breakfed; not grazed hard; grazed hard; not grazed evenly; cleaned up; eaten out;
		grazed out; grazed off; grazed bare; eaten bare; ate bare; chewed bare; chewed down; been through; went through; cleaned out; grazed down; eaten down`,
	{acts: actTopped}: `topped off; topped up; brush hogged; bush hogged; brushhogged; bushhogged; clipped`,
	{guard: guardPlan}: `
		going to; about to; have to; has to; got to; yet to; to be; due to; due for; due in; go in; go into; need to; ready for; next week; next
		month; next round; lined up; aiming to; hope to; looking to; want to; tempted to; keen to; set to; have a look; booked in; booked for;
		remind me to; remind us to; remind him to; remember to; reminder to; time it was; time they were; high time; planned for; to do; how about; what about; to graze; for tomorrow; pencilled in; to go; was meant to; were meant to; meant to be`,
	{guard: guardHear}: `
		next door; not sure; i think; sounds like; looks like; was told; were told; heard that; according to; over the road; down the road; no idea;
		dont know; dunno if; pretty sure; fairly sure; last year; last season; last autumn; last spring; last winter; last summer; used to; years
		ago; last years; made those up; made them up; made that up; made it up; made these up; in your dreams; in my dreams; not certain; i dunno; last month; in theory; supposed to`,
	{acts: actIn, still: true}: `still in; still on; stayed in; stayed on; staying in; staying on; still inside`,
	{guard: guardNeg}:          `not yet; no longer; not been; yet to be; to go yet; not in; still to; havent yet`,
	{event: true}: `
		through the fence; over the fence; through the hedge; through a hedge; went through the hedge; went through a hedge; went through the fence; went through a fence; gone through the fence; gone through the hedge; over the hedge; under the fence; through the gate; on the road; out on the road; on the highway; on the driveway; in the
		garden; in the creek; in the drain; in the ditch; got out; got out again; broke out; broke into; broke in; got into; got in; got in with;
		got mixed; boxed up; mixed up; jumped out; jumped into; escaped from; fell out; getting out; left open; was open; gate open; still open;
		pushed through; pushed out; knocked over; fallen down; blown over; blew over; tipped over; ran out; run out; running out; gone missing; soil
		test; feed test; stuck in; bogged in`,
	{none: true, late: true}: `
		after pm milking; before pm milking; after evening milking; before evening milking; after the evening milking; before the evening milking;
		at evening milking; after arvo milking; before arvo milking; after afternoon milking; before afternoon milking; after tonights milking;
		after the pm milking`,
	{acts: actDamp}: `wet as; wet as anything; wet as hell`,
	{none: true}: `left ruts; left big ruts; left tracks; left wheel marks; left wheel tracks; left a mess; left holes; according to the gauge; according to my gauge; according to the rain gauge; according to our gauge; according to the rain guage; by the way; pond was near full; pond was nearly full; pond was full; pond is full; pond near full; pond nearly full; pond full; pond was getting full; tank was full; tank is full; off to smoko; off to lunch; off to tea; off to dinner; off to breakfast; off to brekkie; off to bed; off to town; off to the pub; off to school; off to work; off to the dentist; off to the doctor; out of here; outta here; heavy crop; light crop; good crop; big crop; great crop; running late; running behind; running low; running short; earlier on today; earlier today; earlier this morning; earlier this arvo; earlier this afternoon; leaf count in; leaf stage in; leaf count for; leaf count on; leaf stage on; leaf counts for; leaf counts in; leaf walk done; leaf walk finished; leaf walk; leaf walks; farm walk done; farm walk finished; just so you know; so you know; letting you know; just letting you know;
		to let you know; just to let you know; for your info; for your information; for info; for the info; in case you didnt know; in case you dont know;
		thought you should know; thought id let you know; thought youd like to know; by the boot; by the plate; by eye; by the ruler; any more; come on over; come on up; come on down; change of heart; change of plan; change of plans; change of mind; on the can; on the tin; on the drum; on the jug; on the bottle; on the packet; on the container; on the label; thermometer says; thermometer said; thermometer reads; gauge says; gauge said; gauge reads; probe says; from what i saw; from what i can see; from what i could see; for the first time this year; first time this year; for the first time this season; first time this season; for the first time; first thing; last thing; first up; anywhere in it; anywhere in there; last strip; final strip; last break; final break; forgot to say; forgot to tell; forgot to send; forgot to mention; forgot to text; meant to say; meant to tell; meant to text; meant to send; 
		went flat; gone flat; ran flat; went dead; gone dead; hit and miss; hit or miss; up and down; here and there; with remnant; all with
		remnant; with a remnant; with remnants; all had remnants; all had a remnant; had remnants; same day; the same day; that same day; on hay; on
		silage; on baleage; on the hay; on it; at foot; not counted; i make; not count; i not count; didnt count; dont count; did not count; on
		target; bang on; bang on target; spot on; on the money; on the button; on the nose; to the floor; to the ground; to the deck; to the dirt;
		to the bone; to the roots; to bits; to pieces; to hell; to death; to mud; to a mess; to a pulp; to slop; to pulp; to buggery; to shreds; to
		blazes; to a standstill; plate meter; plate metre; rising plate meter; plate gave; plate meter gave; plate metre gave; meter gave; plate meter says; plate meter said; plate meter read; when i emptied it; when i read it; when i checked it; when i looked; when we emptied it; when i tipped it; finished counting; finish counting; done counting; finished the count; done with the count; finished scoring; finished measuring; finish the count; new ley; new grass; plate says; plate said; plate reads; plate read; plate was; plate reading; meter says; meter said; not included;
		not in the count; im off; im done; thats me done; thats us done; give or take; after am milking; before am milking; am milking; pm milking;
		in calf; in milk; in season; in heat; in lamb; in foal; not well; but not well; not properly; not evenly; not nicely; not hard; not tidy;
		not the best; not ideal; not the cleanest; didnt clean up; didnt clean it up; didnt clean up well; havent cleaned up; hasnt cleaned up;
		didnt eat it down; didnt eat it all; didnt eat much; didnt graze it well; didnt graze it down; didnt eat it well; didnt do a great job; for
		the day; for the night; for the week; for a day; for a couple of days; for a few days; this side; the other side; not cleaned up; not
		cleaned out; not very clean; not clean; not great; not bad; not too bad; not too flash; not flash; not pretty; not much left; not much; not
		a lot; not many; not far; not even; no worries; no problem; no dramas; no rush; no hurry; no stress; no clover; no sun; no wind; no weeds;
		no issues; no probs; no problems; no trouble; no signal; no reception; no service; no drama; no bother; house cow; house cows; cleaned up
		well; cleaned up nicely; cleaned up good; after milking; before milking; after lunch; before lunch; after breakfast; before breakfast; after
		smoko; after tea; before tea; at milking; this time; on my way; on the way; a bit; had a look; good to go; no yellow; no yellowing; no
		seedheads; no seed heads; not yellowing; no sign of yellowing; as well; not uniform; not so good; looks good; looks great; looks well; looks
		like rain; looks like 2; in the rain; in the dark; in the drizzle; in the wet; in the wind; in the sun; in the end; at the moment; at
		present; by the way; for now; of course; as usual; on the quad; on the bike; per tiller; a tiller; of leaves; full leaves; new leaves; all
		up; all over; all round; right through; on average; in all; at the top; at the bottom; down the back; near the gate; by the gate; at the
		gate; at the back; at the front; good clover; feed wise; a few; going well; a good feed; to the boards; hit hard; thanks to; due to rain;
		after rain; after the rain; before the rain; since the rain; up to; before smoko; before brekkie; after brekkie; thats it for today; thats
		all for today; thats it; thats all; that is all; all for today; did it; did them; did that one; so far; weather held up; weather held;
		weather held off; rain held off; rain held up; weather played ball; thank god; thank goodness; thank heavens; thank the lord; thanks be to
		god; god bless; not a bar; not a bar of signal; not a bar of signal down there; not a bar of reception; not a bar of service; better late than never; held the gate; held the gate open; holding the gate; hold the gate; minded the gate; minding the gate; tell nobody; tell no one; dont tell anyone; got the hang of it;
		pretty sure i got the hang of it; think i got the hang of it; i think i got the hang of it; took me half an hour; took half an hour; took me an hour; took an hour; took us an hour; took us half an hour; took ages; took me ages; took us ages; with the kids hanging off me; with nobody to help; with no one to help; nobody to help; not a breeze; not a breath; not a breath of wind; not a cloud; not a cloud in the sky; not a puff; not a puff of wind; no
		breeze; no frost; no hail; no dew; label says; the label says; label said; tin says; drum says; can says; bottle says; packet says; bag
		says; container says; label reads; label is; says on the label; says the label; says on the tin; says on the drum; says on the bottle; as
		per label; as per the label; per the label; per label; according to the label; according to label; after morning milking; before morning
		milking; after the morning milking; for once; once over; once again; once more;
		the phone went; phone went; phone rang; alarm went; siren went; the light went; light went; lights went; power went; battery went; dont shoot me; dont shoot the messenger; dont laugh; dont yell; dont yell at me; dont judge me; dont growl; dont growl at me; dont sack me; dont kill me; dont eat me;
		dont hate me; dont blame me; dont be mad; dont get mad; dont go crook; dont roar at me; dont give out to me; go easy on me; before i forget; before we forget; while i remember; while i think of it;
		before it slips my mind; in case i forget; lest i forget;
		emptied the gauge; emptied the rain; emptied rain; read the gauge; read the rain; read rain; tipped the gauge; tipped the rain`,
}
