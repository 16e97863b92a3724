"""The figures of retention as pictures: what each shows, in words, in figures, to be drawn."""

from collections.abc import Callable, Mapping
from functools import partial

from cards.parts import Care
from service.use_cases.picture_records import Picture
from service.use_cases.retaining import Retained
from service.use_cases.retention_pictures.blanks import blanks
from service.use_cases.retention_pictures.coming import coming
from service.use_cases.retention_pictures.foresight import calibration
from service.use_cases.retention_pictures.forgetting import forgetting
from service.use_cases.retention_pictures.grades import grades
from service.use_cases.retention_pictures.known import known
from service.use_cases.retention_pictures.promises import promises
from service.use_cases.retention_pictures.shares import by_age, by_book, by_kind, by_month
from service.use_cases.retention_pictures.targets import of_care, whole

__all__ = ["CAME_BACK", "FORESEEN", "PICTURES", "PLANNED"]

CAME_BACK: Mapping[str, Callable[[Retained], Picture]] = {
    "by-book": by_book,
    "by-kind": by_kind,
    "by-age": by_age,
    "by-month": by_month,
    "known": known,
    "coming": coming,
    "promises": promises,
}
"""What came back, what is known, what lies ahead: by the names the pictures have in addresses."""

FORESEEN: Mapping[str, Callable[[Retained], Picture]] = {
    "calibration": calibration,
    "forgetting": forgetting,
    "grades": grades,
    "blanks": blanks,
}
"""How well it was foreseen; likewise."""

PLANNED: Mapping[str, Callable[[Retained], Picture | None]] = {
    "target": whole,
    **{f"target-{care.value}": partial(of_care, care=care) for care in Care},
}
"""What each target takes and keeps; None where no book is kept with that care."""

PICTURES: Mapping[str, Callable[[Retained], Picture | None]] = {
    **CAME_BACK,
    **FORESEEN,
    **PLANNED,
}
"""All of them."""
