"""`/review/<year>`: a year of what the books asked, looked back on."""

from http import HTTPStatus
from io import BytesIO

from flask import Blueprint, Response, redirect, render_template, send_file, url_for
from flask.typing import ResponseReturnValue

from cards.yearly import figures, standing
from service.use_cases.ports import Desk
from service.use_cases.preferences import show_reader
from service.use_cases.yearly_review import FIRST_YEAR, yearly_review


def install(door: Blueprint, desk: Desk) -> None:
    """Add the yearly review to the door."""

    @door.get("/review")
    def latest_review() -> ResponseReturnValue:
        """Lead to the review of the year that runs, in January of the one before."""
        year = yearly_review(desk).year
        return redirect(url_for("pages.review", year=year), HTTPStatus.SEE_OTHER)

    @door.get("/review/<int:year>")
    def review(year: int) -> str:
        """Show what a year came to."""
        looked_at = yearly_review(desk, year)
        return render_template(
            "review.html",
            review=looked_at,
            figures=figures(looked_at),
            standing=standing,
            this_year=show_reader(desk).days.of(desk.now()).year,
            first_year=FIRST_YEAR,
        )

    @door.get("/review/<int:year>.pdf")
    def review_pdf(year: int) -> Response:
        """Hand out the review to print; it opens in the browser."""
        return send_file(
            BytesIO(desk.press.review(yearly_review(desk, year))),
            mimetype="application/pdf",
            download_name=f"review-{year}.pdf",
        )
