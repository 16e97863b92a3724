"""Words that say nearly the same in what people write of books: plain data, English.

Groups are parted by semicolons; a word may stand in several. Our own choosing: there are more
than any list holds, and the reader corrects what it misses.
"""

GROUPS = """
abandon desert forsake leave quit; abandon renounce surrender give-up relinquish forgo sacrifice;
able can capable fit; abolish end remove repeal; abroad overseas foreign; absurd foolish
ridiculous silly senseless stupid nonsense; accept receive embrace welcome; accident chance
fortune luck unexpected fate fortuitous; accident mishap fall crash; account record ledger tally
reckon count; accuse blame charge denounce condemn indict reproach; achieve accomplish attain
reach succeed fulfil; act deed action do; act behave conduct behaviour; add increase join; admire
esteem respect revere honour; admit confess own acknowledge avow concede; adult grown grown-up;
adventure exploit quest escapade; advice counsel advise recommend suggestion guidance urge; advise
urge bid tell counsel; affair liaison romance adultery; afraid fear frighten terror terrified
scared dread panic fright timid horror terrify; age era epoch period; age old elderly aged; agree
consent assent concur accept accord; aid help assist support succour; alive live living; alone
solitary lonely single only isolated lone solitude loneliness sole; alter change transform modify
vary convert; always forever constantly ever eternal eternally everlasting perpetual; ambition
aspiration longing aim hope dream ambitious aspire; ancestor forebear forefather forbear
progenitor; angel seraph; anger rage fury wrath angry furious indignation cross enraged mad;
animal beast creature brute; animal creature being; announce declare proclaim tell; answer reply
response respond retort; appear seem look; appear emerge arrive turn-up show; appearance look
semblance show; appetite desire passion lust craving; approve praise commend applaud; argue
dispute debate quarrel contend contest challenge discuss argument; aristocrat noble lord gentry
nobility nobleman aristocracy duke count; arms weapon; army soldier troop military regiment force;
arrest seize capture imprison jail catch; arrive come reach; arrogance pride vanity conceit
haughty proud vain conceited arrogant pompous; art artist artistic craft; ashamed shame disgrace
humiliate embarrassed humiliation guilt; ashamed regret remorse repent contrite sorry repentance;
ask question inquire query interrogate; ask beg request demand implore plead; assert claim
maintain insist declare argue contend affirm say; attack assault strike assail storm raid; attempt
try endeavour effort strive; attract lure tempt entice charm; aunt uncle relative; author writer
novelist poet narrator; authority power rule command government; avoid shun evade escape elude;
avenge revenge vengeance retaliate vengeful retribution; awake wake arouse; baby infant child
newborn; back behind return; bad evil wicked wrong ill vile; ban forbid prohibit bar outlaw
disallow; banish exile expel deport drive-out outcast expulsion; bank financier banker; bankrupt
ruin insolvent broke; bare naked nude; bargain deal pact contract agreement; basic essential
fundamental chief main; battle fight combat fighting war fray clash; beach shore coast sand
seaside; bear endure stand suffer tolerate; beat thrash hit strike whip flog blow batter; beat
defeat conquer vanquish overcome; beautiful lovely handsome pretty fair beauty; because since
cause reason; become turn grow get; begin start commence beginning origin outset onset first;
behind after; belief faith creed conviction religion doctrine; belief opinion view judgement
thought conviction idea; believe trust think credit; belong own; beloved dear darling cherished;
beneath under below; benefit advantage profit gain good useful helpful; betray deceive treachery
traitor treason inform; better improve improvement reform; big large great huge vast enormous
giant immense; bind tie chain fetter; birth born bear origin; bitter resentful sour; blame fault;
bless sanctify; blind sightless unseeing; blood bleed; boast brag bluster boastful swagger; boat
ship vessel craft raft; body corpse remains; bold brave courage daring valiant fearless hero
heroic bravery courageous; bond tie link; book volume novel tome; bored boredom tedium dull ennui
tedious; borrow lend loan lent debt; boss employer master owner manufacturer; boss master leader
chief ruler; boundary limit border; boy lad youth son; break shatter smash crack broken; breed
raise rear bring-up; bright clever brilliant intelligent genius smart witty; bring carry fetch
take convey; brother sibling kin kinsman; brutal cruel harsh savage fierce merciless; build
construct erect make put-up raise; burden load weight; burn fire flame blaze; bury grave funeral
burial tomb; business trade commerce commercial; busy occupied; buy purchase acquire; cage prison;
calamity disaster catastrophe misfortune ruin tragedy; call name summon; calm peace tranquil
serene quiet composed peaceful tranquillity serenity; camp settlement; capital money funds;
captain commander; captive prisoner; care tend nurse look-after; care worry concern; careful
cautious prudent wary caution prudence; carry bear; cash money coin; castle fortress palace; catch
capture seize trap; cause reason ground why; cause produce bring-about lead make; cease stop end
halt quit; celebrate feast festival; certain sure certainty; chance opportunity; change alter
differ vary; character nature personality temperament; charity alms generosity; charm attract
spell; chase pursue hunt follow pursuit; cheap inexpensive; cheat deceive trick defraud swindle
dupe fraud; cheerful merry glad jolly gay; child kid son daughter offspring children young; choose
pick select elect choice decide prefer; church religion religious parish; citizen people subject;
city town state; class rank order estate caste; clear plain obvious evident; clergyman priest
parson vicar curate minister preacher; clever cunning shrewd sly crafty witty; climb ascend rise
mount; cling hold; close near; close shut; clothes dress garment clothing attire; coffin casket;
coins dollars cents money; cold chill freeze ice icy; collapse fall crumble break-down; colleague
coworker workmate; collect gather accumulate amass hoard assemble; come arrive return; comfort
console solace; command order govern rule control master; commit perform; common ordinary everyday
usual plain normal; common shared mutual joint; community society village; companion friend mate
comrade fellow; company companionship friend; compassion mercy pity sympathy kindness kind charity
compassionate merciful; compel force make oblige coerce constrain press; complain moan grumble
whine complaint protest; complete whole entire full total; conceal hide secret disguise mask;
conclude end finish; condition state; conduct lead behave; confidence trust; confident bold sure
boldly; conform obey conformist conformity comply; confuse puzzle bewilder baffle; conquer defeat
win overcome subdue; conscience guilt morality; conscious aware; consequence result effect
outcome; consider think reflect ponder regard; conspire plot scheme league conspiracy; constancy
faithful loyal loyalty fidelity constant steadfast steady steadiness devoted devotion; content
happy satisfied pleased; continue go-on persist last remain endure; control govern rule power
command master; cook chef; correct right true; corrupt rotten decay deprave; cost price expense;
cottage hut cabin cottager hovel; country nation land state; country rural countryside village
pastoral; court woo flirt courtship; cover hide; coward cowardly cowardice craven; crazy mad
insane lunatic madness madman madwoman insanity; create make creation creator maker form; crew
sailor seaman mariner; crime offence sin murder; criminal convict thief; crisis emergency;
criticise blame censure; crowd mob throng rabble multitude rioters; cruel brutal harsh unkind
cruelty severe horrible; cry weep sob tear; cultivate tend till dig garden grow; cure heal remedy;
curious inquisitive curiosity; curse damn; custom convention tradition habit usage; cut slash
chop; daily everyday; damage harm hurt injure injury; dance ball assembly; danger peril risk
threat dangerous hazard; dare venture; dark gloom night; dead lifeless deceased late; deadly fatal
mortal; death die dead perish decease expire fatal; debt owe loan; decay decline degenerate rot
ruin worsen deteriorate; deceive trick deceit deception lie fool mislead cheat trickery; decide
determine resolve choose decision; declare announce state; deep profound; defeat loss lose; defend
protect shield guard; delay postpone; delight joy pleasure enjoy; demand ask require claim;
democracy people; deny refuse refute; depend rely; depressed sad gloom melancholy despair; descend
fall down; descent ancestry origin; deserve merit worth; desire want wish long longing; despair
hopeless; despise scorn disdain contempt look-down; despot tyrant dictator despotism tyranny
oppression; destiny fate fortune doom; destroy ruin wreck demolish annihilate destruction; destroy
kill; detective examiner investigator police inspector; develop grow evolve; devil demon satan;
devote dedicate; devout pious religious godly; dictate command; difference variation different;
different other various another; dignity self-respect honour; dim dark; dinner supper meal dine
eat feast; diplomat ambassador; dirty filthy; disaster ruin wreck; disappear vanish; discipline
order; discover find learn reveal detect; disease illness sick ill fever malady plague ailment
sickness consumption tuberculosis; disgrace shame dishonour scandal; disgust horror repulsion
revulsion horrified loathing; dismiss fire sack; disobey defy rebel disobedience against; display
show exhibit; distant far remote; distress trouble; distribute share; divide split separate;
divine god holy sacred godly; doctor physician surgeon; dogma doctrine formula creed; donate give;
doubt question suspicion suspect uncertain; drag pull draw; drama play; dream vision; dress
clothe; drink drunk drunkard alcohol wine; drive force push; dry arid; dry dull; dusk evening;
duty obligation task; dwarf small; dwell live inhabit reside lodge; eager keen zealous; earn gain
make get work; earth world ground soil land; earthquake quake tremor; ease comfort; easy simple;
eat feed dine; economy thrift; educate teach school upbringing education; effort labour; elope
run-away elopement; emotion feeling passion sentiment; emperor king ruler; empire realm; employee
worker hand workman servant labourer; empty hollow vain void; encounter meet; encourage urge; end
finish close last conclusion final finally stop ending; endless infinite eternal; enemy foe
opponent rival adversary; energy vigour strength; enjoy love like; enough suffice sufficient;
enrich wealth; enslave slave; enter come go; entertain amuse; enthusiasm zeal; envy jealous
jealousy covet; equal same alike equality; era time; escape flee run-away fly flight run desert;
establish found; estate land property; eternal immortal; ethics moral; evening night; event happen
occur incident; every all each everything everyone everybody; evidence proof; evil sin vice
wickedness; evolve descend; exact precise; example instance; excellent fine superb; exceptional
extraordinary special great; exchange trade swap; excited thrill; excuse pardon; exile banishment;
exist live life being existence; expect await hope; expense spend; experience feel undergo;
experience experiment; experiment try test trial; explain account clarify; explore discover;
expose reveal uncover; express say; extinct die; extreme excessive; eye look; fact truth; factory
mill plant works; fail failure; faint swoon; faith believe; faithless unfaithful; fake false sham;
fall drop tumble sink; false wrong untrue mistaken lie; fame glory renown reputation famous;
family relative household kin; famine hunger starvation; famous celebrated well-known; fancy
imagination; farm land; farmer peasant; fascinate charm; fashion style; fast quick rapid swift
speed; fate lot; father parent dad papa; fault flaw error; favour prefer; feast banquet; feed
nourish keep; feel sense; female woman; fence wall; fight struggle war; figure number statistic;
finger hand; finish complete; firm steady; fit suitable; flatter flattery flatterer praise;
fleeting pass transient brief; flesh body; flexible bend; flirt tease; float swim; flood deluge;
flow stream; folly foolish; food bread meal eat; fool idiot; foot leg; footprint track; force
power; foreign strange; foresee predict; forest wood; forget forgotten; forgive pardon mercy
forgiveness; form shape; former past; formula rule; fortune wealth money luck; fossil bone; foul
dirty; free freedom liberty release liberate independence independent; free loose; frequent often;
friend companion ally befriend friendship; fruit harvest; fun amusement; funny comic; furnish
provide; furniture possession; future tomorrow; gain win profit; gamble bet; game play; gang band;
garden plot; general commander; generation age; generous giving noble; gentle kind mild tender
meek; gentleman lord; genuine real; ghost spirit phantom spectre; gift present give; girl maid
woman lass daughter young; gloomy sad; glorious great; go travel move leave; goal aim purpose end;
god lord almighty divine; gold treasure; goodness virtue; gossip rumour slander talk tattle
scandal; govern rule reign; governess teacher tutor; government rule state; grace charm; gradual
slow step; grand great; grant give; grateful thank gratitude thankful; grave serious; greed
avarice greedy miserly; greet welcome; grief sorrow mourn grieve bereavement mourning loss; group
class; grow increase; guard watch; guardian protector; guess suppose; guest visitor; guide lead;
guilt blame; gun shoot; handsome attractive; hang gallows; happen befall occur; happy joy glad
joyful happiness content delight bliss; hard difficult tough; hardship suffering; haste hurry; hat
cap; hate hatred loathe detest hostile dislike abhor; haunt ghost; head mind; headstrong stubborn
obstinate wilful; healthy well health; hear listen; heart soul; heaven paradise sky; hell inferno;
hesitate waver; high lofty; hint suggest; hire employ; historian history; hole pit; holiday
vacation; honest truth sincere frank candid truthful honesty; hope wish; horse steed; hostile
enemy; hot heat; hotel inn; house home hall mansion building dwelling; howl cry; humble modest
meek humility lowly; humbled humiliate brought-low; humour wit; hunger starve famine; hungry
starving; hunt chase whaling; hurry rush; hurt wound injure; husband spouse man; hypocrite
hypocrisy pretend; ice frozen arctic pole; idea notion; ideal perfect; identity self; ignorance
unknowing; ignore neglect; illegal unlawful; illusion delusion; image picture; imagine fancy;
imitate copy borrowed mimic imitation; immoral wicked; impact effect; impatience hasty; important
matter significant main; impossible cannot; impress strike; impulse instinct; inactive idle;
include contain; income wage; independent self-reliant; indifferent careless; individual person
single; industry factory; inequality unequal; infect disease; influence effect; inform tell;
inherit inheritance legacy heir bequest will; injury blow; injustice unfair wrong; inner inmost
private; innocent blameless pure guiltless honest; inquiry search; insist demand; inspect examine;
inspire move; instinct nature; institution establishment; insult offend slight affront snub;
intellect mind; intend mean plan; interest concern; interest benefit; interfere meddle restrain
intervene; interrupt break; intimate close; introduce present; invade attack; invent create;
invest money; invisible unseen; invite ask; inward inner; iron steel; irony mock; island isle;
jail prison gaol dungeon; jest joke; jewel gem; journey voyage travel trip trek tour expedition
passage sail; judge judgement opinion; jungle forest; just fair justice justly fairly righteous;
keep hold retain preserve; key essential; kill murder slay assassinate slaughter execute killer
murderer; kind gentle nice; kind sort type species; king monarch ruler prince queen throne;
kingdom realm; kiss embrace; knight warrior; know understand learn; knowledge wisdom learning;
lady woman; lament mourn; language speech; late delay; law legal rule statute; lawyer attorney
solicitor barrister; lazy idle sloth; leader head; learn study; leave depart go go-away; lecture
speech; legend myth tale; leisure time; lesson moral teach; let allow permit; letter note message;
library book; lie deceive untruth falsehood; light bright; likely probable; likewise same; limit
restrain restrict bound; line queue; link join; liquor drink; literature book; little small few;
live alive survive; living life; local near; lock shut; logic reason; long lengthy drawn-out; lord
master; lose loss lost; love affection adore passion dear fond beloved; lover sweetheart beau; low
humble; luxury rich; machine engine; magic spell; maid servant; majority most many; male man; man
men person human; manage run; mankind people; manner way; mark sign; market trade; marriage wed
marry wedding wife husband married match bride matrimony; marvel wonder; mass crowd; matter thing;
mature grow; meaning sense; measure count; mechanical machine; medicine medical; medieval old;
melt thaw; memory remember; menace threat; mend repair fix; merchant trader dealer; merge join;
merry happy; message word; method way; middle centre; might power; mind reason; mind thought;
miracle wonder; mirror reflect; miser greedy; miserable wretched unhappy misery; miss lose;
mission task; mistake error misjudge misunderstand wrong; mistress lover kept-woman; mix blend;
mock ridicule satire laugh jeer deride; moderate temperate moderation; modern new; moment now;
money wealth riches cash fortune dollars funds; moneylender usurer pawnbroker; monk friar; monster
monstrous fiend; mood temper; moral ethical; mother mum mama parent mom; motive reason; mountain
hill peak; move stir; music song; mutiny revolt; mystery secret; naive innocent; name title;
narrow small; nation people; native local; nature natural; naughty bad; navy fleet; neat tidy;
necessary need essential; need require want; neglect abandon; neighbour near; nephew niece; new
fresh novel; news report; noise sound; nothing none; obedient obey; object aim; object protest
oppose; obscure unnoticed hidden unknown; observe see watch; obsession fixation mania obsessed
monomania; obstacle hindrance; obtain get; occasion time; ocean sea; odd strange; office position;
officer captain; old ancient aged elder; open free; oppress tyranny; oppressed slave; organise
arrange; origin source; orphan parentless; outlaw bandit; outrage offend; outside beyond; outward
outer; overlook ignore; overseer boss; page sheet; pain suffering hurt agony torment; painter
artist; pair two couple both; pale white; paper newspaper journal; park garden; parliament senate
congress; part portion share; party feast; party side; pass fleeting go; past before yesterday;
past history; patience patient; patient client; patriot country; pause stop; pay wage; peasant
serf; peculiar strange; penance repent; pension income; people person folk human man everybody;
perceive see; permanent last; perplex puzzle; persecute oppress; person man individual; persuade
convince talk-into; pet animal; philosopher thinker sage; philosophy wisdom; phrase word; pig
swine; pioneer first; pirate buccaneer; place spot; plain simple; plan scheme design; plant grow
sow; play theatre; please delight; plot plan; plunder rob; poem verse poetry; poison venom;
policeman constable; policy plan; polite courtesy courteous; politics government; pond lake; poor
poverty destitute needy penniless moneyless impoverished; popular public; port harbour; position
rank; possess own possession; possession thing property goods stuff; possible can; post job;
powerful strong mighty; practical useful; practice use; praise commend laud; pray prayer; preach
sermon; precious valuable; preference choice; pregnant expecting; prejudice bias; prepare ready;
present now; pretend feign sham; prevent stop hinder; previous former; prey victim; primitive
savage; principle rule; print publish; problem trouble; profession work; progress advance; promise
vow oath swear pledge; promote raise; proof prove; proper right; prophet seer; proposal propose
offer; prosper thrive; prostitute whore harlot; protect shield save; prove show demonstrate;
provide supply; province provincial; provoke anger; prudent wise; psychology mind; public open;
punish punishment penalty chastise; pupil student scholar disciple; pure clean; push press; puzzle
mystery; quality virtue; quote cite; race people; radical extreme; raise lift; random chance; rare
unusual; rash hasty; rational reason; raw crude; read book; ready prepared; real true reality
actual; realise understand learn discover; rebel revolt rebellion revolution uprising riot; recall
remember; receive get; reckless rash; recognise know; reconcile unite; record write; recover heal;
redeem save; redemption salvation; reduce lessen; refined polite; refuge shelter; refuse reject
turn-down deny decline; regain recover; regard see; regime rule; rejoin return; relation kin;
relationship bond; relief ease; reluctant unwilling; rely trust; remain stay; remark say; remind
recall; remorse guilt; remove take; rent let hire; repeat again; replace substitute; report tell;
represent show; reprimand scold; reputation name; resent bitter; resemble like; resign quit;
resist oppose withstand; respectable decent; responsible duty; rest peace; restore return;
restrain curb interfere coerce; retire withdraw; retreat withdraw; return come-back back come;
reveal show disclose unveil expose; reverse opposite; reward pay prize; rich wealthy wealth
affluent riches prosperous; riddle puzzle; rifle gun; right true just; right-hand law; rigid
stiff; riot mob; river stream; road way path; rob steal thief robbery theft; robust strong; rock
stone pebble; role part; romance love; room chamber; root origin; rough harsh; round circle; route
way; royal king; rude coarse impolite; sacrifice offer; sad unhappy sorrow; safe secure safety;
saint holy; salary wage; sale sell; salvation save; sane reason; satisfaction content; satisfy
please; savage wild; save rescue deliver survive; savings money; scare frighten; scene place;
scholar learned; school college; science knowledge; scold chide; scream cry; scripture bible;
search seek look quest; season spring; seat chair; second two; secret hidden secretly; section
part; seduce tempt; see watch look view notice behold; seize grab; self own; selfish self-interest
egoist selfishness; sell trade; send dispatch; sense reason; sensible wise; separate apart split;
serf slave; serve work; settle live; severe strict; shadow dark; shallow superficial; sharp keen;
shine bright; shock stun; shoot kill; shop store; short brief; shout cry; shy timid; signal sign;
silence quiet mute silent suppress; silver money; sing song; sink founder go-down drown; sister
sibling; situation place; skill art; slave slavery bondage servitude enslaved; sleep slumber;
slight small; small little tiny petty minor short; smell odour; smile laugh; smoky industrial;
snare trap; snob snobbish; sober temperate; social society; society community world public; soft
gentle; soldier warrior; solid firm; solution answer; soon early; soul spirit; space room; speak
talk say tell utter speech; special particular; spend waste use; spite malice; split break; spoil
ruin; spread extend; spring source; spy watch; squander waste; square fair; stable steady; stage
step; stain blot; stare look; statesman politician; station place; status rank; steep sheer; step
stair; stern strict; stick staff; still calm; stingy mean; store keep; storm tempest; story tale;
stranger foreigner; stray wander; strength power; stress strain; strict harsh; strike walkout;
strip bare; strive struggle; structure form; style manner; subject matter; submit yield; succeed
achieve success; succeed follow; suck drain; sudden abrupt; suggest propose; suicide kill; suitor
lover; summit top; sun day; superior better; supernatural magic; superstition belief; suppose
think; supreme highest; surface outside; surprise astonish amaze; surrender yield; surround
circle; survive live outlive survivor last outlast; suspect distrust suspicion; suspend hang;
sustain keep; swallow eat; sweet kind; sword blade; symbol sign; system order; tailor clothes;
talent gift; tame mild; task job work duty; taste liking; tax duty; teach instruct lesson teacher
train; tear rip; tease mock; temper anger; temple church; temporary brief; tempt temptation lure;
term condition; terrible awful; text book; theory idea; thief robber; thin lean; thrift save;
throne crown; throw cast; tight close; time hour; tire exhaust; together jointly; tool axe;
torment torture; torture pain; touch feel; trace track; tramp wander; treat handle; treaty pact;
tremble shake; tribe people; trifle small; trivial small; ugly plain hideous; ultimate last;
understand grasp comprehend see know realise; undertake begin; unfair unjust; ungrateful
thankless; uniform same; unique single; unite join bring-together union reunite; universal
everybody; universal world; universe world; university school; unlike different; unmarried single;
upper high; uproar noise; upset disturb; urge press; use useful; useless vain; vague dim; value
worth prize treasure; variety change; victory win triumph; view sight; vigorous strong; village
town; villain rogue; violence force; violent fierce; virtue good; virtuous good; visit call; voice
speech; vulgar common; wait await; walk stroll ramble; wall barrier; wander roam; want lack
poverty; war warfare battle; warm heat; warn caution; water sea; weak feeble frail unable; weary
tired worn; weather storm; week days; welfare good; west western; whale leviathan; wheel turn;
whisper speak; whole all; wide broad; widow widower widowed; wife spouse woman; will wish; wind
breeze; winter cold; wisdom prudence; wise sage; wit clever; witch sorceress; witness see; wood
tree; word speech; work job labour toil employment; worry fear; worse bad; worship adore; wreck
ruin shipwreck; write compose; yard court; yield give; young youth
""".split(";")
"""Groups of words; those a group holds say nearly the same."""
