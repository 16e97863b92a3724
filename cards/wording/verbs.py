"""Words that tell an act someone could see done from a trait or a state of mind.

Lists of common English, made for this check; common practice, no published source.
"""

STATES = frozenset(
    """be become feel think believe remember appreciate value respect love trust understand
    realise realize accept embrace consider reflect ponder contemplate worry care hope know
    recognise recognize notice stay remain develop cultivate nurture foster grow improve
    strengthen deepen live treat focus concentrate strive aim try forgive enjoy cherish behave
    act judge assume compare expect doubt fear regret envy hate forget dwell overthink
    procrastinate prioritise prioritize balance simplify manage handle cope face discover
    experience savour savor honour honor inspire influence motivate connect engage want wish
    desire prefer like need regard view imagine mind acknowledge tolerate relax slow pursue
    aspire resolve keep-in-mind welcome succeed lighten loosen soften broaden widen increase
    reduce lessen limit boost raise build maintain uphold rely depend belong empathise
    empathize sympathise sympathize surrender transcend overcome detach mature resist master
    adopt internalise absorb seek attend-to relish overlook commit devote dedicate work-on get
    have stand learn question examine challenge find look see bear hold consciously see-to
    esteem admire pity despise suspect blame fret brood stress panic rejoice persevere endure
    persist thrive flourish matter shine aspire explore""".split()
)
"""Verbs of being, feeling and judging: no act by themselves."""

ACTS = frozenset(
    """add address allow announce answer apologise apologize apply arrange ask attach attend bake
    bathe begin bicycle bike bind boil book borrow bow break breathe brew bring brush build
    bury buy call cancel carry carve catch chair change chant check choose chop circle clean
    clear climb close collect comb complain compliment compose confess congratulate contact
    cook copy correct count cover cross cut cycle dance date debate deliver describe dig
    dictate dine discuss dismantle donate draft draw dress drink drive drop drill dust eat
    edit email empty end enrol enter exchange exercise explain fast fetch file fill finish
    fish fix fold follow gather give go greet hand hang harvest help hem hide host hug hum
    interrupt interview introduce invite iron join jog kiss kneel knit knock lay lead leave
    lend let lie lift light list listen load lock look-up mail make mark meditate meet
    memorise memorize mend message mow move name note obey observe-silence offer open order
    organise organize own pack paint pause pay phone photograph pick plant play polish post
    pour practise practice praise pray prepare present press print propose prune publish pull
    put quote raise read recite record recycle refuse rehearse relearn remove rent repair
    repeat replace reply report rest retell return review revise ride ring rinse run say
    schedule scrub sell send serve set sew shake share sharpen shave shop show shut sign sing
    sit sketch sleep smile sort sow speak spell spend split spread stack stand stop store
    stretch study submit support sweep swim switch take talk teach tear telephone tell test
    text thank throw tidy touch train translate travel trim tune turn type unplug unsubscribe
    use vacuum visit volunteer wait wake walk wash watch water weed weigh whittle wipe
    withdraw wrap write abstain avoid refrain quit check-in skip swap lay light sand saw plane
    glue oil varnish mount sketch stitch spin weave darn plough hoe rake feed groom milk
    saddle row sail paddle ski hike stroll march jog sprint lunch breakfast picnic toast cheer
    clap whistle wave nod bless renew hand-write ask borrow consult complete cease replant
    unfollow delete uninstall archive label scan shred box donate unpack pronounce learn-by-
    heart copy-out underline summarise summarize outline paraphrase contribute lecture rewrite
    proofread annotate transcribe interview nominate vote march protest petition lobby
    campaign canvass register sponsor babysit foster-child tutor coach mentor referee umpire
    measure weigh log track tick schedule confirm order cook roast fry grill peel slice lower
    light blow rise get-up step tend trap bottle pickle preserve knead empty compost shovel
    sweep cancel settle invest save deposit bank transfer repay lend bequeath state greet
    hold-open seat stay-home walk-away dim unlock knock admit confess own apologize criticise
    criticize gossip shout swear curse argue scold nag lie boast scroll browse smoke gamble
    snack stream tweet post comment download install charge strip change rotate debate recount
    narrate retell advise warn demonstrate explain conduct direct accompany join attend enroll
    perform act-out hum spar preach plank squat lunge skip bend reach
    inspect calibrate catalogue catalog sterilise sterilize disinfect rewire solder weld
    forge rivet lubricate grease drain refill pot repot thin graft mulch shear lamb
    drench deworm vaccinate inject bandage splint swab launder starch embroider crochet
    felt dye tan upholster reupholster whitewash plaster tile grout caulk insulate
    sandpaper hone whet strop grind haul launch moor anchor furl reef splice scrape
    winch pump bail chart survey map film frame engrave etch stencil stamp typeset index
    busk serenade score invigilate grade debrief audit reconcile invoice tally pawn
    auction appraise redeem tithe fundraise leaflet picket parboil simmer proof prove
    ferment distil decant salt scour mop wax beeswax declutter shelve alphabetise
    alphabetize dial fax telegraph ping courier patrol guard escort ferry taxi trek wade
    scale abseil wrestle punt canoe kayak surf skate sledge juggle somersault baptise
    baptize anoint christen genuflect toll peal salute curtsey curtsy tuck cradle rock
    burp plait braid massage thaw defrost descale unblock unclog rewind reload restock
    reorder reseed rebuild repaint retype reprint rehang restring retune retouch back
    bait trawl gut fillet gild limewash thresh winnow glean scythe reap""".split()
)
"""Verbs of doing that someone could see."""

ABSTRACT = frozenset(
    """patience courage faith confidence gratitude kindness compassion respect love trust mind
    attention effort care joy peace calm hope sympathy empathy interest responsibility
    humility honesty generosity tolerance wisdom discipline self-discipline willpower balance
    perspective attitude outlook temper cool sense meaning purpose beauty good best benefit
    value worth understanding awareness mindfulness acceptance forgiveness mercy grace dignity
    integrity resilience strength character habits habit virtue virtues restraint moderation
    simplicity spirit heart soul thoughtfulness curiosity enthusiasm passion optimism
    seriously granted charge control advantage pride stock time room space progress difference
    change changes most more less better amends consideration appreciation loyalty
    solidarity pleasure fun delight contentment happiness freedom independence sorrow grief
    anger pessimism prejudice prejudices assumptions doubts fears worries expectations
    fear feeling feelings emotion emotions uncertainty injustice hatred envy jealousy resentment
    grudge grudges bitterness guilt shame ego excellence harmony serenity
    boundaries relationship relationships connection life lives world people""".split()
)
"""What light verbs ("have", "show", "make") turn into states of mind."""

LIGHT = frozenset(
    """have show practise practice give make take keep find cultivate seek bring hold develop
    offer exercise demonstrate learn pay put see look get set lose build raise spread""".split()
)
"""Verbs that say nothing by themselves: what they are done with decides."""

ABSTRACT_ENDINGS = ("ness", "itude", "ience", "ment's", "ism", "hood", "ility", "osity")
"""Endings of names of qualities."""

IMPERATIVE_OPENERS = frozenset(
    """the my a an our his her him them it this that all every each any some to with for in at on
    up down out off away back about one both another no two three more less over into onto
    from around through aloud alone early together again by straight half myself only nothing
    something someone what whatever how whether before after without once every each daily
    when twice""".split()
)
"""Words that follow a verb, and hardly ever a noun at the head of a phrase."""

VAGUE_OBJECTS = frozenset(
    """someone somebody something anyone anybody anything everyone everybody people others other
    things thing stuff books more less better often world life nature myself everything ways
    mankind humanity society good exercise regularly whenever possible deeds act acts work
    kindness kind humans time lot lots much many few several person strangers goals goal it
    that this way gratitude love away up out off down back truth poor needy weak can""".split()
)
"""Names of nobody and nothing in particular."""

FILLERS = frozenset(
    """i we will shall not never always also then only just please do did am are is going to the
    a an and or but so that this these those of more less better often really very truly
    actually simply even still now again try every each day days week weeks month months year
    years daily weekly monthly yearly once times time at least most about some any all both
    with by for in on as than from be been being have has had my own too as well really least
    until per before after regularly frequently sometimes occasionally immediately quickly
    slowly carefully kindly properly fully deeply hard harder well gently honestly openly
    sooner earlier later faster slower longer over anew afresh
    quietly consistently no longer it its kind new different good small nice little single 's
    , . ; : ! ? ~ ( )""".split()
)
"""Words that name neither whom nor what, where nor when."""

INTRANSITIVE = frozenset(
    """walk run swim cycle jog meditate pray stretch sit stand sleep rest fast sing dance hike
    ride row breathe smile write read draw paint""".split()
)
"""Acts that are whole without an object when their length or amount is told."""

NEVER_VERBS = frozenset(
    """i we he she they it there who what which why how greater better deeper stronger life
    people nothing everything patience books words reading writing walking being having doing
    going lots plenty much many few several always courage friendship""".split()
)
"""Words that head a phrase and are no verbs."""


def stem(word: str) -> str:
    """Return the base of a gerund, as "write" of "writing"; other words as they are."""
    known = ACTS | STATES
    if word in known or not word.endswith("ing") or len(word) < 5:
        return word
    base = word[:-3]
    for candidate in (base, base + "e", base[:-1] if base[-1:] == base[-2:-1] else base):
        if candidate in known:
            return candidate
    return word
