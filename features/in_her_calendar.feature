Feature: Promises in her calendar

  Mira's calendar reads Catchword's at an address of its own, that nobody can guess and that she can
  revoke. The days on which a promise wants a word stand in it as RFC 5545 says recurrences; they
  are read back here by a program that had no part in writing them.

  Scenario Outline: Every day that wants a word, and no other
    Given on 5 January Mira promises "<words>"
    When her calendar is read
    Then the days shown until 5 January 2029 are those on which a word is expected
    And the first of them is <first>

    Examples:
      | words                                                                        | first           |
      | Every evening I will read aloud to Hanne.                                    | 5 January       |
      | Once a week I will write to my brother.                                      | 11 January      |
      | On Monday and Thursday nights I will read aloud to Hanne.                    | 5 January       |
      | Every other day I will walk out to the mill.                                 | 6 January       |
      | Once a quarter I will go through the household book.                         | 31 March        |
      | Once a year I will visit Lantern Yard.                                       | 31 December     |
      | On the first Saturday of each month I will write to one old friend by hand. | 7 February      |

  Scenario: A promise with an end
    Given on 5 January Mira promises "Every evening for five evenings I will write one line to Hanne."
    When her calendar is read
    Then the promise is shown on 5 days, the last of them 9 January

  Scenario: A promise to be done by a day
    Given on 5 January Mira promises "I will return the borrowed book by 2 March."
    When her calendar is read
    Then the promise is a task due on 2 March

  Scenario: An illness is left out of it
    Given on 5 January Mira promises "Every evening I will read aloud to Hanne."
    And on 12 January she fell ill until 18 January
    When her calendar is read
    Then the promise is shown on 11 January and on 19 January, and on no day between

  Scenario: What is let go is shown no more
    Given on 5 January Mira promises "Every evening I will read aloud to Hanne."
    And on 12 January she let it go
    When her calendar is read
    Then the promise is not shown

  Scenario: Ten minutes every day, at the same hour by the clock
    Given on 5 January Mira promises "Every evening I will read aloud to Hanne."
    When her calendar is read
    Then the sitting is shown every day of the year at one hour of the clock in London

  Scenario: An address revoked, and an address guessed
    Given on 5 January Mira promises "Every evening I will read aloud to Hanne."
    When she revokes the address of her calendar
    Then it opens nothing any more
    And no guess opens anything
