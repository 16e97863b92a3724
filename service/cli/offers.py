"""What a commitment is met with in the terminal: the question, and the offers as keys."""

from dataclasses import replace
from datetime import date

import click
from rich.console import Console

from cards.commitments import Act, Offer, Outcome
from cards.commitments.telling import measure_in_words
from cards.errors import Invalid
from service.cli.screen import console, faint, prose
from service.use_cases.commitments import HeldCommitment
from service.use_cases.decide import Ruling, decide
from service.use_cases.ports import Desk

OUTCOMES = {each.value[0]: each for each in Outcome}
_KEYS = {
    Act.REWORD: ("w", "re(w)ord"),
    Act.HALVE: ("h", "h(alve)"),
    Act.MOVE: ("m", "m(ove)"),
    Act.PAUSE: ("p", "p(ause)"),
    Act.RELEASE: ("l", "re(l)ease"),
    Act.RENEW: ("n", "re(n)ew"),
    Act.CLOSE: ("c", "c(lose)"),
}


def ask_offer(desk: Desk, screen: Console, held: HeldCommitment, offer: Offer) -> None:
    """Ask the first useful question, and take the decision the reader chooses, if any."""
    prose(screen, offer.question.value)
    keys = {_KEYS[act][0]: act for act in offer.acts}
    if not keys:
        return
    if offer.halved is not None:
        prose(screen, faint(f"Halved it would be {measure_in_words(offer.halved)}."))
    while True:
        named = ", ".join(_KEYS[act][1] for act in offer.acts)
        act = keys.get(_typed(f"{named}, Enter = not now"))
        if act is None:
            return
        ruling = Ruling(desk.new_id(), held.id, act)
        try:
            decision = decide(desk, _completed(ruling))
        except Invalid as refused:
            prose(screen, refused.message)
            continue
        prose(screen, f"Kept: {decision.act} from {decision.day} on.")
        prose(screen, faint(f"catchword decide --take-back {decision.id} takes it back."))
        return


def _completed(ruling: Ruling) -> Ruling:
    """Return a decision with what its act needs, as it is typed.

    Raises:
        Invalid: a day is none.
    """
    match ruling.act:
        case Act.REWORD:
            prose(console(), faint("For instance: When …, I will …"))
            return replace(ruling, words=_line("How is it worded from now on"))
        case Act.RELEASE:
            return replace(ruling, words=_line("Why do you release it"))
        case Act.MOVE:
            return replace(ruling, until=_day(_line("To which day, as in 2026-05-01")))
        case Act.PAUSE:
            return replace(ruling, until=_day(_line("Until which day, Enter = until you say")))
        case Act.CLOSE:
            given = _typed("What came of it? k(ept), p(artly), m(issed)")
            return replace(ruling, outcome=OUTCOMES.get(given))
        case _:
            return ruling


def _typed(question: str) -> str:
    given = _line(question).casefold()
    return given[:1]


def _line(question: str) -> str:
    return str(click.prompt(question, default="", show_default=False)).strip()


def _day(written: str) -> date | None:
    if not written:
        return None
    try:
        return date.fromisoformat(written)
    except ValueError:
        raise Invalid(
            f"“{written[:40]}” is not a date. Give one as 2026-03-01.", where="until"
        ) from None
