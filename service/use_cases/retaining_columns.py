"""The table of retention, described column by column."""

from service.use_cases.exporting_columns import Column, Described, Holds

RETENTION = Described(
    "Retention",
    "What came back when asked, with its bounds and how well it was foreseen: of everything, then "
    "by book, by kind, by the age of the memory and by month. An answer counts when its item was "
    "asked before on an earlier day.",
    (
        Column("of", Holds.TEXT, "What the row is of: all, book, kind, age or month."),
        Column(
            "key",
            Holds.TEXT,
            "Which one: the id of a digest, a kind, the days since the answer before as 8-14, or a "
            "month as 2026-03; empty of everything.",
        ),
        Column("label", Holds.TEXT, "The same in words: of a book its title."),
        Column("asked", Holds.WHOLE, "Answers that count.", "answers"),
        Column(
            "came_back", Holds.WHOLE, "How many of them were graded anything but blank.", "answers"
        ),
        Column("share", Holds.NUMBER, "Of those asked, the share that came back.", "share, 0 to 1"),
        Column("low", Holds.NUMBER, "Lower 95% bound of it (Wilson 1927).", "share, 0 to 1"),
        Column("high", Holds.NUMBER, "Upper 95% bound of it.", "share, 0 to 1"),
        Column("foreseen", Holds.WHOLE, "Answers with a prediction before them.", "answers"),
        Column(
            "predicted_mean",
            Holds.NUMBER,
            "The mean of those predictions.",
            "probability, 0 to 1",
            absent=True,
        ),
        Column(
            "log_loss",
            Holds.NUMBER,
            "The mean of -ln of the probability given to what happened.",
            "nats",
            absent=True,
        ),
        Column(
            "brier",
            Holds.NUMBER,
            "The mean square of prediction less outcome.",
            "probability squared",
            absent=True,
        ),
    ),
)
