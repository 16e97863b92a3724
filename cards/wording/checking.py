"""The wording check: concrete, specific, measurable; the measure; the cue; the advice."""

from datetime import date

from cards.cautions import caution
from cards.commitments.measure import Measure
from cards.wording.advising import NOT_CHECKED, advice_on_wording
from cards.wording.concreteness import act_of
from cards.wording.cues import find_cue
from cards.wording.languages import other_language
from cards.wording.line import MAX_READ
from cards.wording.measuring import measure_of
from cards.wording.rewording import reworded
from cards.wording.specificity import is_specific
from cards.wording.verdict import Wording


def measured(text: str, on: date) -> Measure | None:
    """Return what a commitment asks, as `wording_of` reads it, and no more than that.

    Args:
        text: the commitment.
        on: the day it is made.
    """
    if other_language(text[:MAX_READ]) is not None:
        return None
    return measure_of(text, on, find_cue(text), act=act_of(text, measured=True).concrete)


def wording_of(text: str, on: date) -> Wording:
    """Check how a commitment is worded.

    English is checked; of another language the advice says that it is not, and nothing is
    judged. Of a very long text the first 2,000 characters are read. The caution is that of
    the whole text, always.

    Args:
        text: the commitment.
        on: the day it is made, which "tomorrow" and "by Friday" are relative to: the
            reader's day, or in a digest the day the book was finished.
    """
    careful = caution(text)
    language = other_language(text[:MAX_READ])
    if language is not None:
        unchecked = NOT_CHECKED.format(language=language)
        advice = (unchecked, careful) if careful else (unchecked,)
        return Wording(None, None, None, None, None, advice, caution=careful)
    cue = find_cue(text)
    seen = act_of(text, measured=True).concrete
    measure = measure_of(text, on, cue, act=seen)
    measured = measure is not None
    act = act_of(text, measured=measured)
    lasting = measure is not None and measure.minutes is not None
    specific = is_specific(text, cue, minutes=lasting, concrete=act.concrete)
    rewording = reworded(text, cue, specific=specific, measured=measured)
    said = advice_on_wording(text, act, specific=specific, measured=measured, rewording=rewording)
    if careful:
        said.append(careful)
    return Wording(
        concrete=act.concrete,
        specific=specific,
        measurable=measured,
        measure=measure,
        cue=None if cue is None else cue.words,
        advice=tuple(said),
        rewording=rewording,
        caution=careful,
    )
