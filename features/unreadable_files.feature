Feature: Files that cannot be read

  What cannot be read is refused in a sentence that says what is wrong and what to do,
  and nothing of it is kept.

  Scenario Outline: A file that is no digest is refused in words
    When Mira adds <file>
    Then it is refused with a sentence that says <why>
    And nothing is kept

    Examples:
      | file                                | why        |
      | an empty document                   | empty      |
      | a document cut off in the middle    | cut short  |
      | a picture named as a document       | not        |
      | a document protected by a password  | password   |
      | a letter to her aunt                | no part of a digest |

  Scenario: One bad file stops none of the others
    When Mira adds an empty document between two good ones
    Then two digests are in her library
    And the report names the one that was refused
