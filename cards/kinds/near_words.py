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
roam drift stray; shipwreck wreck sink; desert wilderness; village town hamlet; castle palace
mansion; farm land field; garden orchard; church religion faith; devil satan evil; angel heaven;
hell damn; pray prayer worship; sin evil vice wrong; virtue good moral; monk nun convent
monastery; prophet seer oracle; ghost spirit phantom spectre apparition; witch magic sorcery; hope
expect wish; coward timid afraid; sorrow grief sad mourn; kind gentle good; wise wisdom prudent;
fool foolish silly; clever cunning smart bright; learn study education; teach instruct educate;
book volume work; write author compose; poet poem verse; paint painter picture; music song sing;
play theatre stage actor; reason rational logic; society people world community; state government
nation; people public citizen crowd; majority most many mass; individual person one single; class
rank order station; rich noble aristocrat upper; worker labour workman; trade business commerce
sell; money coin cash gold; price cost worth value; buy purchase pay; own possess have property;
share divide part; save rescue spare deliver; build make create; change alter transform become;
grow increase develop; fall decline decay sink; remain stay keep; change turn become; different
other unlike; true real genuine; right correct proper; cause reason why because; means way method;
part piece share; whole all entire; idea thought notion concept; judge judgement verdict opinion;
argue claim hold maintain assert; deny refute dispute; describe tell portray depict; example case
instance; rule principle law maxim; duty obligation ought must; need necessary require; fail
failure unable; forbid ban prohibit prevent; urge press persuade; threaten threat menace; whisper
murmur; notice observe perceive; know knowledge aware; remember memory recall; believe think
faith; suffer pain endure bear; rest peace sleep; wear dress clothes; carry bear bring; throw cast
hurl toss; hold grip keep; jump leap; run rush; ride horse; hunt chase track; trap snare catch;
disguise mask pretend; praise admire; quarrel argue fall-out; fight duel combat; reconcile peace
make-up
""".split(";")
"""Groups of words; those a line holds say nearly the same."""
