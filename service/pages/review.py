"""`/review/<year>`: a year of what the books asked, looked back on."""

from io import BytesIO

from flask import Blueprint, Response, render_template, send_file

from cards.yearly import figures, standing
from service.use_cases.ports import Desk
from service.use_cases.preferences import show_reader
from service.use_cases.yearly_review import FIRST_YEAR, yearly_review


def install(door: Blueprint, desk: Desk) -> None:
    """Add the yearly review to the door."""

    @door.get("/review")
    def latest_review() -> str:
        """Show what the year that runs came to so far, in January the one before."""
        return _page(desk, None)

    @door.get("/review/<int:year>")
    def review(year: int) -> str:
        """Show what a year came to."""
        return _page(desk, year)

    @door.get("/review/<int:year>.pdf")
    def review_pdf(year: int) -> Response:
        """Hand out the review to print; it opens in the browser."""
        return send_file(
            BytesIO(desk.press.review(yearly_review(desk, year))),
            mimetype="application/pdf",
            download_name=f"review-{year}.pdf",
        )


def _page(desk: Desk, year: int | None) -> str:
    looked_at = yearly_review(desk, year)
    return render_template(
        "review.html",
        review=looked_at,
        figures=figures(looked_at),
        standing=standing,
        this_year=show_reader(desk).days.of(desk.now()).year,
        first_year=FIRST_YEAR,
    )
