"""Days the year is told by, fixed and movable."""

from datetime import date, timedelta

FIXED = {
    "newyear": (1, 1),
    "epiphany": (1, 6),
    "twelfth night": (1, 5),
    "12th night": (1, 5),
    "candlemas": (2, 2),
    "burns night": (1, 25),
    "saint david 's day": (3, 1),
    "saint george 's day": (4, 23),
    "saint john 's day": (6, 24),
    "independence day": (7, 4),
    "bastille day": (7, 14),
    "lammas": (8, 1),
    "bonfire night": (11, 5),
    "armistice day": (11, 11),
    "saint andrew 's day": (11, 30),
    "saint nicholas 's day": (12, 6),
    "valentine 's day": (2, 14),
    "valentines day": (2, 14),
    "saint patrick 's day": (3, 17),
    "lady day": (3, 25),
    "may day": (5, 1),
    "midsummer": (6, 24),
    "midsummer day": (6, 24),
    "michaelmas": (9, 29),
    "halloween": (10, 31),
    "hallowe'en": (10, 31),
    "all saints": (11, 1),
    "all souls": (11, 2),
    "martinmas": (11, 11),
    "christmas eve": (12, 24),
    "christmas": (12, 25),
    "christmas day": (12, 25),
    "boxing day": (12, 26),
    "newyearseve": (12, 31),
}
"""Month and day of the feasts that fall on the same one every year."""
_FROM_EASTER = {
    "shrove tuesday": -47,
    "pancake day": -47,
    "ash wednesday": -46,
    "mothering sunday": -21,
    "passion sunday": -14,
    "palm sunday": -7,
    "maundy thursday": -3,
    "good friday": -2,
    "holy saturday": -1,
    "easter": 0,
    "easter sunday": 0,
    "easter day": 0,
    "easter monday": 1,
    "low sunday": 7,
    "ascension day": 39,
    "ascension": 39,
    "whitsun": 49,
    "whit sunday": 49,
    "pentecost": 49,
    "whit monday": 50,
    "trinity sunday": 56,
    "corpus christi": 60,
}
FEASTS = tuple(sorted({*FIXED, *_FROM_EASTER, "lent", "advent", "thanksgiving"}, key=len))[::-1]
"""Names a feast can be called by, longest first."""


def easter(year: int) -> date:
    """Return Easter Sunday of the Gregorian calendar.

    The anonymous computus of 1876, as printed in Meeus, "Astronomical Algorithms", ch. 8.
    """
    golden = year % 19
    century, within = divmod(year, 100)
    leaps, rest = divmod(century, 4)
    moon = (century + 8) // 25
    moon = (century - moon + 1) // 3
    epact = (19 * golden + century - leaps - moon + 15) % 30
    leap, over = divmod(within, 4)
    weekday = (32 + 2 * rest + 2 * leap - epact - over) % 7
    late = (golden + 11 * epact + 22 * weekday) // 451
    month, day = divmod(epact + weekday - 7 * late + 114, 31)
    return date(year, month, day + 1)


def feast(name: str, year: int) -> tuple[date, date]:
    """Return the first and last day of a feast or season of a year, one of `FEASTS`."""
    if name in FIXED:
        day = date(year, *FIXED[name])
        return day, day
    if name in _FROM_EASTER:
        day = easter(year) + timedelta(days=_FROM_EASTER[name])
        return day, day
    if name == "lent":
        sunday = easter(year)
        return sunday - timedelta(days=46), sunday - timedelta(days=1)
    if name == "advent":
        eve = date(year, 12, 24)
        return eve - timedelta(days=(eve.weekday() + 1) % 7 + 21), eve
    november = date(year, 11, 1)
    day = november + timedelta(days=(3 - november.weekday()) % 7 + 21)
    return day, day
