Feature: Proved against the book

  Mira copies quotations by hand, late at night. Given the book itself, Catchword finds
  each of them in it, shows what her hand made of it, and fills in where it stands.

  Background:
    Given Mira's digest of "Persuasion" with four quotations, copied in haste
    And the text of the book, an ordinary text file

  Scenario: Each quotation is found, with its slips
    When she gives the text to the digest
    Then three quotations are found where they stand, and one is not in the book
    And the slip in the first is shown, "prudance" for "prudence"
    And the chapter she noted wrongly for the second is said to be another

  Scenario: What the book can mend is mended in one step
    When she gives the text to the digest
    And she has everything mended
    Then the quotations say what the book says, with the chapter they stand in
    And what she answered about them stays with them
    And a version of the digest before that is kept

  Scenario: Another edition finds them again
    When she gives the text to the digest
    And she gives the text of another edition, with a preface before it
    Then the three are found again, further on

  Scenario: The text stays in her library
    When she gives the text to the digest
    Then no form the digest is written out in holds more of the book than she quoted
    When she has the text forgotten
    Then what was found stays with the quotations
