Feature: Everything at once

  Whatever Mira wrote, was asked and answered is hers: one archive of open formats holds it all,
  can be read without Catchword, and reads back into an empty library as if nothing had happened.

  Background:
    Given the books Mira kept for a winter
    And she takes everything out

  Scenario: Read without Catchword
    Then the archive explains itself, and holds each of her digests as Markdown
    And every document she handed in is in it as it came
    And every answer is a line of JSON in it, with its grade

  Scenario: Back into an empty library
    When she reads it into an empty library
    Then every item is due on the same day, with the same memory
    And today's sitting asks the same
    And the pages of today, of her books, of her promises and of retention are the same
    And everything taken out again is the same to the byte

  Scenario: Back through the page
    When she brings it back on the page of an empty library
    Then every item is due on the same day, with the same memory

  Scenario: Not into a library that holds something
    When she reads it into a library that holds "Silas Marner"
    Then she is told "The library is not empty"
    And that library holds "Silas Marner" alone

  Scenario Outline: An archive that is not what it was
    When <harm>
    And she reads it into an empty library, and cannot
    Then she is told <what> in a sentence
    And that library is empty

    Examples:
      | harm                                         | what              |
      | the end of the archive was lost on the way   | what is wrong     |
      | somebody changed a grade in the archive      | which entry it is |
      | somebody put another file into the archive   | which entry it is |
