Feature: Figures for other tools

  A friend of Mira's teaches with a spreadsheet, and Mira asks questions of her answers in SQL. What
  Catchword knows it hands out in forms that other tools open, each column told with its type and its
  unit. The tools here had no part in writing: DuckDB, openpyxl, and a model of xAPI (IEEE 9274.1.1).

  Scenario Outline: A table tool opens it
    Given the books Mira kept for a winter
    When she takes her <what> out as <form>
    Then a tool that did not write it finds a row for each of her <what>
    And its columns are those told beforehand, each with its type and what it means

    Examples:
      | what        | form    |
      | answers     | csv     |
      | items       | xlsx    |
      | digests     | json    |
      | commitments | csv     |
      | check-ins   | parquet |

  Scenario: Asked in SQL
    Given the books Mira kept for a winter
    When she takes her answers out as parquet
    Then what was foretold is a number, the day a date and the instant an instant
    And the share that came back, asked for in SQL, is the one on the page

  Scenario: Retention as a table
    Given the books Mira kept for a winter
    When she takes her retention out as csv
    Then its rows by book, by kind, by age and by month each add up to the row of everything
    And that row is what the page says

  Scenario Outline: A title that would calculate
    Given "=1+1 Walden" was added
    When she takes her digests out as <form>
    Then the title stands there as "<title>"

    Examples:
      | form    | title        |
      | csv     | '=1+1 Walden |
      | xlsx    | '=1+1 Walden |
      | json    | =1+1 Walden  |
      | parquet | =1+1 Walden  |

  Scenario: The same through every door
    Given the books Mira kept for a winter
    When she takes her check-ins out as csv
    Then the API and the page hand out the very same

  Scenario: One moment, while she goes on
    Given the books Mira kept for a winter
    When her answers are fetched as csv, and she gives one more on the way
    Then the file holds all she had given before, and not that one

  Scenario: For a store of learning records
    Given the books Mira kept for a winter
    And she took one answer back
    When she takes her answers out as xapi
    Then every statement is one, with a statement for each answer
    And what was taken back is voided by a statement of its own

  Scenario: A form there is none of
    When she asks in the terminal for her answers as docx
    Then she is told which forms there are
