"""`/books/<id>`: one digest laid open, and the file it came from."""

from collections import Counter, defaultdict
from collections.abc import Iterable
from io import BytesIO
from uuid import UUID

from flask import Blueprint, Response, render_template, request, send_file

from cards.commitments import CheckIn, Outcome
from cards.items import KeptItem
from cards.kinds.base import KindName
from cards.parts import Part, PartKind
from service.pages.asked_of_it import asked_in_words
from service.pages.links import links_of
from service.pages.plot_line import plot_line
from service.use_cases.advice import advise
from service.use_cases.drafts import count_drafts
from service.use_cases.library import open_digest, open_original
from service.use_cases.links import MOST_WHY, linkable
from service.use_cases.mend_digest import unplaced
from service.use_cases.ports import Desk
from service.use_cases.price import price_of_kept, prices_in_words
from service.use_cases.versions import last_changes
from service.use_cases.writing_out import measure

_POINT = PartKind.POINT
_EDITS = ("digest", "annotations")
"""What the page is opened after that may have done something to the parts."""


def install(door: Blueprint, desk: Desk) -> None:
    """Add the open digest to the door."""

    @door.get("/books/<uuid:digest_id>")
    def book(digest_id: UUID) -> str:
        """Show a digest on facing pages."""
        opened = open_digest(desk, digest_id)
        digest = opened.kept.digest()
        commitments = opened.kept.held(PartKind.COMMITMENT)
        return render_template(
            "book.html",
            opened=opened,
            kept=opened.kept,
            digest=digest,
            advice=advise(desk, digest),
            cuts=measure(desk, digest).cuts,
            drafts=count_drafts(desk) if request.args.get("kept") == "draft" else 0,
            line=plot_line(opened.kept),
            prices=prices_in_words(price_of_kept(desk, digest_id)),
            items=[
                (asked_in_words(each.item), each) for each in sorted(opened.items, key=_by_kind)
            ],
            standings=Counter(each.standing for each in opened.items),
            points=[(point, links_of(opened.kept, point)) for point in opened.kept.held(_POINT)],
            books=linkable(desk, digest_id),
            link_id=desk.new_id(),
            most_why=MOST_WHY,
            unplaced=unplaced(opened.kept),
            tallies=_tallies(opened.check_ins, commitments),
            kept_now=request.args.get("kept"),
            changes=last_changes(desk, digest_id) if request.args.get("kept") in _EDITS else (),
        )

    @door.get("/books/<uuid:digest_id>/original")
    def original(digest_id: UUID) -> Response:
        """Hand back the file a digest came from, as it came."""
        file = open_original(desk, digest_id)
        return send_file(
            BytesIO(file.content),
            mimetype="application/octet-stream",
            as_attachment=True,
            download_name=file.name,
        )


def _by_kind(kept: KeptItem) -> tuple[int, int]:
    return tuple(KindName).index(kept.item.kind), kept.item.number


def _tallies(check_ins: Iterable[CheckIn], commitments: Iterable[Part]) -> list[Counter[Outcome]]:
    """Return the check-ins on each commitment counted by outcome."""
    counts: defaultdict[UUID, Counter[Outcome]] = defaultdict(Counter)
    for each in check_ins:
        counts[each.commitment_id][each.outcome] += 1
    return [counts[part.id] for part in commitments]
