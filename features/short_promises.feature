Feature: Promises of a few evenings

  Most promises are short. While one runs Mira says it over in her sittings; when it ends she is
  asked once what came of it and what next, and it rests until she renews it.

  Background:
    Given on 5 January Mira promises "Every evening for five evenings I will write one line to Hanne."

  Scenario: Said over while it runs
    When she sits down every day until 16 January
    Then it was said over on 5 January, and last on 11 January

  Scenario Outline: What came of it, and what next
    When she did so on <evenings> of the evenings
    And 12 January comes
    Then on 12 January it is <pace>
    And her sitting brings it up with the question "What next?"
    And she may renew, reword, release or close it
    When on 12 January she closes it: <outcome>
    Then it is not brought up on any day until 31 March

    Examples:
      | evenings | pace    | outcome |
      | 5        | done    | kept    |
      | 3        | ended   | partly  |
      | 0        | stalled | missed  |

  Scenario: Nothing is brought up before it is over
    Then it is not brought up on any day until 11 January

  Scenario: Renewed, and said over again
    When she did so on 3 of the evenings
    And she sits down every day until 16 January
    And on 20 January she renews it
    And she sits down every day until 31 January
    Then it was said over on 20 January, and last on 26 January
    And on 26 January it is on course
    And on 27 January it is stalled
    And on that day she is told "It ended on 24 January 2026, and what came of it was not said."
    And what she said in the first week is still on record

  Scenario: A journey puts its evenings off
    When on 5 January she says: kept
    And on 12 January she renews it
    And later on 12 January she pauses it for a journey until 18 January
    Then on 22 January it is on course
    And on 25 January it is on course
    And on 26 January it is stalled
    And on that day she is told "It ended on 23 January 2026, and what came of it was not said."
