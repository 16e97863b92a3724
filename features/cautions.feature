Feature: The usual caution

  A book may ask something of a reader that can hurt them. Catchword is no doctor, no
  adviser and no lawyer, and says so wherever such a commitment is shown.

  Scenario Outline: A commitment that touches <matter> carries its caution
    Given a digest with the commitment "<commitment>"
    When the commitment is asked
    Then the cue and the answer both say to talk to <whom>

    Examples:
      | matter | commitment                                              | whom       |
      | health | I will halve the dose of my sleeping pills from Monday. | a doctor   |
      | money  | I will put my savings into one fund by 1 May.           | a licensed |
      | law    | I will sue my landlord before the summer.               | a lawyer   |

  Scenario: A commitment that can hurt nobody carries none
    Given a digest with the commitment "When the tea is poured, I will ask Hanne about her day."
    When the commitment is asked
    Then neither the cue nor the answer carries a caution
