Feature: Pictures with their words, their tables and their files

  Mira looks at a picture, a friend of hers has it read aloud, another puts it into a lesson. None of
  them gets less than the others.

  Background:
    Given the books Mira kept for a winter

  Scenario Outline: Whoever does not see the picture has all of it
    When she opens the page <page>
    Then it holds <number> pictures, each with a title, a sentence and the figures it was drawn from
    And none of them carries a script or a style of its own

    Examples:
      | page                   | number |
      | /retention             | 7      |
      | /retention/predictions | 4      |

  Scenario: Taken along
    When she takes the picture by-book along
    Then its drawing stands by itself, with its title and its sentence
    And its data hold row for row what stands in its table
    And it is there as a picture of dots too, on light paper and on dark

  Scenario: A title that would calculate, and run
    Given a book is called "=1+1 <b>Walden</b>"
    When she opens the page /retention
    Then the pictures and the tables bear "=1+1 <b>Walden</b>" as it stands
    And the data of "known" have it as "'=1+1 <b>Walden</b>"
