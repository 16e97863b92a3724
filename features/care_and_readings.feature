Feature: How much of a book to keep, and a book read again

  Not every book deserves the same care, and some are read twice. Mira says which is
  which, and what she promised each.

  Scenario: A book at rest lets nothing new in
    Given "Silas Marner" was added on 5 January 2026
    When she lets it rest
    Then nothing of it is asked that day
    When she keeps it close
    Then it is asked as on the first day

  Scenario: A book kept close comes round sooner, one at rest later, and no fact changes
    Given "Silas Marner" was added on 5 January 2026
    And Mira answered everything that day
    When she keeps it close
    Then every item is due no later than before
    When she lets it rest
    Then every item is due no sooner than before
    When she keeps it steadily
    Then every due day is as it was

  Scenario: The same book read again two years later is another reading
    Given "Silas Marner" was added on 5 January 2026
    When she reads it again and hands in another digest two years later
    Then both readings stand in her library
    And each is shown beside the other, the earlier first

  Scenario: A slip in the date is no second reading
    Given "Silas Marner" was added on 5 January 2026
    When she corrects the year she finished it in, and hands the file in again
    Then there is one digest, and it says the other year
