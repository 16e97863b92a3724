Feature: A commitment worth keeping

  A commitment is concrete, specific and measurable, or it will not be acted on. Catchword
  says which of the three is missing and why, and reads the measure. It is advice: nothing
  is refused for its wording.

  Scenario Outline: The measure is read from the words
    Given it is 4 March 2026
    When Mira asks how "<commitment>" is worded
    Then it is concrete, specific and measurable
    And it asks <times> a <period> on "<days>" until <end>

    Examples:
      | commitment                                                      | times | period | days           | end         |
      | Every evening for two weeks I will write one line to Hanne.     | 1     | day    |                | 14 periods  |
      | On Monday and Thursday nights I will read aloud to Hanne.       | 2     | week   | MO,TH          | nothing     |
      | Write to one old friend on the first Saturday of each month.    | 1     | month  | 1SA            | nothing     |
      | Pay two invoices to Karl by the 30th.                           | 2     | once   |                | 30 March    |
      | For the next ten working days I will thank a colleague by name. | 1     | day    | MO,TU,WE,TH,FR | 10 periods  |
      | Before Friday, call Anna.                                       | 1     | once   |                | 5 March     |

  Scenario: What is missing is said, with a rewording
    Given it is 4 March 2026
    When Mira asks how "Call my sister more." is worded
    Then it is not measurable, and the advice says why
    And it offers "When [a moment of your day], I will call my sister more [how often, or by when]."

  Scenario: What touches medicine is never weakened
    Given it is 4 March 2026
    When Mira asks how "I will halve the dose of my sleeping pills." is worded
    Then the advice says to talk to a doctor
    And no rewording leaves out "halve the dose of my sleeping pills"
