Feature: Books opened again

  Some of a book cannot be brought back by asking. Mira is told which books to open again, at
  which pages and why; she says that she did, and later sees whether it helped.

  Scenario: A theme that is gone
    Given "Silas Marner" was added on 5 January 2026
    And its theme came back blank twice running
    When she asks which books to open again
    Then "Silas Marner" is named because of its theme
    And every page named stands in her digest, or next to one that does
    And the minutes are two for each page

  Scenario: A promise that stalled
    Given "Silas Marner" was added on 5 January 2026
    And nothing was heard of the letters to old friends until 20 April 2026
    When she asks which books to open again
    Then "Silas Marner" is named because of the letters

  Scenario: What a stalled promise comes from
    Given "Silas Marner" was added on 5 January 2026
    And nothing was heard of the letters to old friends until 20 April 2026
    When she asks which books to open again
    Then she is to read around both quotations, "pp. 130-132" and "pp. 138-140"
    And what stands there is shown beside each
    And the minutes are two for each page of them

  Scenario Outline: A year since a book kept close
    Given "Silas Marner" was added on 5 January 2026
    And it is kept <care>, and nothing it asks is left open
    When <day> comes, and she asks which books to open again
    Then "Silas Marner" is named <times>, because of the year

    Examples:
      | care   | day            | times |
      | close  | 3 January 2027 | never |
      | close  | 4 January 2027 | once  |
      | steady | 4 January 2027 | never |

  Scenario: A year since it was read again
    Given "Silas Marner" was added on 5 January 2026
    And it is kept close, and nothing it asks is left open
    When she reads it again on 4 January 2027
    Then no book is to be opened again
    When 4 January 2028 comes, and she asks which books to open again
    Then "Silas Marner" is named once, because of the year

  Scenario: Read again, and better for it
    Given "Silas Marner" was added on 5 January 2026
    And its theme came back blank twice running
    When she reads "pp. 130-140" of it again in 33 minutes
    Then no book is to be opened again
    And its theme is asked within three days, due or not
    When it comes back clear
    Then she is told that none came back before and one since
    And a page takes her three minutes from then on

  Scenario: Nothing to open
    Given "Silas Marner" was added on 5 January 2026
    When she asks which books to open again
    Then no book is to be opened again
