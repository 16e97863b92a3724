"""The words that announce the parts of a digest, in seven languages.

English, German, French, Spanish, Italian, Portuguese and Dutch. The lists are common
practice, no published source.
"""

from cards.intake.heading_words import Part
from cards.intake.wording import folded

KEYWORDS = {
    Part.THEME: (
        "summary summaries gist theme synopsis overview abstract nutshell essence thesis premise "
        "unity brief message précis "
        "zusammenfassung kurzfassung kern thema kernaussage inhaltsangabe "
        "résumé synthèse thème essentiel "
        "resumen tema síntesis riassunto sintesi resumo samenvatting kort strekking"
    ),
    Part.POINTS: (
        "idea ideas point points insight insights argument arguments plot outline takeaway "
        "takeaways lesson lessons event events stage stages step steps structure claim claims "
        "proposition propositions thoughts "
        "ideen punkte gedanken erkenntnisse einsichten handlung gliederung argumente kernpunkte "
        "hauptgedanken kerngedanken hauptpunkte stationen "
        "idées intrigue étapes puntos argumentos trama idee punti argomenti ideias pontos enredo "
        "ideeën punten inzichten argumenten verhaallijn hoofdpunten"
    ),
    Part.COMMITMENTS: (
        "commitment commitments resolution resolutions resolve resolves pledge pledges promise "
        "promises action actions todo todos vow vows intention intentions "
        "vorsätze vorsatz verpflichtungen verpflichtung selbstverpflichtungen maßnahmen "
        "engagement engagements résolutions compromiso compromisos propósitos resoluciones "
        "impegni impegno propositi compromissos voornemens beloften verplichtingen"
    ),
    Part.QUOTATIONS: (
        "quote quotes quotation quotations passage passages excerpt excerpts extract extracts "
        "citation citations zitat zitate textstellen belegstellen extraits citas pasajes "
        "citazioni brani citações trechos passagens citaten fragmenten"
    ),
    Part.JUDGEMENT: (
        "judgement judgment verdict opinion assessment evaluation critique criticism appraisal "
        "view review agreement disagreement agree disagree "
        "urteil bewertung meinung einschätzung jugement avis juicio opinión valoración giudizio "
        "opinione juízo opinião julgamento oordeel mening"
    ),
}
PHRASES = {
    Part.THEME: (
        "in brief|in short|in a nutshell|what it comes to|what the book comes to|what it all comes "
        "to|what it is about|what the book is about|what the book says|what it says|the book in "
        "one paragraph|the book in one sentence|in one paragraph|in a paragraph|in one sentence|"
        "in a sentence|main idea|central idea|the big idea|big idea|the main point|main point|main "
        "argument|central argument|about the book|about|the whole|as a whole|"
        "worum es geht|kurz gesagt|in kürze|en bref|de quoi il "
        "s'agit|en breve|en resumen|in breve|em resumo|em breve|in het kort|waar het over gaat|"
        "idée principale|idea principal|hauptgedanke|kerngedanke"
    ),
    Part.POINTS: (
        "what carries it|what holds it up|what happens|story line|storyline|the story|story|"
        "by what stages|how it goes|how the book goes|"
        "main argument in points|table of ideas"
    ),
    Part.COMMITMENTS: (
        "what i will do|what i'll do|what i am going to do|what i'm going to do|what will i do|"
        "i will|to do|to dos|asks of me|what it asks|what it asks of me|what the book asks|what "
        "the book asks of me|what it asks me to do|next steps|action points|action items|action "
        "steps|what of it|what i want to do|what to do|things to do|what i shall do|i commit to|"
        "was ich tun werde|was ich mache|ce que je vais faire|ce que je ferai|lo que haré|lo que "
        "voy a hacer|cosa farò|o que vou fazer|wat ik ga doen"
    ),
    Part.QUOTATIONS: (
        "words to keep|words worth keeping|worth keeping|lines to keep|lines worth keeping|"
        "sentences to keep|in its own words|in the author's words|in his own words|in her own "
        "words|in the book's own words|the book's own words|words of the book|lines i kept|"
        "favourite lines|favorite lines|memorable lines"
    ),
    Part.JUDGEMENT: (
        "what i think|what i think of it|what i thought|agree or not|agree or disagree|do i agree|"
        "where i agree|where i disagree|is it true|my take|was ich davon halte|ce que j'en pense|"
        "lo que pienso|cosa ne penso|o que penso|wat ik ervan vind"
    ),
}
FILLERS = frozenset(
    folded(
        "the a an my our your key main central major chief leading big core best favourite "
        "favorite favourites favorites notable memorable important selected some few several top "
        "book books in of from to for and on with it its this that author authors s worth keeping "
        "remembering i made liked loved noted kept have want short general whole personal final "
        "overall order one two three four five six seven eight nine ten twelve paragraph sentence "
        "text story list chosen chief direct "
        "die der das den dem ein eine "
        "wichtige wichtigste wichtigsten meine mein zentrale und aus zum buch "
        "le la les l mes mon ma du des de un une principal principale principales principaux cles "
        "cle et livre el los las mis mi y del libro lo gli miei mie mio principali e os as o meus "
        "minhas meu do da livro het een mijn belangrijkste en uit boek"
    ).split()
)
