Feature: Choosing what to aim for

  To have nearly everything come back takes many minutes, to have seven in ten takes few. Mira sees
  both beforehand, from her own weights and her own pace, and then says what she aims for.

  Scenario: Chosen with open eyes
    Given the books Mira kept for a winter
    And she keeps "On Liberty" close
    When she opens the page of targets
    Then for every target from 70 to 97 % it says the minutes a day, and what is known after one, five and ten years
    And a higher target takes more minutes and keeps more
    And what she aims for is told with what it keeps
    And books kept close and books kept steadily have figures of their own, which add up to the whole
    When she takes the target it proposes
    Then she aims for that from now on

  Scenario Outline: What cannot be aimed for
    When she opens the page of targets
    And she asks for a target of "<target>"
    Then she is told that it may be from 70 to 97
    And she aims for 90 %

    Examples:
      | target |
      | 100    |
      | 12     |
      | nan    |
      | most   |

  Scenario: Nothing to plan
    When she opens the page of targets
    Then it says that there is nothing to plan yet
