Feature: A promise that does not go by itself

  Nobody keeps every promise, and blame keeps none. Mira is told the rule and the figures, asked
  the first useful question, and offered what may help: to reword it as when ..., I will ..., to
  halve it, to pause it, or to let it go with a reason.

  Rule: The question fits what was said

    Scenario Outline: Silent, or missed
      Given on 5 January Mira promises "Twice a week I will write to my brother."
      When of the first two weeks she says: <what>
      And 21 January comes
      Then on 21 January it is stalled
      And she is asked "<question>"
      And she may reword, halve, pause or release it
      And half of it is "once a week"

      Examples:
        | what    | question          |
        | nothing | Did you do it?    |
        | missed  | What stopped you? |

    Scenario: One week is no matter
      Given on 5 January Mira promises "Twice a week I will write to my brother."
      When 14 January comes
      Then on 14 January it is slipping
      And she is asked "Did you do it?"
      And nothing is offered yet

    Scenario: Not a word of blame
      Given on 5 January Mira promises "Twice a week I will write to my brother."
      When 21 January comes
      Then no word she is told blames her

  Rule: What is decided is kept, with its history

    Scenario: Reworded as when ..., I will ...
      Given on 5 January Mira promises "Twice a week I will write to my brother."
      And she said it over in her sittings until 20 January
      And on 7 January she says: kept
      When on 21 January she rewords it: "Once a week, when supper is over, I will write to my brother."
      Then the digest says the new words, and once said the old ones
      And it is recalled as well as it was, and its history is kept
      And on 21 January it is on course
      And on 31 January it is slipping
      And on that day she is told "Nothing was said about 21 to 27 January 2026. One such week does no harm."
      And she finds what she said before, and the words it had then

    Scenario: The new words are taken back
      Given on 5 January Mira promises "Twice a week I will write to my brother."
      And she said it over in her sittings until 20 January
      When on 21 January she rewords it: "Once a week, when supper is over, I will write to my brother."
      And on 22 January she takes that decision back
      Then the digest says the old words again
      And it is recalled as well as it was, and its history is kept

    Scenario: Halved
      Given on 5 January Mira promises "Twice a week I will write to my brother."
      When on 21 January she halves it
      And on 24 January she says: kept
      Then on 30 January it is on course
      And on that day she is told "Kept from 21 to 27 January 2026: 1 of 1."

    Scenario: Ill for a fortnight
      Given on 5 January Mira promises
        | Once a week I will write to my brother. |
        | Once a week I will write to my sister.  |
      And on 7 January she kept both
      When on 12 January she falls ill, and pauses the letters to her sister until 25 January
      Then on no day until 31 March do the letters to her sister stand worse than the others
      And on 21 January the letters to her sister are paused, and ask for no word
      And on 26 January they are asked again

    Scenario: Let go, with a reason
      Given on 5 January Mira promises "Twice a week I will write to my brother."
      When on 21 January she lets it go: "We talk every Sunday instead."
      Then on 21 January it is released
      And on that day she is told "Released on 21 January 2026: We talk every Sunday instead."
      And it is said over no more, and stays on record
      When on 1 March she renews it
      Then on 1 March it is on course

    Scenario Outline: What an act needs
      Given on 5 January Mira promises "Twice a week I will write to my brother."
      When on 21 January she would <act> it without a word
      Then she is told "<refusal>"
      And nothing is decided

      Examples:
        | act     | refusal                                     |
        | release | Say in a few words why you release it.      |
        | reword  | Say how it is worded from now on.           |
        | close   | Say what came of it: kept, partly or missed. |
        | resume  | It is not paused on that day.               |

  Rule: What can hurt is not made light of

    Scenario Outline: Health and medicine
      Given on 5 January Mira promises "<words>"
      When 21 January comes
      Then on 21 January it is stalled
      And she may reword, pause or release it
      And it carries its caution: talk to a doctor
      When on 21 January she would halve it without a word
      Then she is told "What touches health or medicine is not halved here: talk to a professional first, then reword it as agreed."
      And nothing is decided

      Examples:
        | words                                                   |
        | Every evening I will take my heart pills after supper. |
        | Three times a week I will run to the mill and back.     |

    Scenario: Money is halved, with its caution
      Given on 5 January Mira promises "Twice a week I will pay five pounds of my debt to Karl."
      When 21 January comes
      Then she may reword, halve, pause or release it
      And it carries its caution: talk to a licensed adviser
