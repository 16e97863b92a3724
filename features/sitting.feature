Feature: The sitting

  Mira has ten minutes a day, for years. She wants to be asked what would be lost if nobody
  asked, marked fairly, and never shamed for a day she missed.

  Rule: Every part of a digest comes back in its own way

    Scenario: The points come back one by one
      Given Mira keeps "Silas Marner" and "Walden"
      When she is asked what comes after "Fifteen years of weaving"
      Then the cue shows that point and nothing of the next
      When she says "Dunstan takes the gold and Raveloe begins to pity him"
      Then clear or vivid is suggested

    Scenario: The points are put in order
      Given Mira keeps "Silas Marner" and "Walden"
      When she is asked the order of the points of "Silas Marner"
      Then they are shown, and not in their order
      When she puts all four in order
      Then clear or vivid is suggested
      When she turns two of them round
      Then hazy or blank is suggested

    Scenario: A quotation is completed, later said by heart
      Given Mira keeps "Silas Marner" and "Walden"
      When she is asked to complete "The gods of the hearth exist for us still."
      Then no word left out stands anywhere in the cue
      When she gives every word left out, in capitals
      Then clear or vivid is suggested

    Scenario: Whose words are these
      Given Mira keeps "Silas Marner" and "Walden"
      When she is asked whose words "There is some one else than Silas here" are
      Then the name Silas is veiled
      And the choices are books of her own

    Scenario: Two books speak to each other
      Given Mira keeps "Silas Marner" and "Walden"
      When she finds that the second point of "Silas Marner" speaks to "Walden"
      Then she is asked which other book speaks to it
      When she names "Walden, by Thoreau"
      Then clear or vivid is suggested
      When she takes "Walden" out of her library
      Then it is not asked any more
      When she drops the link
      Then its history is kept

  Rule: A mark is a suggestion; the reader's grade decides

    Scenario: The ideas that came back are ticked, and the reader corrects them
      Given Mira keeps "Silas Marner" and "Walden"
      When she recalls the theme of "Silas Marner" in words of her own
      Then some of its ideas are ticked and some are not
      When she ticks them all
      Then vivid is suggested
      When she grades it hazy
      Then hazy is what counts, vivid stands beside it, and her ticks are kept

    Scenario: What says the opposite is never more than hazy
      Given Mira keeps "Silas Marner" and "Walden"
      When she says of the theme of "Walden" that he did not live simply and did not wake
      Then hazy or blank is suggested

    Scenario: Some answers are graded before the mark is shown
      Given Mira answered everything for some weeks
      Then about one answer in ten was graded before its mark was shown
      And it is the same ones on another device

  Rule: A sitting is composed for the minutes there are

    Scenario: It fits the minutes
      Given Mira keeps "Silas Marner" and "Walden"
      And she let all of it in on the first day, and a month went by
      When she has 3 minutes
      Then today's sitting takes about 3 minutes
      When she has 5 minutes more
      Then today's sitting takes about 8 minutes

    Scenario: A commitment is always among them, and something unasked
      Given Mira keeps "Silas Marner" and "Walden"
      When she sits down every day for two weeks, 3 minutes each
      Then every day a commitment was asked
      And something unasked was asked every day that anything unasked could be

    Scenario: Books take turns
      Given Mira keeps "Silas Marner" and "Walden"
      And she let all of it in on the first day, and a month went by
      Then no two items of one book follow each other while another has some left

    Scenario: Nothing is asked that was read today
      Given Mira keeps "Silas Marner" and "Walden"
      And she let all of it in on the first day, and a month went by
      When she answers everything that is asked in 20 minutes
      Then no page she saw showed what a later one asked

    Scenario: After three weeks away there is no pile
      Given Mira keeps "Silas Marner" and "Walden"
      And she let all of it in on the first day, and a month went by
      When she comes back with 3 minutes
      Then she is told when all will be level again
      And the sitting takes about 3 minutes

    Scenario: Left out for today
      Given Mira keeps "Silas Marner" and "Walden"
      When she leaves the first item out for today
      Then it is not asked today
      And it is asked tomorrow
      When she takes it in again
      Then it may be asked today

    Scenario: Another device goes on where she stopped
      Given Mira keeps "Silas Marner" and "Walden"
      When she answers two items on her telephone
      Then her laptop asks what the telephone would have asked next

  Rule: Adding a book has a price, and it is shown

    Scenario: Minutes a day at each care
      Given Mira keeps "Silas Marner" and "Walden"
      Then keeping "Walden" close costs more a day than keeping it steadily
      And the first year costs more than the fifth

  Rule: A sitting can be held on paper

    Scenario: Printed in the morning, entered at night
      Given Mira keeps "Silas Marner" and "Walden"
      When she has today's sitting printed
      And she enters the grades of all but one at night
      Then they are kept, and the one is still asked
      When the form is sent once more
      Then nothing is counted twice
