"""`/books/<id>`: one digest laid open, and the file it came from."""

from collections import Counter, defaultdict
from io import BytesIO
from uuid import UUID

from flask import Blueprint, Response, render_template, request, send_file

from cards.cautions import caution
from cards.commitments import CheckIn, Outcome
from cards.items import KeptItem
from cards.kinds.base import KindName
from cards.parts import PartKind
from service.pages.plot_line import plot_line
from service.pages.wording import listed
from service.use_cases.library import open_digest, open_original
from service.use_cases.mend_digest import unplaced
from service.use_cases.ports import Desk


def install(door: Blueprint, desk: Desk) -> None:
    """Add the open digest to the door."""

    @door.get("/books/<uuid:digest_id>")
    def book(digest_id: UUID) -> str:
        """Show a digest on facing pages."""
        opened = open_digest(desk, digest_id)
        commitments = opened.kept.held(PartKind.COMMITMENT)
        return render_template(
            "book.html",
            opened=opened,
            kept=opened.kept,
            digest=opened.kept.digest(),
            line=plot_line(opened.kept),
            items=sorted(opened.items, key=_by_kind),
            unplaced=unplaced(opened.kept),
            cautions=[caution(part.text) for part in commitments],
            tallies=[tallies(opened.check_ins)[part.id] for part in commitments],
            kept_now=request.args.get("kept"),
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


def tallies(check_ins: tuple[CheckIn, ...]) -> defaultdict[UUID, str]:
    """Return for each commitment how often it was kept, partly kept and missed, in words."""
    counts: defaultdict[UUID, Counter[Outcome]] = defaultdict(Counter)
    for each in check_ins:
        counts[each.commitment_id][each.outcome] += 1
    told: defaultdict[UUID, str] = defaultdict(str)
    for commitment_id, count in counts.items():
        told[commitment_id] = listed(
            f"{outcome} {_times(count[outcome])}" for outcome in Outcome if count[outcome]
        )
    return told


def _times(number: int) -> str:
    return {1: "once", 2: "twice"}.get(number, f"{number} times")
