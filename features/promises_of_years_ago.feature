Feature: Promises of years ago

  Mira hands in on one evening what she wrote of the books of 2019. Their days count from the day
  each book was finished; she is not flooded with what is long over, nor is it forgotten: one
  promise a sitting is brought up, with the question what came of it.

  Background:
    Given on 5 January 2026 Mira hands in these digests
      | book           | finished         | promise                                                     |
      | Walden         | 4 March 2019     | Every evening for two weeks I will write one line to Hanne. |
      | Middlemarch    | 20 May 2019      | This week I will mend the garden gate.                      |
      | Emma           | 2 September 2019 | By 30 September I will call on Miss Bates.                  |
      | Cranford       | 7 October 2019   | Once a week I will visit my aunt.                           |

  Scenario Outline: What ended is not judged
    Then of "<book>" she is told "It was over on <day>, before it came in: what came of it is yours to say."

    Examples:
      | book        | day               |
      | Walden      | 17 March 2019     |
      | Middlemarch | 26 May 2019       |
      | Emma        | 30 September 2019 |

  Scenario: What ended is not recalled
    When she sits down every day until 18 January, and leaves nothing unasked
    Then of all four only the promise of "Cranford" was asked

  Scenario: One is brought up a sitting, each in its turn
    When she sits down every day until 7 January, and says nothing of what is brought up
    Then each of the three was brought up once, with the question "What came of it?"

  Scenario: The first morning's mail names none of it
    When the mail of 6 January is written
    Then of all four it names only the promise of "Cranford"

  Scenario: One is settled, and the next one waits for tomorrow
    When she says of "Emma" what came of it: kept
    Then nothing more is brought up today
    And "Emma" is done, and is not brought up again
    When she says so of all the others
    Then nothing is brought up on any day until 18 January

  Scenario: One is taken up again
    When she renews the promise of "Walden"
    Then of "Walden" she is told "Nothing is judged yet: 5 to 11 January 2026 can be reported on until 13 January 2026."
    And of all four only the promises of "Walden" and "Cranford" are asked

  Scenario Outline: What has no end is asked from the day it came in
    Then of "Cranford" it is <pace> on <day>

    Examples:
      | pace      | day        |
      | on course | 13 January |
      | slipping  | 14 January |
      | stalled   | 21 January |

  Scenario: What came of it in those days can still be told
    When she says that she wrote to Hanne on all fourteen evenings of March 2019
    Then of "Walden" she is told "Kept on 14 of 14 days."
