Feature: From a finished digest to today's sitting

  Mira finishes a book, writes her two pages in a word processor, and files them. She
  wants to be asked about the book today, tomorrow and in three years, at the moments
  when it is about to be forgotten.

  Rule: A digest becomes items, and each comes back in its own time

    Scenario: Three items of one book part ways
      Given Mira's digest of "Silas Marner", written in a word processor
      When she adds it on the evening of 5 January 2026
      Then she is asked a commitment that day, and more of other kinds
      When she finds the first vivid, the second clear, and the third blank
      And the third comes back clear when it comes round again
      Then the three come back on different days, the forgotten one first

    Scenario: What came back blank comes round again until it has come back once
      Given "Silas Marner" was added on 5 January 2026
      When she draws a blank on the first item twice running
      Then it is still the last of that day's sitting
      When she finds it hazy
      Then it is not asked again that day

    Scenario: A few unasked items are let in a day, of every kind
      Given "Silas Marner" was added on 5 January 2026
      And she lets in 3 unasked items a day
      Then she is asked 3 items that day, each of another kind
      When she answers them all clear
      Then nothing more is asked that day

    Scenario: Nothing gives away what is still to be asked
      Given "Silas Marner" was added on 5 January 2026
      And she lets in 100 unasked items a day
      Then quotations are placed among the points after all that asks the points
      And no cue of a commitment says what she meant to do

  Rule: The day is the reader's

    Scenario: Late at night and early next morning are two days
      Given Mira lives in London, where her day turns over at 4 in the morning
      And "Silas Marner" was added on 28 March 2026
      When she finds the theme blank at 23:50, the night the clocks go forward
      And she finds it clear at 07:00 the next morning
      Then the two answers stand on two of her days, one apart

    Scenario: After midnight is still the evening
      Given Mira lives in London, where her day turns over at 4 in the morning
      And "Silas Marner" was added on 28 March 2026
      When she finds the theme clear at 23:50, the night the clocks go forward
      And she finds it clear at 03:10 the next morning
      Then the two answers stand on one of her days

  Rule: Answers are facts

    Scenario: An answer sent twice counts once
      Given "Silas Marner" was added on 5 January 2026
      When she finds the theme clear, and her telephone sends the answer twice
      Then the theme has one answer

    Scenario: An answer can be taken back
      Given "Silas Marner" was added on 5 January 2026
      When she finds the theme vivid by mistake and takes it back
      Then the theme is asked that day as if nothing had been said
      And the record still holds what she said and that she took it back

    Scenario: An answer that arrives late is folded in its own place
      Given "Silas Marner" was added on 5 January 2026
      And Mira answered the theme clear on 5 January and clear on 20 January
      When an answer of 12 January, blank, arrives from her telephone on 21 January
      Then the theme is due as if the three had arrived in order

    Scenario: An answer remembers what was expected of it
      Given "Silas Marner" was added on 5 January 2026
      And Mira answered the theme clear on 5 January and clear on 20 January
      Then the first answer was expected by nothing
      And the second keeps the recall that was predicted just before it

  Rule: The digest is the reader's, and keeps its history through every edit

    Scenario: The same file again changes nothing
      Given "Silas Marner" was added on 5 January 2026
      When she adds the same file again
      Then Catchword says that it is unchanged
      And nothing in her library has moved

    Scenario: A corrected typing error keeps every due day
      Given "Silas Marner" was added on 5 January 2026
      And she answered everything clear
      When she corrects a typing error in each part and adds the document again
      Then Catchword says that it was changed
      And every item is due when it was due before

    Scenario: A commitment taken out and put back keeps its history
      Given "Silas Marner" was added on 5 January 2026
      And she answered everything clear
      When she takes the first commitment out of the digest
      Then that commitment is not asked any more
      When she puts it back
      Then it is due when it was due before

    Scenario: Where a quotation stands is asked once, never guessed
      Given Mira's digest of a book whose quotations have no page and no point
      When she adds it on the evening of 5 January 2026
      Then Catchword says which quotations need a place
      When she says after which points they stand
      And she adds the same document again with a word corrected
      Then the places she gave are kept
