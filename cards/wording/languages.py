"""Which language a commitment is in: English is checked, others are said not to be.

By words that are common in one of the languages the headings of a digest may be in and
mean nothing in English; a text in another script is in another language. Common practice,
no published source.
"""

import re

_WORDS = {
    "German": """ich wir werde werden will nicht kein keine jeden jede jedes jeder täglich woche
    wochen tag tage tagen monat monate abend morgen abends morgens mit meiner meinem
    meinen meine mein dem der das und oder wenn bis eine einen einer einem zum zur
    für auf nach vor zu bei von beim mal schreiben lesen rufen anrufen""",
    "French": """je nous ne pas chaque jour jours semaine semaines mois soir matin tous toutes les
    des du une avec mon ma mes et ou quand lorsque jusqu'à avant après chez dans
    sur vais écrire lire appeler fois par le la un""",
    "Spanish": """yo nosotros cada día días semana semanas mes meses noche mañana todos todas los
    las una mi mis y o cuando hasta antes después para en voy escribir leer llamar
    veces vez por el al del hacer diario""",
    "Italian": """io noi ogni giorno giorni settimana settimane mese mesi sera mattina tutti tutte
    gli una mio mia miei e quando fino prima dopo per nel nella scrivere scriverò
    leggere leggerò chiamare chiamerò volte volta il lo alla al del non""",
    "Portuguese": """eu nós cada dia dias semana semanas mês meses noite manhã todos todas os uma
    com meu minha meus e quando até antes depois para em vou escrever ler ligar vezes vez
    por não ao à""",
    "Dutch": """ik wij zal zullen niet geen elke iedere dag dagen dagelijks week weken maand
    maanden avond ochtend mijn de het een en of wanneer als voor na naar bij
    schrijven lezen bellen keer""",
}
_ENGLISH = frozenset(
    """i will the a an my to of and or each every day week month in on at by for with
    before after when if until not no it that this once twice write read call ask tell
    is be one two three his her from more me you we our their about than then never
    always""".split()
)
_KNOWN = {name: frozenset(words.split()) for name, words in _WORDS.items()}
_WORD = re.compile(r"[^\W\d_]+(?:'[^\W\d_]+)?")


def other_language(text: str) -> str | None:
    """Return the name of the language a text is in, or None where it can be English.

    "another language" where only its script tells.
    """
    words = _WORD.findall(text.casefold().replace("’", "'"))
    letters = sum(len(word) for word in words)
    latin = sum(character < "\u0250" for word in words for character in word)
    if letters and latin * 2 < letters:
        return "another language"
    english = sum(word in _ENGLISH for word in words)
    counts = {name: sum(word in known for word in words) for name, known in _KNOWN.items()}
    best = max(counts, key=lambda name: counts[name])
    enough = counts[best] > english and (counts[best] >= 2 or len(words) <= 3)
    return best if enough else None
