Feature: Editing keeps memory

  Mira reads her digests again with other eyes. She mends a word, moves a point, replaces
  one by a better one, and changes her mind. What she has learnt stays with what it was
  learnt of, and nothing she once wrote is lost.

  Background:
    Given "Silas Marner" was added on 5 January 2026
    And Mira answered everything that day

  Rule: What stays the same keeps its history

    Scenario: A small rewording keeps it
      When she words the first commitment a little otherwise
      Then the page says it was reworded and keeps what she answered
      And every memory and every due day is as it was

    Scenario: Another claim starts afresh
      When she replaces the first commitment by quite another
      Then the page says it was replaced and starts afresh
      And the new one is unasked

    Scenario: A commitment turned into its opposite starts afresh
      When she has the first commitment say the opposite
      Then the page says it was replaced and starts afresh

  Rule: The reader has the last word

    Scenario: It is the same after all
      When she replaces the first commitment by quite another
      And she says that it is the same one after all
      Then the new words have the old history

    Scenario: It is another one
      When she words the first commitment a little otherwise
      And she says that it is another one
      Then the new one is unasked

  Rule: Every version is kept and can come back

    Scenario: Back to what it was before a month of edits
      When she rewords, removes and replaces parts over a month
      And she brings the first version back
      Then the digest says what it said in January
      And every memory and every due day is as it was

    Scenario: What she typed back is recognised
      When she rewords the first commitment three times, further each time
      And she types its first words back in
      Then every memory and every due day is as it was
