Feature: Writing in Catchword

  A digest can be begun in Catchword, left, and gone on with; the two pages it is to fit are
  measured as it grows, and advice stands beside its parts without ever being in the way.

  Scenario: A draft is begun, left and gone on with
    When Mira begins a digest of "Walden" with the theme "A man goes to the woods to find out what is enough."
    And she closes the page and comes back a day later
    Then what she typed is as she left it
    When she writes the point "He builds a house for twenty-eight dollars."
    And she keeps it
    Then her library holds "Walden" with 1 point and 0 quotations
    And she has no drafts

  Scenario: Sending the first page twice begins one draft
    When Mira sends the same blank page with the title "Walden" twice
    Then she has one draft

  Scenario: The two pages are measured
    When Mira begins a digest of "Walden" with the theme "A man goes to the woods to find out what is enough."
    Then she is told how many lines of page one are used
    When she pastes a theme of two pages
    Then she is told that page one is over, and what to cut

  Scenario: Advice stands in nobody's way
    When Mira begins a digest of "Walden" with the theme "Live."
    Then advice stands beside the theme
    When she keeps it
    Then her library holds "Walden" with 0 points and 0 quotations

  Scenario: A draft changed in two windows loses neither
    When Mira begins a digest of "Walden" with the theme "A man goes to the woods."
    And she opens it in two windows
    And she changes the theme to "He comes back from the woods." in the first
    And she changes the theme to "He stays in the woods." in the second
    Then the second window offers both
    And what she typed in the second window is still in it

  Scenario: A blank digest to take away reads back
    When Mira takes a blank digest away as a Word document
    And she hands that blank in unfilled
    Then it is refused with a sentence that says nothing has been written in it yet
    When she takes one away as Markdown and fills in "Walden" with a theme
    And she hands it in to look it over
    Then her draft holds what she filled in, and nothing that was printed on the blank
