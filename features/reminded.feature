Feature: Reminded where she lives

  A promise nobody asks about is soon no promise. Mira gets one mail a day, from her hour on, with
  the minutes due and what wants a word; it ends at a touch, and never comes twice. That monitoring
  helps is Harkin et al. 2016, Psych. Bulletin 142, 198-229; one-click ending is RFC 8058.

  Background:
    Given on 5 January Mira promises "Once a week I will write to my brother."
    And she wants a mail at mira@example.org from 7 o'clock on

  Scenario: One mail a day, from her hour on
    When the machine tidies every half hour from 6 January to 8 January
    Then the mails came at
      | 6 January 07:00 |
      | 7 January 07:00 |
      | 8 January 07:00 |

  Scenario: A laptop opened at noon
    When the machine tidies at 12:30 on 6 January
    And the machine tidies at 23:30 on 6 January
    And the machine tidies at 02:00 on 7 January
    Then the mails came at
      | 6 January 12:30 |

  Scenario Outline: Seven o'clock stays seven o'clock where the clocks change
    When the machine tidies every half hour from <first> to <last>
    Then the mails came at
      | <first> 07:00 |
      | <last> 07:00  |

    Examples:
      | first      | last       |
      | 28 March   | 29 March   |
      | 24 October | 25 October |

  Scenario: Seven o'clock where she is
    When she moves to "Pacific/Auckland" on 6 January
    And the machine tidies every half hour from 7 January to 9 January
    Then the mails came at
      | 7 January 07:00 |
      | 8 January 07:00 |
      | 9 January 07:00 |

  Scenario: What it says
    When the machine tidies at 07:00 on 21 January
    Then the mail says how many minutes today's sitting takes
    And it names "Once a week I will write to my brother." with "Nothing was said about the last two weeks, 5 to 11 January and 12 to 18 January 2026."
    And a touch in it leads to where the promise is checked in on

  Scenario: Ended by the address in it
    When the machine tidies at 07:00 on 6 January
    And she touches what ends the mails
    And the machine tidies at 07:00 on 7 January
    Then the mails came at
      | 6 January 07:00 |

  Scenario: Ended by nothing else
    When the machine tidies at 07:00 on 6 January
    And somebody guesses at what ends the mails
    And the machine tidies at 07:00 on 7 January
    Then the mails came at
      | 6 January 07:00 |
      | 7 January 07:00 |

  Scenario: The server was shut
    When the mail server is shut, and the machine tidies at 07:00 on 6 January
    And the machine tidies at 07:30 on 6 January
    Then the mails came at
      | 6 January 07:30 |

  Scenario: Nothing to say
    When on 5 January she lets the promise go, "He moved in with us."
    And the machine tidies every half hour from 6 January to 7 January
    Then no mail came
