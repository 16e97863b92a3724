"""International Standard Book Numbers, checked by their check digit.

Source: ISO 2108 and the ISBN Users' Manual, seventh edition: weights 10 to 1
modulo 11 for ten digits, weights 1 and 3 by turns modulo 10 for thirteen.
"""

import re

_SEPARATORS = re.compile(r"[\s\-–‐‑]+")
_TEN = re.compile(r"\d{9}[\dX]")
_THIRTEEN = re.compile(r"97[89]\d{10}")


def compact(written: str) -> str:
    """Return an ISBN without its hyphens and spaces."""
    return _SEPARATORS.sub("", written).upper()


def is_isbn(written: str) -> bool:
    """Tell whether an ISBN of ten or thirteen digits has the check digit it should."""
    digits = compact(written)
    if not digits.isascii():
        return False
    if _TEN.fullmatch(digits):
        values = [10 if digit == "X" else int(digit) for digit in digits]
        return (
            sum(weight * value for weight, value in zip(range(10, 0, -1), values, strict=True)) % 11
            == 0
        )
    if _THIRTEEN.fullmatch(digits):
        return sum(int(digit) * (1, 3)[place % 2] for place, digit in enumerate(digits)) % 10 == 0
    return False


def thirteen(written: str) -> str:
    """Return an ISBN in its thirteen digits, so that both lengths of one number are the same.

    The ten-digit number without its check digit follows 978, and a new check digit is
    computed. What is no ISBN comes back as it is, without hyphens and spaces.
    """
    digits = compact(written)
    if not _TEN.fullmatch(digits) or not is_isbn(digits):
        return digits
    body = f"978{digits[:9]}"
    total = sum(int(digit) * (1, 3)[place % 2] for place, digit in enumerate(body))
    return f"{body}{-total % 10}"
