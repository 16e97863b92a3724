Feature: Fitted to this reader

  The published weights of the memory model come from other people and other material. When the
  machine tidies, weights are fitted to Mira's own answers, and put in force only where they foresaw
  later answers, which they had not seen, better than those in force.

  Scenario: Too few answers
    Given "Silas Marner" was added on 5 January 2026
    When the machine tidies
    Then the published weights are in force, and the page says how many answers are still to come

  Scenario: A reader like those the weights come from
    Given Mira kept books for a winter, and forgot as was foretold
    When the machine tidies
    Then the published weights are in force, and the page says that hers foresaw no better
    And no due day waits to be moved

  Scenario: A reader unlike them
    Given Mira kept books for a winter, and forgot much faster than was foretold
    When the machine tidies
    Then weights of her own are in force, and the page says by how much better they foresaw
    And the published ones are told as in force before, and stand beside hers
    And nothing of her answers was touched, nor how what was foretold is judged
    And of each item recall is foreseen by her own weights
    And 50 due days were moved at most, and some wait
    When the machine tidies again
    Then not one more was moved, and nothing was fitted anew
    When the machine tidies on the days to come
    Then every due day is the one her own weights foresee
    And no day moved more than 50
