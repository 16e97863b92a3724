Feature: A book talked over, and a year looked back on

  Telling another person about a book is half of keeping it. Mira tells Hanne, who read it,
  and her brother, who did not; and at the year's end she looks at what she promised.

  Scenario: Eighty minutes with someone who read the book
    Given "Silas Marner" was added on 5 January 2026
    When she lays out a talk of 80 minutes
    Then its parts take 80 minutes together
    And nothing she reads from shows the theme, an order or a place
    And the sheet has one page to talk by and one to check by

  Scenario: A quarter of an hour with someone who did not
    Given "Silas Marner" was added on 5 January 2026
    When she lays out a talk of 15 minutes
    Then its parts take 15 minutes together
    And it ends with one question back

  Scenario: What the two resolved flows back into the digest
    Given "Silas Marner" was added on 5 January 2026
    When she talks it over with Hanne, and they resolve to visit old Betty every Sunday
    Then the digest asks it of her from that day on
    And the talk with Hanne is on record
    When she sends the same talk again
    Then it is on record once, and the digest asks it once

  Scenario: What was resolved is asked like all she promised
    Given "Silas Marner" was added on 5 January 2026
    When on 9 February she and Hanne resolve to visit old Betty every Sunday
    Then the visits are asked once a week, on Sunday, from 9 February on
    And the visits stand on course on 17 February, and slipping on 18 February

  Scenario: A talk taken back
    Given "Silas Marner" was added on 5 January 2026
    When she talks it over with Hanne, and they resolve to visit old Betty every Sunday
    And she takes the talk back
    Then no talk is on record
    And the digest still asks what was resolved

  Scenario: A year looked back on
    Given "Silas Marner" was added on 5 January 2026
    And she wrote to a friend in February, and let the question at tea go, "we live apart now"
    When the year is over
    Then its review counts one check-in kept
    And says that the question at tea was released, and why

  Scenario: Two books that ask the contrary
    Given "Silas Marner" was added on 5 January 2026
    And "Walden" asks her to write to no old friend by hand
    When she looks back on the year
    Then the two stand side by side, and she is asked which is to hold
