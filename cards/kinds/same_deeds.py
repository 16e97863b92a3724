"""Everyday deeds by other words: "jot down", "list" and "write" are one act. Plain data, English.

Of commitments alone: in a theme they would not be the same. A line is a group of our own
choosing; there are more than any list holds, and the reader's grade decides.
"""

from functools import lru_cache

from cards.kinds.words import stem_of

_GROUPS = """
write jot note list record draft pen compose scribble log enter
tell say talk speak inform report mention confess admit
say state put express formulate restate phrase
ask question enquire inquire request
read look study peruse
eat lunch dine sup breakfast
walk stroll hike ramble march
run jog
take bring go accompany
visit see drop
call ring telephone phone
mend repair fix restore
give donate
pay spend buy
pay repay settle
read reread
write rewrite
visit revisit
think rethink reconsider
save lay put
thank acknowledge
praise commend compliment applaud
apologise apologize sorry
help assist aid support
wait hold delay pause
stop quit cease abstain refrain avoid
complain moan grumble whine
argue dispute quarrel contradict
listen hear attend
learn memorise memorize heart
practise practice rehearse exercise train
clean tidy sweep wash scrub
cook bake
sow grow dig weed
teach instruct explain
send post mail email message
answer reply respond
rise get wake
sleep bed retire
meditate reflect
think reflect ponder consider
plan schedule
count reckon tally
drink sip
swim bathe
draw sketch paint
begin start
finish complete end
mum mother mom mama
dad father papa
child kid
partner wife husband spouse
colleague workmate coworker
manager boss superior chief
friend mate pal
neighbour neighbor
people person folk
paper newspaper journal
book volume novel
phone telephone mobile
theatre play stage drama
canteen cafeteria
house home
meal dinner supper lunch
bed bedtime
alone lonely
loud aloud
wrong badly amiss
well good
angry cross annoyed furious
honest frank sincere truth
satisfaction content satisfied please agree
opinion view judgement judgment
plan scheme
""".split("\n")


@lru_cache(maxsize=1)
def _table() -> dict[str, frozenset[str]]:
    found: dict[str, set[str]] = {}
    for number, group in enumerate(filter(None, _GROUPS)):
        for word in group.split():
            found.setdefault(stem_of(word), set()).add(f"deed {number}")
    return {stem: frozenset(groups) for stem, groups in found.items()}


def deeds_of(word: str) -> frozenset[str]:
    """Return the groups a folded word stands in; two words that share one are one deed."""
    return _table().get(stem_of(word), frozenset())
