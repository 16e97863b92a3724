"""Groups of words and turns of everyday speech that say nearly the same: plain data, English.

Beside `cards.kinds.synonyms`, of our own choosing, by what digests tell of: what people do to
each other, feel, own, suffer and claim. A turn of several words is joined by hyphens and
written without articles and possessives; `cards.kinds.phrases` finds it in a text.
"""

GROUPS = """
die death dead perish pass-away pass-on kick-bucket breathe-last drop-dead lose-life bite-dust
cop-it meet-end snuff-it end-life; kill murder slay do-in do-away bump-off finish-off knock-off
put-death put-down take-life wipe-out make-away strike-down cut-down lay-low dispatch butcher
slaughter assassinate; suicide kill-self take-own-life end-own-life hang-self drown-self
shoot-self; marry wed marriage wedding wedlock tie-knot get-hitched hitch settle-down take-wife
take-husband walk-aisle become-wife become-husband bride groom; propose proposal
pop-question ask-hand ask-marry offer-marriage go-down-one-knee; jilt desert abandon ditch dump
chuck leave-lurch walk-out run-out throw-over drop stand-up leave-altar; love adore fall-for
fall-love lose-heart crazy-about mad-about sweet-on besotted infatuated smitten enamoured
head-over-heels dote crush; court woo chase-after run-after pay-court make-up-to go-after;
affair adultery cheat carry-on sleep-with unfaithful two-time fling bit-side play-away lover
mistress; pregnant expect-child with-child knock-up baby-way; birth born give-birth come-world
bear deliver; divorce part split-up break-up separate go-separate-ways; befriend
make-friends get-on take-to hit-off pal mate chum buddy friend companion; quarrel row argue
fall-out squabble bicker cross-swords spat have-words wrangle clash dispute; reconcile
make-up make-peace patch-up bury-hatchet come-terms; trick deceive fool dupe con hoodwink
take-in take-ride pull-wool lead-garden-path lead-on string-along hoax fib bamboozle delude
mislead lie-to have-on; lie fib tell-lies make-up invent untruth whopper; pretend feign
make-believe put-on play-part act-part sham fake let-on make-out; disguise dress-up
pass-off pose masquerade; betray sell-out give-away turn-in grass shop inform rat stab-back
blow-whistle tell-on double-cross; abandon give-up throw-in-towel call-quits drop pack-in
let-go quit stop renounce surrender; surrender give-in give-way yield cave-in back-down
knuckle-under submit bow throw-sponge lay-down-arms; refuse reject turn-down say-no
knock-back rebuff decline spurn will-not have-none-of turn-back-on shut-door; accept
say-yes agree take-up go-along consent take-on fall-in-with; escape get-away run-away run-off
break-out break-free make-off slip-away bolt flee scarper do-runner take-flight take-off
clear-out clear-off take-to-heels make-getaway give-slip get-out get-clear; leave go depart
set-off set-out go-away go-off take-leave move-out push-off head-off walk-away; return come-back
go-back get-back turn-back come-home go-home head-home; arrive get-to turn-up show-up reach
come-in land; wander roam drift knock-about knock-around rove trek ramble tramp; travel trip
journey voyage tour expedition trek cruise go-abroad; search look-for hunt-for go-after seek
track-down comb scour; find come-across come-upon stumble-upon stumble-on light-on run-into
hit-on turn-up discover bump-into; meet run-into come-across encounter bump-into get-know
face-to-face; learn find-out get-wind discover hear-of twig cotton-on come-know see-through
work-out figure-out make-out realise dawn-on wake-up eyes-open; understand get-grip grasp
make-sense get-idea work-out figure-out take-in catch-on; see look eye stare gaze behold spot
clock notice set-eyes lay-eyes catch-sight glimpse; watch spy keep-eye look-on snoop observe
eavesdrop overhear listen-in; hide conceal cover-up keep-dark keep-secret hush-up lie-low
go-ground bury lock-away stash; secret hush-hush on-sly behind-back under-wraps on-quiet
clandestine; reveal spill-beans let-slip let-out come-out bring-light let-cat-out give-away
own-up expose unmask uncover lay-bare; confess own-up come-clean get-off-chest admit
make-clean-breast; tell say speak inform let-know break-news pass-on report; talk chat
converse discuss natter conversation speech; shout yell bawl cry roar scream; order command
tell boss-about bid lay-down-law instruct; ask beg beseech implore plead go-down-on-knees;
persuade talk-into win-round talk-round win-over get-to bring-round coax egg-on convince
prevail; force make drive push-into oblige compel press bully twist-arm; dissuade talk-out
put-off warn-off; help lend-hand give-hand bail-out stand-by back-up assist aid come-rescue
do-favour; support back stand-up-for stick-up-for side-with stand-by take-side back-up champion;
save rescue bail-out pull-out get-out come-rescue set-free deliver spare; protect shield guard
look-after watch-over keep-safe defend stand-up-for; care look-after tend nurse see-to
mind take-care; raise rear bring-up foster adopt take-in upbringing grow-up; child kid
youngster nipper little-one bairn toddler infant tot brat offspring; boy lad youngster youth
son; girl lass young-woman maid daughter; man bloke guy chap fellow gent geezer; woman lady
lass dame female; mother mum mam mama mummy parent; father dad papa pa daddy parent; parents
folks mum-dad father mother; brother sister sibling; grandmother gran granny nan; grandfather
grandad grandpa; husband hubby spouse man; wife missus spouse woman better-half; family
folk kin relative clan kindred flesh-blood; orphan foundling parentless waif; widow
widower bereaved; friend pal chum buddy mate crony ally companion; enemy foe rival
opponent nemesis adversary; boss chief gaffer master employer owner head superior; servant
maid butler footman skivvy domestic help hireling valet lackey housekeeper; worker labourer
hand workman toiler employee; job post position work employment occupation trade career;
fire sack dismiss let-go kick-out give-boot show-door give-notice lay-off; hire take-on
employ engage recruit; work toil slave labour graft slog drudge drudgery keep-nose-grindstone;
lazy idle bone-idle shiftless layabout workshy; rest relax put-feet-up take-easy; money cash
dough brass wealth funds fortune means; rich wealthy loaded well-off well-heeled rolling-it
moneyed affluent made-of-money prosperous well-do; poor broke skint hard-up penniless destitute
poverty needy on-breadline impoverished badly-off down-and-out; debt owe in-red in-hock
borrow loan; bankrupt ruin go-bust go-under broke go-wall lose-everything; earn make-living
make-money bring-home-bacon wages; spend blow splash-out squander fritter-away
throw-away waste lavish; save put-by put-aside lay-by scrimp tighten-belt hoard; pay
fork-out cough-up stump-up shell-out foot-bill; cheap dirt-cheap inexpensive going-for-song;
expensive dear pricey cost-arm costly; buy purchase get snap-up pick-up; sell flog
hawk peddle get-rid-of; steal nick pinch swipe rob make-off-with walk-off-with help-self
lift burgle thieve; thief crook robber burglar pickpocket; swindle rip-off con fleece defraud
cheat do-out-of take-cleaners; bribe buy-off grease-palm pay-off; inherit come-into legacy
heir leave-will; gamble bet wager stake flutter; win come-out-top get-better-of beat
triumph carry-day gain-upper-hand prevail come-first; lose come-off-worst be-beaten
go-under; defeat beat thrash rout lick crush overcome overpower get-better-of; fight
battle scrap brawl come-blows war take-on punch-up; attack go-for set-upon lay-into pounce
fall-upon fly-at turn-on assault set-about round-on; hit strike punch thump clout wallop
slap bash whack beat smack knock; beat flog whip thrash lash cane give-hiding belt;
wound hurt injure maim cut hack gash; shoot gun-down fire-at; hang string-up swing noose
gallows; behead decapitate chop-head cut-head off-head guillotine lose-head axe; drown
go-under sink water; poison poisoned venom toxin; burn set-fire go-up-flames up-smoke torch
set-alight blaze ashes; destroy ruin wreck smash lay-waste tear-down do-for bring-down
pull-down raze; ruin downfall undo bring-down go-dogs go-rack; break smash
shatter come-apart fall-apart crack snap; repair mend fix put-right patch-up restore; prison
jail clink nick behind-bars inside cell lock-up dungeon gaol; imprison lock-up put-away
bang-up send-down jail throw-jail shut-up cage; arrest nab nick pick-up run-in take-custody
collar take-prisoner; free let-go set-free release let-out let-off liberate turn-loose; police
cop copper detective bobby constable; crime felony offence wrongdoing foul-play;
trial court dock hearing case; guilty to-blame at-fault responsible blame; innocent blameless
not-guilty guiltless harmless clear-name; punish make-pay teach-lesson come-down-on penalise;
revenge get-even get-own-back settle-score pay-back vengeance tit-for-tat avenge eye-for-eye
get-back-at take-revenge; forgive let-off let-bygones pardon excuse turn-other-cheek overlook;
sorry regret remorse repent rue wish-had-not be-ashamed contrition; ashamed shame embarrassed
red-faced mortified hang-head; angry furious cross livid fly-off-handle lose-temper
see-red hit-roof fury rage blow-top up-in-arms lose-rag wild seethe; annoy irritate vex
get-on-nerves wind-up provoke bother pester; afraid scared frightened terrified cold-feet
petrified fear fright terror scared-stiff panic wits-end; brave bold plucky gutsy courage
guts daring pluck nerve grit mettle valour; coward chicken yellow spineless gutless lily-livered
timid; sad unhappy miserable blue down-dumps heartbroken gloomy broken-hearted sorrow low
glum down-mouth upset grief dejected; happy glad cheerful over-moon chuffed joyful content
tickled-pink cloud-nine joy bliss delighted; laugh giggle chuckle snigger crack-up; cry weep
sob blub tears burst-tears break-down; mourn grieve grief bereaved lament; worry fret
anxious stew lose-sleep trouble concern; shock stun take-aback bowl-over knock-sideways
astound amaze surprise dumbfound; hope look-forward dream expect long-for; want
wish desire long-for hanker yearn crave fancy set-heart after set-sights covet; like fond
enjoy take-shine keen fancy; hate loathe cannot-stand cannot-bear detest sick-of despise abhor;
scorn look-down despise turn-nose contempt sneer disdain snub; mock laugh-at make-fun tease
poke-fun take-mickey ridicule jeer send-up deride; insult rude offend slight hurt-feelings
abuse affront; scold tell-off dress-down give-earful tick-off rebuke haul-coals reprove
reprimand rap-knuckles give-talking-to; blame point-finger lay-at-door accuse hold-responsible;
praise sing-praises compliment applaud pat-back; admire look-up think-highly think-world
respect esteem revere; envy jealous green-eyed covet begrudge; proud pride stuck-up big-headed
full-of-self high-horse toffee-nosed snooty haughty vain vanity conceited arrogant; humble
modest meek lowly; selfish self-centred think-only-self look-after-number-one egoistic
self-seeking; generous open-handed big-hearted giving unselfish; mean stingy tight-fisted
miser penny-pinching skinflint; kind good-hearted kindly nice soft-hearted gentle
decent caring; cruel heartless nasty vicious hard-hearted brutal callous cold-blooded pitiless;
honest straight straightforward above-board upright truthful; dishonest crooked bent
underhand shady; stubborn pig-headed dig-heels obstinate stick-guns headstrong not-budge;
clever bright smart brainy sharp quick-witted brilliant intelligent; stupid thick dim daft
dense foolish silly dumb idiotic fool; mad crazy insane lose-mind off-rocker round-bend
lose-wits out-mind bonkers go-mad nuts lunatic unhinged deranged lose-reason; sane right-mind
come-senses; drunk tipsy legless booze drink hit-bottle sozzled alcohol plastered; sick ill
poorly under-weather unwell laid-up ailing fall-ill take-ill disease; recover get-better
get-over pull-through get-well on-mend heal come-round; wear-out tired exhausted knackered
dead-beat weary all-in done-in; sleep nod-off drop-off kip slumber doze asleep; wake wake-up
come-round rouse; hungry starving famished peckish starve go-without; eat scoff tuck-in gobble
devour feed wolf-down; meal food grub dinner feast bite; house home place dwelling abode
roof digs lodging; live dwell stay settle put-up reside make-home; dead-body corpse remains
body carcass; grave tomb bury lay-rest six-feet-under; ghost spirit spectre spook phantom
apparition; village hamlet town; rule govern reign run-show hold-sway wear-trousers
hold-power be-charge call-shots power; king ruler monarch sovereign crown throne on-throne;
overthrow topple bring-down oust depose unseat kick-out dethrone; rebel rise-up revolt
up-in-arms uprising mutiny turn-against stand-up-to kick-over; obey toe-line do-as-told
follow-orders comply knuckle-down; disobey defy flout stand-up-to break-rules go-against;
law rule statute code; soldier troops army men-arms squaddie; war fighting hostilities
take-up-arms take-field; retreat fall-back pull-out back-off withdraw turn-tail pull-back;
boat ship vessel craft tub; sea ocean waves deep main; storm tempest gale squall; shipwreck
go-down wreck founder run-aground capsize; island isle desert-island; start begin set-out
kick-off get-going set-up get-under-way commence take-up; stop finish pack-in
give-over knock-off call-halt put-stop put-end quit cease; continue carry-on go-on keep-on keep-up
press-on stick-at keep-going soldier-on persevere persist; try have-go attempt have-bash
have-shot set-out do-best; succeed bring-off pull-off make-it manage get-there make-good; fail
come-nothing fall-flat fall-through flop come-unstuck come-grief go-wrong; improve
get-better brush-up turn-over-new-leaf mend-ways; worsen get-worse go-downhill
go-from-bad; change turn-into become alter turn transform go-from; grow get-bigger expand swell
increase go-up; shrink get-smaller dwindle go-down decrease; endure put-up-with
bear stand stick suffer stomach go-through take-lying-down; suffer go-through undergo hurt
pain torment agony; avoid steer-clear keep-away dodge get-out-of shun keep-clear
keep-distance; get-rid-of throw-out do-away remove ditch dispose; expel throw-out kick-out
banish drive-out cast-out turn-out send-away exile send-packing drum-out; exclude shut-out
leave-out keep-out cold-shoulder; postpone put-off delay put-back drag-feet stall; decide
make-up-mind settle-on plump resolve choose come-decision; choose pick opt go-for single-out
select; hesitate dither hang-back have-second-thoughts think-twice waver shilly; think
reckon consider mull turn-over weigh-up ponder reflect; believe swallow fall-for buy take-word
trust take-gospel credit think; doubt not-sure take-pinch-salt question suspect distrust smell-rat;
know be-aware have-inkling understand; forget slip-mind lose-sight not-remember; remember
bear-mind call-mind think-back recall keep-mind; teach show-ropes instruct educate school
give-lessons coach train; study swot read-up hit-books learn; guess suppose conjecture;
explain spell-out clear-up account-for make-clear lay-out; argue make-case hold maintain
reckon claim contend; prove show bear-out demonstrate back-up evidence; disprove show-false
refute knock-down rebut; agree see-eye-to-eye go-along same-page concur; disagree
at-odds differ not-see; threaten menace blackmail hold-over lean-on; warn tip-off caution
sound-alarm; promise give-word swear vow pledge oath; keep-promise keep-word stand-by
stick-to honour; break-promise go-back-on renege break-word; trust rely count-on depend
bank-on lean-on; chance luck fluke fate fortune coincidence; danger risk peril stick-neck-out
hot-water jeopardy; trouble bother mess fix hot-water jam scrape pickle bind predicament;
easy piece-of-cake simple doddle no-trouble; hard tough tricky uphill difficult; important
matter big count main key crucial; useless no-use pointless good-for-nothing no-good
vain worthless futile waste-of-time; useful handy come-handy of-use good-for; big huge
massive whopping great large enormous; small little tiny titchy wee minute; many lots
loads heaps plenty scores umpteen hundreds tons masses numerous; few handful hardly-any;
all everything whole lot entire every complete; alone by-self on-own lonely single-handed
without-company solo; together side-by-side as-one hand-in-hand jointly; often time-and-again
again-and-again over-and-over frequently repeatedly; seldom once-in-blue-moon hardly-ever
rarely; at-once straight-away right-away immediately forthwith there-and-then instantly; slowly
bit-by-bit little-by-little gradually step-by-step by-degrees; suddenly out-blue
all-of-sudden abruptly; forever for-good always till-end eternally; old getting-on
elderly long-tooth aged ancient; young youthful wet-behind-ears green; new brand-new fresh
modern; end finish come-end close over done-with; last final end closing; first start begin
early; rank class standing station birth breeding status; noble aristocrat toff blue-blood
titled upper-crust posh lord gentry; common ordinary run-of-mill everyday plain folk masses;
gossip tittle-tattle rumour hearsay talk-behind-back scandal; famous well-known household-name
celebrated make-name renown; reputation good-name name standing; disgrace
lose-face bad-name dishonour scandal shame fall-from-grace; god lord almighty maker heaven;
church religion faith clergy; priest vicar parson clergyman minister padre cleric man-of-god
man-of-cloth curate; pray prayer on-knees say-prayers; devil satan old-nick fiend; sin
wrong vice evil wickedness; good right virtue decent goodness; bad wrong evil rotten wicked
foul; nature character make-up personality; mind head brain brains wits intellect reason;
feeling emotion heart passion gut; body flesh bodily physical; truth fact how-things-are
reality; freedom liberty free independence do-as-like own-master; slave bondage chains serf
in-chains; equal same level on-par alike no-better; different unlike poles-apart other; better
superior cut-above higher; worse inferior beneath lower; cause lead bring-about give-rise
produce make result spark; result consequence outcome come-of end-up follow upshot; because
reason owing thanks down-to due; aim goal purpose be-after end object; way means method how
path; part role share bit piece; limit bound line check curb rein; power clout might
strength say-so muscle authority; weak feeble puny frail helpless wimp; strong tough
powerful mighty sturdy hefty; public open out-in-open everyone-sees; state government
powers-that-be authorities; people folk public masses everyone society crowd; crowd mob
herd pack throng horde mass; majority most-people greater-number most; individual person
each-man one-person single self; trade business commerce buying-selling deal; market
stall shop trade; share divide split go-halves parcel-out divvy; give hand-over
hand-out let-have donate part-with make-over bestow; take grab lay-hands get-hold seize snatch
help-self; get come-by obtain acquire land lay-hands; keep hang-on hold-on cling
retain hold-onto; own have possess belong; lose mislay be-without go-missing; throw chuck toss
hurl fling lob sling; carry lug cart haul bear; pull drag tug yank haul tow; push shove
shoulder thrust; hold grip clutch grasp clasp; run dash race sprint leg-it bolt rush tear;
walk stroll amble stride go-foot trudge on-foot; climb go-up clamber scale mount; fall
tumble drop come-down trip crash; jump leap hop bound spring; follow go-after tail shadow
dog trail come-after; lead go-first guide show-way head; wait hang-about hang-on bide
sit-tight; hurry get-move-on rush make-haste; write pen jot put-paper set-down scribble; letter
note message missive; read pore go-through book; sing song tune ballad; play game; dance ball
party; clothes gear togs garb rags dress outfit; beautiful good-looking pretty gorgeous
lovely stunning handsome fair; ugly hideous plain unsightly; clean spotless scrub wash;
dirty filthy mucky grubby foul; dark black gloom pitch-black murky; light bright shine glow;
hot boiling heat warm scorching; cold freezing chilly icy frosty; night after-dark dark evening;
morning dawn daybreak first-light sunrise; wood forest trees woodland; countryside country
sticks out-of-town rural fields; foreign abroad strange overseas; adventure exploit
escapade scrape; dream fantasy castles-air vision illusion; illusion
delusion mirage false-idea; ideal perfect dream model
""".split(";")
"""Groups of words and turns; those a group holds say nearly the same."""
