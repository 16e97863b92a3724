Feature: Look before it is kept

  A file is laid out before it is kept: each part beside the words it was read from, and what
  was not understood at the foot. The reader mends it there, and nothing is kept until they say so.

  Scenario: Each part stands beside the words it came from
    When Mira hands her digest in to look it over
    Then nothing is in her library yet
    And beside point 3 stand the words "Dunstan takes the gold; Raveloe begins to pity. (p. 42)"
    And the draft can be found again among her drafts

  Scenario: What was not understood is listed, and can be taken in
    Given her digest has the line "Ask Hanne about the loom every Sunday." under a heading "Lifelines"
    When Mira hands her digest in to look it over
    Then the line "Ask Hanne about the loom every Sunday." is listed as standing nowhere
    When she takes that line in as a commitment
    Then her draft has commitment 3 "Ask Hanne about the loom every Sunday."
    And no line stands nowhere

  Scenario: A heading of her own is said once
    Given her digest has the line "Ask Hanne about the loom every Sunday." under a heading "Lifelines"
    When Mira hands her digest in to look it over
    And she says that in her digests "Lifelines" announces the commitments
    Then her draft has commitment 3 "Ask Hanne about the loom every Sunday."
    And in the next file she hands in "Lifelines" announces the commitments too

  Scenario: Points are joined and split, and quotations stay where they stood
    When Mira hands her digest in to look it over
    And she says that quotation 1 stands after point 3
    And she joins point 1 with the next
    Then her draft has point 1 "The lot falls on Marner, and he leaves Lantern Yard. Fifteen years of weaving: the guineas become his company."
    And quotation 1 stands after point 2
    When she splits point 1 before "Fifteen"
    Then her draft has point 2 "Fifteen years of weaving: the guineas become his company."
    And quotation 1 stands after point 3

  Scenario: What is kept is what the reader left it as
    When Mira hands her digest in to look it over
    And she makes point 4 a quotation
    And she keeps it
    Then her library holds "Silas Marner" with 3 points and 3 quotations
    And the file she handed in is kept with it
    And she has no drafts

  Scenario: A book read again years later is another reading
    Given "Silas Marner" was added on 5 January 2026
    When Mira hands her digest in to look it over
    Then she is told that the book is in her library already
    When she keeps it as another reading
    Then two digests are in her library

  Scenario: A whole folder, and one bad file among it
    When Mira hands in a folder of three digests and an empty file
    Then there is a report on each of the four files
    And three digests are in her library
    When she hands in the same folder again
    Then the three digests are unchanged
