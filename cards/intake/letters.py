"""What a digest sent as a letter has around it: the head of a mail, a greeting, a farewell.

The words are common practice, no published source.
"""

import re
from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from cards.intake.blocks import Block, Shape
from cards.intake.traces import lines_apart
from cards.intake.wording import folded

_HEAD = re.compile(
    r"(?P<name>from|to|cc|bcc|date|sent|reply-to|subject|von|an|datum|gesendet|betreff|"
    r"de|à|date|envoyé|objet|para|fecha|enviado|asunto|assunto|da|a|data|inviato|oggetto|"
    r"van|aan|verzonden|onderwerp)\s?:\s*(?P<value>.*)",
    re.IGNORECASE,
)
_SUBJECTS = frozenset(folded("subject betreff objet asunto assunto oggetto onderwerp").split())
_LEAST = 2
"""Lines of the head of a mail, its subject one of them."""
_FORWARDED = re.compile(
    r"(?:(?:re|fwd?|aw|wg|tr|rv|res|enc|antw|doorst)\s?:\s*)+|\[[^\]]{1,40}\]\s*", re.IGNORECASE
)
_RULED = re.compile(
    r"[-–—_>\s]*(?:original message|forwarded message|ursprüngliche nachricht|"
    r"message d’origine|mensaje original)?[-–—_>\s]*",
    re.IGNORECASE,
)
_GREETING = re.compile(
    r"(?:dear|hello|hi|hallo|liebe[rs]?|sehr geehrte[rs]?|cher|chers|chère|chères|bonjour|"
    r"querid[oa]s?|estimad[oa]s?|hola|car[aoei]|gentile|ciao|car[oa]s|olá|beste|lieve)"
    r"\b[^.:]{0,60}[,!]",
    re.IGNORECASE,
)
_FAREWELLS = frozenset(
    folded(words)
    for words in (
        "best|best wishes|all best|all the best|with best wishes|kind regards|regards|best regards|"
        "warm regards|yours|yours ever|yours sincerely|yours truly|love|cheers|sincerely|thanks|"
        "until next time|viele grüße|liebe grüße|herzliche grüße|mit freundlichen grüßen|grüße|"
        "beste grüße|cordialement|bien à vous|bien cordialement|amitiés|bises|saludos|"
        "un saludo|un abrazo|cordialmente|saluti|cordiali saluti|un saluto|un abbraccio|a presto|"
        "abraços|um abraço|atenciosamente|groeten|met vriendelijke groet|hartelijke groeten|"
        "groetjes"
    ).split("|")
)
_MAX_NAME = 4
"""Words of a name under a farewell."""


@dataclass(slots=True)
class Letter:
    """The lines of a digest without the letter around them, and the lines of the letter."""

    lines: list[Block]
    left: list[Block] = field(default_factory=list)


def without_letter(lines: Sequence[Block]) -> Letter:
    """Take the head of a mail, a greeting and a farewell off a digest; its subject stays.

    A subject is what the digest is of: it stays as a line at the top.
    """
    letter = Letter(list(lines))
    mailed = _take_head(letter)
    if letter.lines and _GREETING.fullmatch(
        letter.lines[1 if mailed and len(letter.lines) > 1 else 0].text
    ):
        letter.left.append(letter.lines.pop(1 if mailed else 0))
    _take_farewell(letter)
    return letter


def _take_head(letter: Letter) -> bool:
    """Take the head of a mail off the first lines, and tell whether there was one."""
    heads: list[Block] = []
    subject: Block | None = None
    count = 0
    for block in letter.lines:
        parts = lines_apart(block)
        found = [_HEAD.fullmatch(part.text) for part in parts]
        if block.shape is Shape.ROW or not all(found):
            break
        count += 1
        for part, one in zip(parts, found, strict=True):
            if one is not None and folded(one["name"]) in _SUBJECTS:
                subject = replace(
                    part, shape=Shape.PARAGRAPH, text=_FORWARDED.sub("", one["value"]).strip()
                )
            else:
                heads.append(part)
    if subject is None or not subject.text or len(heads) + 1 < _LEAST:
        return False
    letter.left += heads
    letter.lines[:count] = [subject]
    return True


def _take_farewell(letter: Letter) -> None:
    """Take a farewell, and the name under it, off the last lines."""
    for back in range(1, min(4, len(letter.lines)) + 1):
        block = letter.lines[-back]
        if block.shape not in {Shape.PARAGRAPH, Shape.ITEM}:
            return
        parts = lines_apart(block)
        at = next((n for n, part in enumerate(parts) if _is_farewell(part.text)), None)
        if at is None and len(block.text.split()) > _MAX_NAME:
            return
        if at is None:
            continue
        after = [*parts[at + 1 :], *(letter.lines[-back + 1 :] if back > 1 else [])]
        if any(len(part.text.split()) > _MAX_NAME for part in after):
            return
        letter.left += [*parts[at:], *(letter.lines[-back + 1 :] if back > 1 else [])]
        kept = parts[:at]
        text = "\n".join(part.text for part in kept)
        origins = tuple(origin for part in kept for origin in part.origins)
        letter.lines[-back:] = [replace(block, text=text, origins=origins)] if kept else []
        return


def _is_farewell(text: str) -> bool:
    return text.rstrip().endswith((",", "!", ".")) and folded(text) in _FAREWELLS
