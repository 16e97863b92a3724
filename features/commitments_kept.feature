Feature: Commitments kept

  What a book asks of a life is why Mira reads. She is told how each promise stands, on any day,
  from what she said of it: one miss is harmless, two running are not, and silence is told apart
  from a miss.

  The rows are those of the truth table laid down with the definition of "stalled" before any of
  it was built; it is our own. That one missed opportunity does no harm is Lally et al. 2010, Eur.
  J. Soc. Psych. 40, 998-1009; that failing to monitor is a failure of its own, Harkin et al. 2016,
  Psych. Bulletin 142, 198-229. 5 January 2026 is a Monday.

  Rule: A week is judged two days after its Sunday

    Scenario Outline: Nothing is said
      Given on 5 January Mira promises "Once a week I will write to my brother."
      Then on <day> it is <pace>
      And on that day she is told "<told>"

      Examples:
        | day        | pace      | told                                                                                                    |
        | 13 January | on course | Nothing is judged yet: 5 to 11 January 2026 can be reported on until 13 January 2026.                   |
        | 14 January | slipping  | Nothing was said about 5 to 11 January 2026. One such week does no harm.                                |
        | 20 January | slipping  | Nothing was said about 5 to 11 January 2026. One such week does no harm.                                |
        | 21 January | stalled   | Nothing was said about the last two weeks, 5 to 11 January and 12 to 18 January 2026. |

    Scenario Outline: A deed of 17 January counts by its own day, whenever she tells of it
      Given on 5 January Mira promises "Once a week I will write to my brother."
      When on <reported> she says of 17 January: kept
      Then on <before> it is <pace>
      And on <after> it is on course

      Examples:
        | reported   | before     | pace     | after      |
        | 20 January | 20 January | slipping | 21 January |
        | 25 January | 24 January | stalled  | 25 January |

    Scenario Outline: Two weeks, told in time
      Given on 5 January Mira promises "Once a week I will write to my brother."
      When on 11 January she says: <first>
      And on 18 January she says: <second>
      Then on 21 January it is slipping

      Examples:
        | first  | second |
        | kept   | missed |
        | missed | partly |

    Scenario: Missed, paused, missed
      Given on 5 January Mira promises "Once a week I will write to my brother."
      When on 11 January she says: missed
      And on 12 January she pauses it until 18 January
      And on 25 January she says: missed
      Then on 27 January it is slipping
      And on 28 January it is stalled

    Scenario: Stalled, then done
      Given on 5 January Mira promises "Once a week I will write to my brother."
      When on 22 January she says: kept
      Then on 21 January it is stalled
      And on 22 January it is slipping
      And on 27 January it is slipping
      And on 28 January it is on course

    Scenario: Pausing a week in which something was done changes nothing
      Given on 5 January Mira promises
        | Once a week I will write to my brother.  |
        | Once a week I will walk out to the mill. |
      When she tells the same of both, and pauses the mill from 12 to 18 January
      Then both stand alike on every day from 19 January to 28 February

  Rule: Whatever the measure, what is kept is on course

    Scenario: Three evenings of seven
      Given on 5 January Mira promises "Every evening I will read aloud to Hanne."
      When on 5 January she says: kept
      And on 7 January she says: kept
      And on 10 January she says: kept
      Then on 14 January it is slipping
      And on that day she is told "Partly kept from 5 to 11 January 2026: 3 of 7 days."

    Scenario Outline: Kept perfectly for three years
      Given on 5 January Mira promises "<words>"
      When she keeps it to the letter until 5 January 2029
      Then it was on course on every one of those days

      Examples:
        | words                                                                        |
        | Every other day I will walk out to the mill.                                 |
        | Once a quarter I will go through the household book.                         |
        | Once a year I will visit Lantern Yard.                                       |
        | On the first Saturday of each month I will write to one old friend by hand. |

    Scenario Outline: Five evenings, and over
      Given on 5 January Mira promises "Every evening for five evenings I will write one line to Hanne."
      When she does so on <evenings> of the five evenings
      Then on 11 January it is on course
      And on 12 January it is <pace>
      And on that day she is told "<told>"

      Examples:
        | evenings | pace    | told                                                         |
        | 5        | done    | Kept on 5 of 5 days.                                         |
        | 3        | ended   | Kept on 3 of 5 days.                                         |
        | 0        | stalled | It ended on 9 January 2026, and what came of it was not said. |

    Scenario: Five evenings, and nothing said of them until asked
      Given on 5 January Mira promises "Every evening for five evenings I will write one line to Hanne."
      When on 2 March she closes it: missed
      Then on 1 March it is stalled
      And on 2 March it is ended

    Scenario Outline: To be done by a day
      Given on 1 January Mira promises "I will return the borrowed book by 2 March."
      Then on <day> it is <pace>
      And on that day she is told "<told>"

      Examples:
        | day      | pace      | told                                          |
        | 2 March  | on course | Due by 2 March 2026.                          |
        | 3 March  | slipping  | Overdue since 3 March 2026.                   |
        | 9 March  | slipping  | Overdue since 3 March 2026.                   |
        | 10 March | stalled   | Overdue since 3 March 2026, 8 days by now.    |

  Rule: The days are hers

    Scenario: A word at two in the morning belongs to the evening before
      Given on 5 January Mira promises "Once a week I will write to my brother."
      When she says at 02:00 on Monday 19 January: kept
      Then what she said is about 18 January
      And on 21 January it is on course

    Scenario Outline: Where the clocks change
      Given on 5 January Mira promises "Every evening I will read aloud to Hanne."
      When at <hour> on <day> she says: kept
      Then what she said is about <about>

      Examples:
        | hour  | day        | about      |
        | 03:59 | 29 March   | 28 March   |
        | 04:00 | 29 March   | 29 March   |
        | 03:59 | 25 October | 24 October |
        | 04:00 | 25 October | 25 October |

    Scenario Outline: Kept at bedtime across a change of the clocks
      Given on <first> Mira promises "Every evening I will read aloud to Hanne."
      When she says each night at 01:30 until <last> that she kept it
      Then it was on course on every one of those days

      Examples:
        | first      | last       |
        | 16 March   | 12 April   |
        | 12 October | 8 November |

    Scenario Outline: She moves to the other side of the world
      Given on 5 January Mira promises "Once a week I will write to my brother."
      And on 11 January she says: missed
      And on 18 January she says: kept
      When on 20 January she moves to "<zone>"
      Then what she said is about the days it was about
      And it stood on every day as it did

      Examples:
        | zone             |
        | Pacific/Auckland |
        | Pacific/Honolulu |

  Rule: What she said stays on record, in whatever order it came

    Scenario: A word corrected
      Given on 5 January Mira promises "Once a week I will write to my brother."
      And on 11 January she says: kept
      And on 18 January she says: missed
      When on 22 January she corrects that: kept
      Then on 21 January it is slipping
      And on 22 January it is on course
      And both words are on record, the first one taken back

    Scenario: A word taken back
      Given on 5 January Mira promises "Once a week I will write to my brother."
      And on 11 January she says: kept
      When on 22 January she takes that back
      Then on 20 January it is on course
      And on 22 January it is stalled

    Scenario: Said over, then asked whether she kept it
      Given on 5 January Mira promises "Once a week I will write to my brother."
      When she says it over in that day's sitting
      Then she is asked whether she kept it
      When on 6 January she says: kept
      Then she is asked no more until 11 January
      And she is asked again on 12 January

    Scenario: How often, and who saw it
      Given on 5 January Mira promises "Three times a week I will read aloud to Hanne."
      When on 7 January she says: kept, twice, "The storm scene." and Hanne saw it
      Then on 7 January she is told of "2 of 3 this week"
      And her note and her witness are on record

    Scenario: The same word sent twice
      Given on 5 January Mira promises "Three times a week I will read aloud to Hanne."
      When on 7 January she says: kept
      And her telephone sends that once more
      Then on 7 January she is told of "1 of 3 this week"

    Scenario: The same facts in another order
      Given on 5 January Mira promises
        | Once a week I will write to my brother.  |
        | Once a week I will walk out to the mill. |
        | Once a week I will read aloud to Hanne.  |
      When on 8 February she tells the same of each, each in another order
        | kept                   | 6 January  |
        | missed                 | 13 January |
        | paused for three weeks | 19 January |
        | renewed                | 2 February |
        | kept                   | 3 February |
      Then all stand alike on every day from 8 February to 31 March

    Scenario Outline: What cannot be
      Given on 5 January Mira promises "Once a week I will write to my brother."
      When on 7 January she says of <day> what cannot be
      Then she is told "<refusal>"
      And nothing of it is kept

      Examples:
        | day       | refusal                                                                                               |
        | 8 January | 2026-01-08 has not come yet.                                                                          |
        | 4 January | The commitment was made on 2026-01-05; a check-in is about that day or a later one. |
