Feature: A year of promises

  Once a year Mira looks back: what she promised to which book, what she kept, what changed, and
  what is to be taken up again. What two books ask is put side by side.

  Background:
    Given on 5 January Mira hands in these digests
      | book     | finished       | promise                                                              |
      | Walden   | 5 January 2026 | Once a week I will walk out to the pond.                             |
      | Emma     | 5 January 2026 | Every evening for five evenings I will write one line to Miss Bates. |
      | Cranford | 5 January 2026 | Every Sunday I will visit my aunt.                                   |

  Scenario: The year in a line
    When on 8 January she says of "Walden": kept
    And on 15 January she says of "Walden": missed
    And on 11 January she says of "Cranford": kept
    And on 1 June she lets go what "Cranford" asks: "She moved in with us."
    And 3 January 2027 comes
    Then the year is told as "3 commitments of 3 books; check-ins: 2 kept, 1 missed; 1 released"
    And of "Walden" it says "Check-ins: 1 kept, 1 missed."
    And of "Cranford" it says "Released: She moved in with us."

  Scenario: What is left open is asked about
    When 3 January 2027 comes
    Then she is asked of "Emma": "What next?"
    And she is asked of "Walden": "Did you do it?"

  Scenario: A year stays as it was
    When on 8 January she says of "Walden": kept
    And 3 January 2027 comes
    And she looks at the year 2026
    And on 20 January 2027 she says of "Walden": missed
    Then the year 2026 is as it was

  Scenario Outline: Two books ask nearly the same, or the contrary
    Given on 1 March Mira hands in these digests
      | book       | finished     | promise |
      | Persuasion | 1 March 2026 | <words> |
    When 3 January 2027 comes
    Then "Persuasion" and "Cranford" stand side by side: "<rule>"

    Examples:
      | words                                        | rule                                                                |
      | Every Sunday afternoon I will visit my aunt. | Both ask nearly the same act: would one do?                         |
      | I will not visit my aunt on Sundays.         | One asks to do what the other asks not to: which is to hold? |
