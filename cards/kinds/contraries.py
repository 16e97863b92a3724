"""Words that say the opposite of each other: plain data, English."""

from functools import lru_cache

from cards.kinds.alike import root_of
from cards.kinds.irregular import base_of
from cards.kinds.words import stem_of

_PAIRS = """
all/none always/never always/seldom often/seldom often/rarely more/less most/least many/few
every/no everything/nothing everybody/nobody everyone/nobody everyone/none anyone/everyone
anyone/everybody good/bad good/evil better/worse best/worst right/wrong true/false truth/lie
true/untrue love/hate love/hatred rich/poor wealth/poverty strong/weak strength/weakness
life/death live/die birth/death born/dead war/peace friend/enemy friend/foe virtue/vice
wise/foolish wisdom/folly happy/unhappy happy/miserable happiness/misery hope/despair joy/sorrow
light/dark light/darkness day/night first/last begin/end beginning/end before/after with/without
up/down high/low above/below rise/fall open/shut open/closed win/lose victory/defeat begin/finish
give/take buy/sell near/far early/late young/old new/old hot/cold fast/slow quick/slow easy/hard
easy/difficult great/small big/small large/small long/short heaven/hell praise/blame
praise/condemn reward/punish remember/forget accept/refuse accept/reject allow/forbid
permit/forbid let/forbid freedom/slavery free/slave free/bound master/servant master/slave
pride/humility proud/humble brave/cowardly courage/cowardice guilty/innocent saint/sinner
success/failure succeed/fail increase/decrease grow/shrink gain/loss gain/lose full/empty
same/different agree/refuse agree/disagree keep/break keep/lose build/destroy create/destroy
save/waste save/spend safe/dangerous public/private present/absent sooner/later inside/outside
north/south east/west left/right both/neither stay/leave stay/go remain/leave come/go arrive/leave
return/leave help/hinder protect/harm obey/disobey believe/doubt trust/distrust trust/suspect
reveal/hide reveal/conceal show/hide expose/conceal find/lose marry/jilt accept/decline join/leave
unite/separate together/apart alone/together alone/accompanied praise/ridicule respect/despise
admire/despise loyal/disloyal faithful/unfaithful honest/dishonest honest/deceitful kind/cruel
gentle/cruel gentle/harsh mercy/cruelty sane/mad reason/passion order/chaos healthy/ill
health/illness heal/wound cure/infect survive/die survive/perish kill/save rescue/abandon
save/destroy defend/attack attack/defend advance/retreat conquer/surrender surrender/resist
resist/yield obey/resist stop/continue stop/start start/stop encourage/discourage improve/worsen
strengthen/weaken simple/complex plenty/want enough/lacking abundance/scarcity confess/deny
admit/deny affirm/deny prove/disprove able/unable possible/impossible equal/unequal
superior/inferior majority/minority natural/artificial eternal/temporary permanent/temporary
passes/lasts awake/asleep wake/sleep laugh/weep cheerful/gloomy content/discontent
generous/miserly generous/selfish patience/impatience calm/angry silent/loud speak/silent
known/unknown forgive/avenge forgive/resent bless/curse lend/borrow owner/tenant employer/worker
lower/raise add/remove include/exclude depart/return forward/backward top/bottom ally/enemy
support/oppose for/against legal/illegal just/unjust justice/injustice certain/doubtful
ignorance/knowledge ignorant/learned beautiful/ugly pretty/plain clean/dirty pure/corrupt
pure/impure warm/cold wet/dry thick/thin wide/narrow deep/shallow heavy/light hard/soft
rough/smooth sweet/bitter whole/part only/also necessary/needless useful/useless
meaning/meaningless limited/unlimited cautious/reckless careful/careless prudent/rash wild/tame
civilised/savage obscure/famous married/single dead/living dead/alive living/lifeless wealthy/poor
wealth/debt found/lost won/lost honour/disgrace honour/shame fame/obscurity strengthens/weakens
hates/adores hope/fear comfort/distress blessing/curse gift/theft truth/falsehood true/mistaken
hero/villain hero/coward noble/base noble/ignoble generous/mean generous/stingy
tolerant/intolerant moral/immoral mortal/immortal rational/irrational reasonable/unreasonable
willing/unwilling voluntary/forced single/many one/many few/most crowded/empty near/distant
close/distant same/opposite follows/leads lead/follow teach/learn ask/answer attract/repel
join/quit hire/dismiss reward/penalty obedient/rebellious obedience/rebellion order/anarchy
unity/division cheap/expensive cheap/dear gain/sacrifice spare/kill heals/hurts cause/effect
increase/reduce grow/decline progress/decline rise/sink rise/decline float/sink open/secret
openly/secretly publicly/privately slowly/quickly rarely/frequently usually/rarely somebody/nobody
someone/nobody something/nothing anything/nothing ever/never still/never possible/hopeless
likely/unlikely lawful/unlawful faith/doubt belief/doubt belief/unbelief confidence/doubt
certainty/doubt modest/proud modesty/vanity humble/arrogant humility/arrogance simple/complicated
plain/ornate town/country rural/urban heaven/earth saved/lost saved/damned idle/busy
idle/industrious lazy/industrious sober/drunk temperate/drunken chaste/wanton faithful/false
loyal/false loyalty/treason constant/fickle constancy/inconstancy steady/unsteady firm/wavering
calm/furious peace/strife harmony/discord agreement/quarrel
""".split()
_PREFIXES = ("un", "in", "im", "il", "ir", "dis", "non", "mis")
_ROOT = 4
"""Letters of a word that a negative prefix may stand before."""


@lru_cache(maxsize=1)
def _table() -> dict[str, frozenset[str]]:
    found: dict[str, frozenset[str]] = {}
    for pair in _PAIRS:
        one, other = map(_root, pair.split("/"))
        found[one] = found.get(one, frozenset()) | {other}
        found[other] = found.get(other, frozenset()) | {one}
    return found


@lru_cache(maxsize=8192)
def contraries_of(root: str) -> frozenset[str]:
    """Return the roots that say the opposite of one, with and without a negative prefix."""
    prefixed = {prefix + root for prefix in _PREFIXES if len(root) >= _ROOT}
    bare = {
        root.removeprefix(prefix)
        for prefix in _PREFIXES
        if root.startswith(prefix) and len(root) - len(prefix) >= _ROOT
    }
    return _table().get(root, frozenset()) | prefixed | bare


def _root(word: str) -> str:
    return root_of(stem_of(base_of(word)))
