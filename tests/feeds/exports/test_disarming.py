"""Words that a spreadsheet could run."""

import pytest

from service.feeds.exports.disarming import disarmed


@pytest.mark.parametrize(
    "words",
    [
        "=1",
        "+1",
        "-1",
        "@A",
        "\tA",
        "\rA",
        "\nA",
        "＝1",
        "＋1",
        "－1",
        "＠A",
        " =1",
        '"=1',
        "'=1",
        "\u00a0@A",
        "\u3000=1",
        "\u200b\u2003=1",
        "\x0b=1",
        "\x1f=1",
        "\u202e=1",
        "\ufeff=1",
    ],
)
def test_what_could_be_run_begins_with_an_apostrophe(words: str) -> None:
    """Behind spaces and quotation marks too. Source: OWASP, “CSV Injection” (from memory)."""
    assert disarmed(words) == f"'{words}"


@pytest.mark.parametrize(
    "words", ["", " ", "a=1", "1-2", "“=1”", "¿=", "'tis", "é", "(–1)", "–", "…"]
)
def test_other_words_stay_as_they_are(words: str) -> None:
    """A dash is no minus, and what begins otherwise is never run."""
    assert disarmed(words) == words
