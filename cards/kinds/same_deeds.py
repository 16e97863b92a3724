"""Everyday deeds by other words: "jot down", "list" and "write" are one act. Plain data, English.

Of commitments alone: in a theme they would not be the same. A line is a group of our own
choosing; there are more than any list holds, and the reader's grade decides.
"""

from functools import lru_cache

from cards.kinds.words import stem_of

_GROUPS = """
write jot note list record draft pen compose scribble keep put log enter
tell say talk speak inform let report mention confess admit
say state put express formulate restate sum phrase explain repeat
ask question enquire inquire request
read look study go peruse
eat lunch dine sup breakfast have share
walk stroll go hike ramble march
run jog
take bring go lead accompany invite treat
visit call see drop go look meet
call ring telephone phone speak talk
mend repair fix restore
give donate hand pass offer lend
pay spend buy
save lay put set keep
thank acknowledge praise
praise commend compliment applaud thank
apologise apologize sorry beg forgive
help assist aid support lend
wait hold delay pause leave let
stop quit cease abstain refrain avoid give drop
complain moan grumble whine
argue dispute quarrel contradict
listen hear attend
learn memorise memorize study recite heart
practise practice rehearse exercise play train
clean tidy clear sweep wash scrub
cook bake prepare make
plant sow grow garden dig weed work
teach show instruct explain
send write post mail email message
answer reply respond write
rise get wake
sleep bed rest retire
sit rest stay
pray meditate reflect
think reflect ponder consider
plan schedule prepare
count reckon add tally
show let reveal
drink have sip
swim bathe dip
sing hum
draw sketch paint
walk pace step
begin start
finish complete end
mum mother mom mama
dad father papa
child kid boy girl son daughter
partner wife husband spouse
colleague workmate coworker work office
manager boss superior chief
friend mate pal
neighbour neighbor
people person folk man other stranger
paper newspaper daily journal
book volume novel
letter note card
phone telephone mobile screen
theatre play stage drama
canteen cafeteria
house home household
meal dinner supper lunch breakfast
dinner supper
evening night
bed bedtime sleep
alone lonely single self themselves own
loud aloud
wrong badly ill bad amiss
well good right
angry cross annoyed furious
honest frank sincere truth real open
satisfaction content satisfied agree happy please
opinion view judgement judgment position
plan project scheme
cause reason
""".split("\n")


@lru_cache(maxsize=1)
def _table() -> dict[str, frozenset[str]]:
    found: dict[str, set[str]] = {}
    for number, group in enumerate(_GROUPS):
        for word in group.split():
            found.setdefault(stem_of(word), set()).add(f"deed {number}")
    return {stem: frozenset(groups) for stem, groups in found.items()}


def deeds_of(word: str) -> frozenset[str]:
    """Return the groups a folded word stands in; two words that share one are one deed."""
    return _table().get(stem_of(word), frozenset())
