"""Further groups of words that say nearly the same of what people do, suffer and argue.

Plain data beside `cards.kinds.synonyms`, English, of our own choosing: a word may stand in several
groups.
"""

GROUPS = """
chase pursue seek run-after greed riches; greed avarice wealth riches money gain; harden cold
callous stern hard; soften melt mellow touch; terror fear fright dread scare; friendless alone
nobody lonely solitary; underpay pittance cheap stingy; laugh mock scoff scorn jeer sneer
ridicule; boyhood childhood youth girlhood young; raise increase more rise; wage pay salary; clerk
secretary employee; celebrate keep honour observe; generous kind giving charity; power throne
crown rule kingship; gain get win obtain acquire seize; foretell promise predict prophesy prophecy
foresee; taunt shame goad mock spur egg urge; stab kill murder slay knife; frighten afraid fear
scare terrify; slaughter kill massacre murder butcher; wash scrub clean; sleepwalk sleep; ruin
destroy undo downfall perish; tyrant usurper king despot; bait hook catch; pull tow drag draw haul
tug; skiff boat; corpse body dead; cover bury hide sprinkle strew; dust earth soil sand ground;
order command forbid decree edict law; against defy defiance despite disobey resist; tire weary
sick exhaust; hand give deliver entrust surrender; protector champion guardian defender; doll
plaything toy puppet; treat use regard; realise see understand discover grasp; learn educate
study; walk leave go depart slam; forge falsify fake counterfeit; debt loan owe borrow money;
blackmail threaten extort; read learn; spouse wife husband; flee escape run bolt abscond; return
back home; confess admit own reveal tell; trial court judge try tribunal; sentence condemn convict
punish; prison jail gaol dungeon cell penal; hang execute gallows behead guillotine; kill murder
slay shoot stab poison drown; die death perish dead expire succumb; drown sink water; wound hurt
injure cut maim; blind sight eyes see; nurse tend care heal; recover heal well cure health; mad
insane crazy lunacy asylum; drunk drink alcohol spirits; gamble bet cards dice; lose forfeit
squander; squander waste spend fritter dissipate; inherit heir legacy bequeath; rich wealthy
fortune money; poor poverty want need destitute; starve hunger famine hungry; beg plead ask
implore entreat; steal rob take thief theft; lie false deceive untruth; betray treason traitor
sell; spy watch inform; trust believe rely faith; doubt suspect distrust question; jealous envy
suspicion; love-affair affair adultery mistress lover unfaithful; propose proposal offer ask
marry; refuse reject turn decline deny spurn; accept agree consent take; engage betroth marry;
jilt abandon desert leave; divorce separate part leave; pregnant child birth expect; adopt foster
raise bring; raise rear bring educate; child boy girl son daughter infant; brother sister sibling;
servant maid valet butler footman domestic; master lord owner employer; slave bondage captive;
soldier fighter army troops; war battle fight campaign; win victory triumph conquer defeat; lose
defeat beaten; surrender yield submit capitulate; attack assault raid invade; siege surround
blockade; peace truce treaty reconcile; rebel revolt rise uprising mutiny; rule govern reign
command; king monarch ruler sovereign; prince heir; law rule statute right; justice fair right
law; obey submit follow comply; punish penalty chastise discipline; forgive pardon mercy absolve;
revenge avenge vengeance payback; honest truth true sincere frank; secret hide conceal hidden;
reveal show disclose expose tell; search seek look hunt quest; travel journey voyage go; wander
roam drift stray; shipwreck wreck sink; village town hamlet; farm land field; garden orchard;
church religion faith; devil satan evil; angel heaven; hell damn; pray prayer worship; sin evil
vice wrong; virtue good moral; monk nun convent monastery; prophet seer oracle; ghost spirit
phantom spectre apparition; witch magic sorcery; hope expect wish; coward timid afraid; sorrow
grief sad mourn; kind gentle good; wise wisdom prudent; fool foolish silly; clever cunning smart
bright; learn study education; teach instruct educate; book volume work; write author compose;
poet poem verse; paint painter picture; music song sing; play theatre stage actor; society people
world community; people public citizen crowd; majority most many mass; individual person one
single; class rank order station; rich noble aristocrat upper; worker labour workman; trade
business commerce sell; money coin cash gold; price cost worth value; buy purchase pay; own
possess have property; share divide part; save rescue spare deliver; build make create; change
alter transform become; grow increase develop; fall decline decay sink; remain stay keep; change
turn become; different other unlike; true real genuine; right correct proper; cause reason why
because; means way method; part piece share; idea thought notion concept; judge judgement verdict
opinion; argue claim hold maintain assert; deny refute dispute; describe tell portray depict;
example case instance; rule principle law maxim; duty obligation ought must; need necessary
require; fail failure unable; forbid ban prohibit prevent; urge press persuade; threaten threat
menace; whisper murmur; notice observe perceive; know knowledge aware; remember memory recall;
believe think faith; suffer pain endure bear; rest peace sleep; wear dress clothes; throw cast
hurl toss; hold grip keep; jump leap; ride horse; hunt chase track; trap snare catch; disguise
mask pretend; praise admire; quarrel argue fall-out; fight duel combat; reconcile peace make-up;
convict prisoner captive criminal felon inmate jailbird; runaway escape fugitive flee; boy lad
youth child; girl lass child maiden; marsh bog fen moor swamp heath; steal stolen swipe pinch
filch thieve; scaffold pillory gallows stocks; stand put set place; name tell say mention identify
call; tsar czar emperor king kaiser monarch; serf peasant slave villein; free liberate emancipate
release unchain; land field soil ground estate acre; till plough work cultivate farm; charge
attack rush assail ride; take mistake believe think regard; giant ogre monster; throw unseat hurl
toss fall; horse mount steed mare nag; trifle play meddle interfere toy; orphan foundling ward;
talk persuade convince argue dissuade; match marriage matchmaking couple; scold tell-off reprove
rebuke reprimand chide upbraid; spinster maid unmarried; picnic outing excursion; want love desire
wish long; politics policy political; means tools instruments ways; hand control charge rule;
violence force fighting; limit bound end; friction accident obstacle; defence defend defensive;
attack offensive assault; commander general leader captain chief; nerve courage boldness;
judgement judgment insight sense; rule formula recipe; habit custom routine usage; cause effect
causation; memory recollection remember; reason reasoning logic rational understanding; help
assist feed bring give aid; refuse reject decline will-not deny; reveal betray give-away expose
tell; poor beggar pauper penniless destitute; rich wealthy affluent millionaire moneyed; old aged
elderly ancient; stupid foolish dull slow ignorant; wise sensible prudent; ugly plain hideous
deformed; good kind decent virtuous upright; honest upright decent sincere; shy timid bashful
retiring; mean stingy miserly tight; lazy idle slothful; busy industrious diligent hard-working;
sad unhappy miserable wretched melancholy; glad happy joyful pleased delighted; afraid frightened
scared terrified; tired weary exhausted worn; sick ill ailing diseased; dead killed deceased
lifeless; alone solitary lonely isolated by-himself; secret hidden private clandestine covert;
strange odd peculiar queer weird foreign; famous renowned celebrated known; important great
significant weighty; useless vain pointless futile worthless; useful helpful valuable; free
independent unbound; strong powerful mighty robust; weak feeble frail powerless; true faithful
loyal constant; false untrue disloyal treacherous lying; new fresh novel recent modern; whole
entire all complete; enough sufficient ample; house home dwelling cottage residence; hut shack
cabin hovel shed; palace castle court mansion manor; inn tavern pub alehouse hotel; school academy
college; shop store market; prison jail gaol dungeon cell penitentiary; church chapel cathedral
temple; hospital infirmary asylum; street road way lane; town city place; village hamlet
settlement parish; sea ocean water waves; ship boat vessel craft sail; river stream brook; lake
pond pool; hill mountain height; wood forest trees; field meadow land; desert wilderness waste;
sky heaven air; earth world globe; war conflict fighting hostilities; battle combat fight
engagement; weapon sword gun arms; army troops soldiers host; captain master skipper; pirate
robber; lord nobleman earl duke count baron peer; lady noblewoman countess duchess; gentleman
squire; peasant farmer countryman rustic; merchant trader dealer tradesman shopkeeper; lawyer
attorney advocate counsel; doctor physician surgeon healer; teacher schoolmaster tutor governess;
artist painter sculptor; cook kitchen; policeman constable detective inspector; judge magistrate
justice; thief robber burglar; murderer killer assassin; liar cheat fraud swindler impostor;
drunkard drunk sot; beggar tramp vagrant; stranger foreigner outsider alien; lover sweetheart
suitor admirer; fiance betrothed engaged; bastard illegitimate natural; heir successor inheritor;
walk go stroll march tramp; run flee rush race hurry; ride go travel; travel journey wander
voyage; return come-back go-back home; leave depart go quit desert; arrive come reach land; enter
go-in come-in; follow pursue track chase; lead guide bring take; send dispatch post; carry bear
bring take; fall drop sink collapse; rise stand climb mount; sit rest; lie rest sleep; stay remain
live dwell settle; hide conceal bury cover; find discover come-upon meet; keep hold save preserve;
give hand present grant bestow; take seize grab steal get; get receive obtain gain win; pay spend
give; save store hoard keep; dress wear clothe; break destroy smash wreck; burn fire set-alight;
cut sever; kill slay murder put-to-death; die perish pass-away; marry wed take-to-wife; love adore
care; hate detest loathe despise; like enjoy fancy; want desire wish crave; need require lack;
think believe suppose consider; learn discover find study; teach show instruct; say tell speak
declare; confess admit own-up; forbid ban stop prevent; persuade win-over talk-into convince;
command order bid tell; serve wait; hinder stop prevent block; save rescue free deliver; hurt harm
wound injure; punish beat whip; cry weep mourn; fight struggle battle; win beat defeat conquer;
lose fail; succeed manage; cause bring make lead; slavery bondage servitude captivity; power might
authority control; law rule statute justice; right claim; virtue goodness morality; truth reality
fact; lie falsehood untruth deceit; reason mind intellect thought; passion emotion feeling heart;
will choice decision; nature world; society people mankind; individual person self; state
government nation country; religion faith god; science experiment; art beauty; trade commerce
market; suffering pain misery; death end; soul spirit mind; time age years; honour glory fame;
justice fairness; chaos confusion disorder; education schooling teaching upbringing; minority few;
crowd mob masses; progress advance improvement; revolution revolt rising; slowly gradually little-
by-little; quickly fast soon suddenly; secretly quietly hidden; often many; together both; again
anew once-more; almost nearly; only just alone merely
""".split(";")
"""Groups of words; those a line holds say nearly the same."""
