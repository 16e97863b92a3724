"""Verbs of two senses: the words after them tell an act from a state of mind."""

import re

VISIBLE_WITH = {
    verb: re.compile(pattern)
    for verb, pattern in {
        "balance": r".*\b(?:books?|accounts?|budgets?)\b",
        "manage": r".*\b(?:books?|accounts?|budgets?)\b|(?:the|an?|our) (?!stress|anger|time"
        r"|money|emotions?|feelings?|expectations?|reactions?|pressure|worry|conflict)\S+",
        "learn": r"(?!(?:how )?to (?:be|feel|accept|love|trust|live|let|think|appreciate)\b"
        r"|from|more about)",
        "have": r"(?!more|less|an open|a (?:better|more|positive)|no fear|fewer|higher)\S",
        "get": r"(?!better|more|less|angry|over|closer|used|organised|fit|healthy|along|on "
        r"(?!the bus|my)|in (?!touch))\S",
        "look": r"(?:over|after(?! myself| my (?:own|health|mind|body|self))|up|at|"
        r"through|out|in|(?:\w+ ){1,3}in the (?:eye|face))\b(?! (?:the "
        r"bright|things|life|myself))",
        "stand": r"(?!(?:up )?for (?:myself|what|my|others|the truth|justice|something)"
        r"|by (?:my|what))"
        r"(?:up|at|in|on|by|for|\d)",
        "hold": r"(?:the|a|an|our|my|her|his|\d+)\b",
        "see": r"(?:the|a|my|our|his|her|dr|mr|mrs|ms|doctor|aunt|uncle|\d+)\b",
        "find": r"(?:the|a|an|my|out|to|\d+)\b",
        "build": r"(?:the|a|an|my|\d+)\b",
        "accept": r"(?:the|a|an|my|\d+)\b",
        "raise": r"(?:the|a|an|my|\d+)\b",
        "welcome": r"(?:the|a|an|my|\d+)\b",
        "attend": r"\S",
        "try": r"(?:\d+|an?|the|every|each) (?!new (?:attitude|approach|outlook|way)|best|bit)\S",
        "reduce": r".*\d",
        "limit": r".*\d",
        "increase": r".*\d",
        "live": r"on .*\d",
        "question": r"(?:\d+|every|each|the|an?)\b",
        "examine": r"(?:\d+|every|each|the|an?)\b(?! (?:facts|truth|day|past))",
        "compare": r"(?:\d+|the|our|prices|notes)\b",
        "explore": r"(?:\d+|the|an?) (?!idea|ideas|world|meaning|possib|unknown|self|past|new)",
        "judge": r"the (?!world|past|book)\S+ (?:at|in|of|for)\b",
        "mind": r"(?:the|my|our|his|her|[^\W\d_]+ 's) (?!own|business|gap|manners|words|tongue"
        r"|present|moment)\S+",
        "act": r"in (?:the|an?|my|our)\b (?!moment|way|spirit|manner|interests?|world|best)",
        "connect": r"the\b",
        "engage": r"an?\b",
        "maintain": r"(?:the|my|our) (?!balance|peace|habit|right|relation|distance|faith|calm"
        r"|composure|spirit|standards?)\S+",
        "adopt": r"an? (?:dog|cat|puppy|kitten|donkey|hen|child|rescue)",
        "commit": r".* to memory\b",
        "devote": r".*(?:\d|\bhour\b)",
        "dedicate": r".*(?:\d|\bhour\b)",
        "treat": r"(?:the|my|our) \S+(?: \S+)? (?:to (?:an?|the|lunch|dinner|tea|supper|coffee|\d)"
        r"|with oil)\b",
        "wish": r"(?!to\b|for\b|that\b|i\b)\S+.*\b(?:good|happy|luck|joy)\b",
        "shine": r"(?:my|the|our)\b",
        "challenge": r".* to (?:an?|chess|draughts)\b",
        "grow": r"(?!as\b|in\b|more|less|closer|up\b|old|into|from|towards?|with\b|through)\S+"
        r"(?: \S+){0,3} (?:in|on|against|along|from|under|by|for) (?:the|my|our|an?)\b",
        "stay": r"(?:home|at|with|for|in|off|out|away|until|behind|up|silent|indoors|seated)\b"
        r"(?! (?:the moment|touch with my feelings|peace|control))",
    }.items()
}
VISIBLE_WITH["remain"] = VISIBLE_WITH["stay"]
"""Verbs of mind and being that are acts with the right words after them."""
INVISIBLE_WITH = {
    verb: re.compile(pattern)
    for verb, pattern in {
        "let": r"go(?: of\b| ?\.?$)",
        "give": r"up ?\.?$",
        "take": r"(?:things|life|everything|myself) (?:as|easy|easier|slowly|slower|lightly|less"
        r"|more|1|seriously)(?!\S)|(?:it|things) easy",
        "put": r"(?:others?|people|everyone|everybody|my \w+|family|\w+ 's \w+) (?:1th|before)\b",
        "open": r"(?:my|our) (?:mind|heart|eyes|soul)|(?:up|myself) ?(?:to .*)?$",
        "change": r"(?:my|our|the) (?:attitude|mind|ways?|outlook|behaviou?r|life|lives|habits?"
        r"|thinking|perspective|approach|tune|world)|myself|for the better",
        "follow": r"(?:my|our) (?:heart|conscience|dreams?|instincts?|bliss|gut)",
        "turn": r"over a new leaf|(?:a|the) (?:corner|page on)|(?:towards?|to) (?:life|hope|joy"
        r"|the (?:light|good|positive))",
        "wake": r"up to (?!\d|@|the (?:alarm|radio|bell))",
        "rise": r"above|to the (?:occasion|challenge)",
        "make": r"(?:new |more |better )?friends\b",
        "weigh": r"(?:my|our|every|each) words?",
        "mend": r"(?:my|our) ways",
        "end": r"(?:each|every|the|my) (?:day|morning|evening|night) (?:with|in) (?:hope|joy|peace"
        r"|gratitude|love|patience|kindness|courage|calm)",
        "move": r"(?:on|forward|past .*) ?\.?$",
        "step": r"(?:back|up) ?\.?$",
        "start": r"(?:each|every|the|my) (?:day|morning|week) (?:with|in) (?:hope|joy|peace"
        r"|gratitude|love|patience|kindness|courage|calm)|(?:over|afresh|anew|again) ?\.?$",
        "begin": r"(?:each|every|the|my) (?:day|morning|week) (?:with|in) (?:hope|joy|peace"
        r"|gratitude|love|patience|kindness|courage|calm)|(?:over|afresh|anew|again) ?\.?$",
        "do": r"(?:my|our|the) best|(?:better|good|well|more|less|right|the right thing)(?:"
        r" by .*)? ?\.?$",
        "spend": r"(?:more|less) (?:time|energy)",
        "listen": r"(?:better|more|people|others|to (?:people|others))\b ?(?:carefully)? ?\.?$"
        r"|(?:better|kindly|patiently|gently|fully)|more (?:carefully|closely|attentively|openly)",
        "speak": r"(?:better|kindly|patiently|gently|wisely|mindfully)",
        "talk": r"(?:better|kindly|patiently|gently|wisely|mindfully)",
        "work": r"(?:better|simply|mindfully)|on .*\b(?:myself|patience|temper|attitude"
        r"|character|confidence|habits?)\b",
        "support": r"(?:more|(?:other )?people|others|everyone|everybody)? ?\.?$",
        "serve": r"(?:more|(?:the |other )?people|others|everyone|everybody)? ?(?:better)? ?\.?$",
        "lead": r"(?:more|(?:other )?people|others)? ?(?:better)? ?\.?$",
    }.items()
}
"""Verbs of doing that are no acts with these words after them."""
