"""Odd digests in the brief notation of `blocks_of`, each with what its reader meant.

Invented readers, books in the public domain. What is expected is written as title, author,
then the other parts by name; `Q` and `P` are pairs of words and locator.
"""

from typing import Any

ODD: dict[str, tuple[str, dict[str, Any]]] = {
    "labels run into the lines, English": (
        "Title - Persuasion\nAuthor - Jane Austen\nRead - May 3rd, 2019\nLength - 249 pages\n"
        "Gist - A word taken eight years late.\nKey ideas:\n- Anne yields\n- Louisa falls\n"
        "To do:\n[ ] Write to Harriet by Friday\n[x] Walk to the sea once in June\n"
        "Lines:\n“You pierce my soul.” p. 222",
        {
            "title": "Persuasion",
            "author": "Jane Austen",
            "finished_on": "2019-05-03",
            "pages": 249,
            "theme": "A word taken eight years late.",
            "points": ["Anne yields", "Louisa falls"],
            "commitments": ["Write to Harriet by Friday", "Walk to the sea once in June"],
            "quotations": [("You pierce my soul.", "p. 222")],
        },
    ),
    "a table with the labels on the left, German": (
        "| Titel | Der Schimmelreiter\n| Autor | Theodor Storm\n| Gelesen am | 3.4.2021\n"
        "| Seiten | 128\n| Zusammenfassung | Der Deich hält nicht, was er kostet.\n"
        "| Kerngedanken | 1. Hauke rechnet / 2. Der Schimmel kommt\n"
        "| Vorsätze | – Jeden Montag den Graben prüfen / – Bis Ostern mit Ole reden\n"
        "| Zitate | „Herr Gott, nimm mich!“ (S. 127)",
        {
            "title": "Der Schimmelreiter",
            "author": "Theodor Storm",
            "finished_on": "2021-04-03",
            "pages": 128,
            "theme": "Der Deich hält nicht, was er kostet.",
            "points": ["Hauke rechnet", "Der Schimmel kommt"],
            "commitments": ["Jeden Montag den Graben prüfen", "Bis Ostern mit Ole reden"],
            "quotations": [("Herr Gott, nimm mich!", "S. 127")],
        },
    ),
    "a definition list, French": (
        "# Fiche de lecture : Germinal\n** Auteur\n- Émile Zola\n** Terminé le\n- 3 avril 2021\n"
        "** Nombre de pages\n- 503\n** En bref\n- La mine mange ceux qui la nourrissent.\n"
        "** Ce qui se passe\n-- Étienne arrive de nuit\n-- La grève dure\n"
        "** Ce que je vais faire\n-- Payer le charbon de Rose avant vendredi\n"
        "** Passages à garder\n> « Du pain ! du pain ! » (p. 334)",
        {
            "title": "Germinal",
            "author": "Émile Zola",
            "finished_on": "2021-04-03",
            "pages": 503,
            "theme": "La mine mange ceux qui la nourrissent.",
            "points": ["Étienne arrive de nuit", "La grève dure"],
            "commitments": ["Payer le charbon de Rose avant vendredi"],
            "quotations": [("Du pain ! du pain !", "p. 334")],
        },
    ),
    "lettered points, Spanish": (
        "# Doña Perfecta\nde Benito Pérez Galdós\nLeído el 7/9/2020, 268 páginas\n## De qué trata\n"
        "Un pueblo entero sonríe y mata.\n## Lo que pasa\na) Llega Pepe / b) Cierran las puertas\n"
        "## Lo que voy a hacer\n- Llamar a mi tía cada domingo\n## Frases para recordar\n"
        "p. 31 — «Usted es un bendito.»",
        {
            "title": "Doña Perfecta",
            "author": "Benito Pérez Galdós",
            "finished_on": "2020-09-07",
            "pages": 268,
            "theme": "Un pueblo entero sonríe y mata.",
            "points": ["Llega Pepe", "Cierran las puertas"],
            "commitments": ["Llamar a mi tía cada domingo"],
            "quotations": [("Usted es un bendito.", "p. 31")],
        },
    ),
    "Roman points, Italian": (
        "** I Malavoglia\n** Giovanni Verga\nFinito l’11 maggio 2022 - 330 pagine\n** Di cosa parla\n"
        "Una casa si perde per una barca di lupini.\n** I punti\nI. La Provvidenza affonda\n"
        "II. ’Ntoni parte soldato\nIII. La casa torna\n** Da fare\n- Rendere a Lia i libri in marzo\n"
        "** Parole da ricordare\n“Ad ogni uccello, suo nido è bello.” – cap. 1",
        {
            "title": "I Malavoglia",
            "author": "Giovanni Verga",
            "finished_on": "2022-05-11",
            "pages": 330,
            "theme": "Una casa si perde per una barca di lupini.",
            "points": ["La Provvidenza affonda", "’Ntoni parte soldato", "La casa torna"],
            "commitments": ["Rendere a Lia i libri in marzo"],
            "quotations": [("Ad ogni uccello, suo nido è bello.", "cap. 1")],
        },
    ),
    "capital lines, Portuguese": (
        "A CIDADE E AS SERRAS\nEça de Queirós\nLido em 2 de março de 2019\nEM RESUMO\n"
        "Um homem cheio de máquinas descobre o pão.\nPONTOS PRINCIPAIS\n1 - Jacinto boceja\n"
        "2 - O comboio perde as malas\nO QUE VOU FAZER\n• Plantar a horta em abril\nTRECHOS\n"
        "“Sua Alteza fora muito bem servido” (p. 88)",
        {
            "title": "A CIDADE E AS SERRAS",
            "author": "Eça de Queirós",
            "finished_on": "2019-03-02",
            "theme": "Um homem cheio de máquinas descobre o pão.",
            "points": ["Jacinto boceja", "O comboio perde as malas"],
            "commitments": ["Plantar a horta em abril"],
            "quotations": [("Sua Alteza fora muito bem servido", "p. 88")],
        },
    ),
    "numbered headings, Dutch": (
        "# 1. Titel\nMax Havelaar\n# 2. Schrijver\nMultatuli\n# 3. In het kort\nKoffie en recht.\n"
        "# 4. Wat er gebeurt\n- Sjaalman geeft een pak\n- Havelaar klaagt aan\n# 5. Wat ik ga doen\n"
        "- Elke vrijdag een brief\n# 6. Mooie zinnen\n- ‘Ik ben makelaar in koffie’ (blz. 1)",
        {
            "title": "Max Havelaar",
            "author": "Multatuli",
            "theme": "Koffie en recht.",
            "points": ["Sjaalman geeft een pak", "Havelaar klaagt aan"],
            "commitments": ["Elke vrijdag een brief"],
            "quotations": [("Ik ben makelaar in koffie", "blz. 1")],
        },
    ),
    "locators on lines of their own, before": (
        "# Emma by Jane Austen\n## Theme\nShe is wrong.\n## Quotations\np. 5\n“One.”\np. 9\n“Two.”",
        {
            "title": "Emma",
            "author": "Jane Austen",
            "theme": "She is wrong.",
            "quotations": [("One.", "p. 5"), ("Two.", "p. 9")],
        },
    ),
    "locators on lines of their own, after": (
        "# Emma by Jane Austen\n## Theme\nShe is wrong.\n## Quotations\n> “One.”\n(ch. 5)\n> “Two.”\n"
        "— ch. 9",
        {"quotations": [("One.", "ch. 5"), ("Two.", "ch. 9")]},
    ),
    "every form of locator": (
        "# Emma by Jane Austen\n## Theme\nx\n## Quotations\n- “A.” p. 54\n- “B.” (pp. 34-35)\n"
        "- “C.” [p. ix]\n- “D.” — pg 12\n- “E.” S. 45\n- “F.”, ch. 20\n- “G.” (§5)\n- “H.” Book II\n"
        "- “I.” Part 3, line 120\n- “J.” 54%\n- “K.” (54)\n- “L.” 54\n- 54: “M.”\n"
        "- Part Two, ch. 3: “N.”\n- “O.” – Act III, scene 2\n- [§ 12] “P.”\n- “Q.” (Finale)\n"
        "- p. 7 – “R.”\n- “S.” (ch. three)",
        {
            "quotations": [
                ("A.", "p. 54"),
                ("B.", "pp. 34-35"),
                ("C.", "p. ix"),
                ("D.", "p. 12"),
                ("E.", "S. 45"),
                ("F.", "ch. 20"),
                ("G.", "§5"),
                ("H.", "Book II"),
                ("I.", "Part 3, line 120"),
                ("J.", "54%"),
                ("K.", "p. 54"),
                ("L.", "p. 54"),
                ("M.", "p. 54"),
                ("N.", "Part Two, ch. 3"),
                ("O.", "Act III, scene 2"),
                ("P.", "§12"),
                ("Q.", "Finale"),
                ("R.", "p. 7"),
                ("S.", "ch. three"),
            ]
        },
    ),
    "every sort of mark": (
        '# Emma by Jane Austen\n## Theme\nx\n## Quotations\n- “A b.” (p. 1)\n- "C d." (p. 2)\n'
        "- 'E f.' (p. 3)\n- ‘G h.’ (p. 4)\n- « I j. » (p. 5)\n- ‹K l.› (p. 6)\n- „M n.“ (p. 7)\n"
        "- ‚O p.‘ (p. 8)\n- »Q r.« (p. 9)\n- „S t.” (p. 10)\n- 「U v」 (p. 11)\n- W x. (p. 12)",
        {
            "quotations": [
                ("A b.", "p. 1"),
                ("C d.", "p. 2"),
                ("E f.", "p. 3"),
                ("G h.", "p. 4"),
                ("I j.", "p. 5"),
                ("K l.", "p. 6"),
                ("M n.", "p. 7"),
                ("O p.", "p. 8"),
                ("Q r.", "p. 9"),
                ("S t.", "p. 10"),
                ("U v", "p. 11"),
                ("W x.", "p. 12"),
            ]
        },
    ),
    "a quotation table with the place first": (
        "# Emma by Jane Austen\n## Theme\nx\n## Passages\n| Where | Words\n| Vol. I, ch. 5 | “One.”\n"
        "| p. 60 | Two with no marks at all",
        {"quotations": [("One.", "Vol. I, ch. 5"), ("Two with no marks at all", "p. 60")]},
    ),
    "author over the title": (
        "Thomas Hardy\nThe Woodlanders\nFinished 1 June 2018\n## Summary\nx\n## Points\n- One",
        {"title": "The Woodlanders", "author": "Thomas Hardy", "finished_on": "2018-06-01"},
    ),
    "a heading of author and title with a dash": (
        "# George Eliot – Silas Marner\n## Summary\nx\n## Points\n- One",
        {"title": "Silas Marner", "author": "George Eliot"},
    ),
    "title with a colon and a by-line": (
        "# Silas Marner: The Weaver of Raveloe\n## by George Eliot\n## Summary\nx\n## Points\n- One",
        {"title": "Silas Marner: The Weaver of Raveloe", "author": "George Eliot"},
    ),
    "a line of details under the title": (
        "# The Mill on the Floss\nGeorge Eliot · Blackwood, 1860 · 579 pp · read 2021-04-03\n"
        "## Summary\nx\n## Points\n- One",
        {
            "title": "The Mill on the Floss",
            "author": "George Eliot",
            "pages": 579,
            "finished_on": "2021-04-03",
            "edition": "Blackwood, 1860",
        },
    ),
    "started and finished": (
        "# Emma\nby Jane Austen\nStarted: 1 March 2021\nFinished: 3 April 2021\nRating: 4/5\n"
        "## Summary\nx\n## Points\n- One",
        {"title": "Emma", "author": "Jane Austen", "finished_on": "2021-04-03"},
    ),
    "facts at the foot under a rule": (
        "# Emma\nby Jane Austen\n## Summary\nx\n## Quotes\n- “One.” (p. 5)\n---\n"
        "ISBN 978-0-14-143958-7\n474 pages\nFinished on April 3rd, 2021",
        {
            "isbn": "9780141439587",
            "pages": 474,
            "finished_on": "2021-04-03",
            "quotations": [("One.", "p. 5")],
        },
    ),
    "facts under a heading of their own at the end": (
        "# Emma\nby Jane Austen\n## Summary\nx\n## Points\n- One\n## About the edition\n"
        "- Publisher: Bentley\n- Pages: 474\n- Finished: 3 April 2021",
        {"edition": "Bentley", "pages": 474, "finished_on": "2021-04-03", "points": ["One"]},
    ),
    "points as headings with paragraphs": (
        "# Emma by Jane Austen\n## Summary\nx\n## Outline\n### 1. She matches (ch. 1)\nShe is sure.\n"
        "### 2. She hurts (ch. 43)\nShe is sorry.",
        {"P": [("She matches: She is sure.", "ch. 1"), ("She hurts: She is sorry.", "ch. 43")]},
    ),
    "points as table rows": (
        "# Emma by Jane Austen\n## Summary\nx\n## Argument step by step\n| Step | What happens | Page\n"
        "| 1 | She matches | 5\n| 2 | She hurts | 340",
        {"P": [("She matches", "p. 5"), ("She hurts", "p. 340")]},
    ),
    "quotations under the points they stand after": (
        "# Emma by Jane Austen\n## Summary\nx\n## Points\n1. She matches\n> “One.” (p. 5)\n"
        "2. She hurts\n> “Two.” (p. 340)",
        {"points": ["She matches", "She hurts"], "A": [1, 2]},
    ),
    "quotations that name their points": (
        "# Emma by Jane Austen\n## Summary\nx\n## Points\n1. She matches\n2. She hurts\n## Quotes\n"
        "- “One.” (p. 5, after point 1)\n- After point 2: “Two.” (p. 340)",
        {"quotations": [("One.", "p. 5"), ("Two.", "p. 340")], "A": [1, 2]},
    ),
    "a theme of three paragraphs": (
        "# Emma by Jane Austen\n## What it comes to\nFirst she is sure.\nThen she is wrong.\n"
        "Then she is loved.\n## Points\n- One",
        {"theme": "First she is sure.\n\nThen she is wrong.\n\nThen she is loved."},
    ),
    "theme without a heading": (
        "# Emma\nby Jane Austen\nA clever girl arranges the hearts of others and learns late that "
        "she had never looked into her own.\n## Points\n- One",
        {
            "author": "Jane Austen",
            "theme": "A clever girl arranges the hearts of others and learns late that she had never "
            "looked into her own.",
        },
    ),
    "judgement in the middle": (
        "# Emma by Jane Austen\n## Summary\nx\n## My verdict\nAgree, on the whole.\n## Points\n- One",
        {"judgement": "Agree, on the whole.", "points": ["One"]},
    ),
    "commitments in sentences": (
        "# Emma by Jane Austen\n## Summary\nx\n## For my life\nI will write to Miss Bates every "
        "Sunday.\nI will ask before I arrange, three times in May.",
        {
            "commitments": [
                "I will write to Miss Bates every Sunday.",
                "I will ask before I arrange, three times in May.",
            ]
        },
    ),
    "commitments in a table with dates": (
        "# Emma by Jane Austen\n## Summary\nx\n## Resolutions\n| What | By when\n"
        "| Write to Miss Bates | 3 May 2021\n| Ask first | every day",
        {"commitments": ["Write to Miss Bates, 3 May 2021", "Ask first, every day"]},
    ),
    "verse quoted over lines": (
        "# Poems by John Keats\n## Theme\nx\n## Quotations\n> “Beauty is truth, truth beauty,—that is "
        "all / Ye know on earth, and all ye need to know.” / (lines 49-50)",
        {
            "quotations": [
                (
                    "Beauty is truth, truth beauty,—that is all\n"
                    "Ye know on earth, and all ye need to know.",
                    "lines 49-50",
                )
            ]
        },
    ),
    "quotations with whose they are": (
        "# Walden by Henry David Thoreau\n## Theme\nx\n## Quotations\n> “Simplify.”\n"
        "— Henry David Thoreau, Walden, p. 91\n> “Be awake.” (Thoreau, p. 90)",
        {"quotations": [("Simplify.", "p. 91"), ("Be awake.", "p. 90")]},
    ),
    "an outline of nested items": (
        "- **Emma** by Jane Austen\n- Summary\n-- She is wrong.\n- Points\n-- One\n-- Two\n- Quotes\n"
        "-- “Three.” p. 3",
        {"points": ["One", "Two"], "quotations": [("Three.", "p. 3")]},
    ),
    "heading words with colons and capitals": (
        "Emma\nJane Austen\nTHEME:\nx\nIDEAS:\n1. One\n2. Two\nI WILL:\n- Three\nQUOTES:\n“Four.” (p. 4)",
        {
            "title": "Emma",
            "author": "Jane Austen",
            "points": ["One", "Two"],
            "commitments": ["Three"],
            "quotations": [("Four.", "p. 4")],
        },
    ),
    "prose that speaks of points and quotations": (
        "# Emma by Jane Austen\n## Theme\nThe summary of it is pride. The point: she looks away.\n"
        "## Points\n- The argument: nobody is asked\n- Passages of time: a ball\n- Quotes are few",
        {
            "theme": "The summary of it is pride. The point: she looks away.",
            "points": [
                "The argument: nobody is asked",
                "Passages of time: a ball",
                "Quotes are few",
            ],
        },
    ),
    "dates in figures, French": (
        "# Bel-Ami\nGuy de Maupassant\nLu le 03/04/2021, 438 p.\n## Résumé\nIl monte par les femmes et "
        "par la presse.\n## Étapes\n- Un\n- Deux",
        {"author": "Guy de Maupassant", "finished_on": "2021-04-03", "pages": 438},
    ),
    "a weekday and a date, German": (
        "# Effi Briest\nTheodor Fontane\nZu Ende gelesen am Samstag, dem 3. April 2021\n## Worum es geht\n"
        "Ein weites Feld.\n## Stationen\n- Eins",
        {"author": "Theodor Fontane", "finished_on": "2021-04-03", "theme": "Ein weites Feld."},
    ),
}
