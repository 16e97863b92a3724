Feature: What is still there

  Mira wants to know, honestly, what came back when she was asked, and whether what she was told
  beforehand was right. Each share says how many answers it rests on, and where the true one lies 19
  times in 20: the interval of Wilson 1927 (J. Am. Stat. Assoc. 22, 209-212). Of the shares below 1 of
  29 and 0 of 20 are worked by Newcombe 1998 (Stat. Med. 17, 857-872); that fifty answers are needed
  before a share is called on target is our own rule.

  Scenario: Nothing was asked yet
    Given "Silas Marner" was added on 5 January 2026
    When she opens the page of retention
    Then it says that nothing has been asked a second time yet
    And no share stands on it

  Scenario Outline: A share, what it rests on, and what may be claimed
    Given "Silas Marner" was added on 5 January 2026
    And its theme was asked day after day, and <recalled> of the <asked> times after the first it came back
    When she opens the page of retention
    Then it says that <recalled> of <asked> came back, and that the true share lies from <low> to <high>
    And it says "<verdict>"

    Examples:
      | recalled | asked | low      | high | verdict                            |
      | 9        | 10    | 60%      | 98%  | too few to say whether 90% is met  |
      | 44       | 49    | 78%      | 96%  | too few to say whether 90% is met  |
      | 45       | 50    | 79%      | 96%  | on target, 90%                     |
      | 1        | 29    | 1%       | 17%  | below the 90% aimed for            |
      | 0        | 20    | 0%       | 16%  | below the 90% aimed for            |

  Scenario: What is no recalling
    Given "Silas Marner" was added on 5 January 2026
    And its theme was answered twice on one day
    When she opens the page of retention
    Then it says that nothing has been asked a second time yet

  Scenario: Taken back, it counts no more
    Given "Silas Marner" was added on 5 January 2026
    And its theme was asked day after day, and 3 of the 5 times after the first it came back
    When she takes her last answer back
    And she opens the page of retention
    Then it says that 3 of 4 came back, and that the true share lies from 30% to 95%

  Scenario: By book, by kind, by age and by month
    Given the books Mira kept for a winter
    When she opens the page of retention
    Then what came back is what can be counted in her answers
    And the shares by book, by kind, by age and by month each add up to it
    And the terminal and the API say the same

  Scenario: What was foretold is judged as it was foretold
    Given the books Mira kept for a winter
    When she opens the page of predictions
    Then the log loss and the Brier score are those of what was foretold with each answer
    And beside them stands what plain guesses would have cost
    When she aims for 80 % from now on
    Then what was foretold is judged as before

  Scenario: How much of each book is known
    Given the books Mira kept for a winter
    When she opens the page of retention
    Then of each book it says how much is known now, and in a year with and without sittings
    And a year without sittings loses some of each, of which sittings keep more

  Scenario: What the coming weeks ask
    Given the books Mira kept for a winter
    When she opens the page of retention
    Then eight weeks stand there day by day in minutes, and no day asks more than the minutes she has

  Scenario: Her grade beside the mark
    Given the books Mira kept for a winter
    When she opens the page of predictions
    Then each mark stands there with her grades, as often as her answers hold both

  Scenario: The first blank
    Given the books Mira kept for a winter
    When she opens the page of predictions
    Then of each kind it says how many items came back blank, and after how many days half had

  Scenario: Promises by month
    Given on 5 January Mira promises "Once a week I will write to my brother."
    And on 8 January she says: kept
    And on 15 January she says: missed
    When 20 February comes
    And she opens the page of retention
    Then the promises are told by month as
      | month         | kept | partly | missed | nothing said |
      | January 2026  | 1    | 0      | 1      | 1            |
      | February 2026 | 0    | 0      | 0      | 3            |
