"""Forms of English words that no stem brings together: plain data."""

from functools import lru_cache

_FORMS = """
arise arose arisen; awake awoke awoken; bear bore born borne; beat beaten; become became;
begin began begun; bend bent; bind bound; bite bit bitten; bleed bled; blow blew blown; break
broke broken; breed bred; bring brought; build built; burn burnt; buy bought; catch caught;
choose chose chosen; cling clung; come came; creep crept; deal dealt; dig dug; draw drew drawn;
dream dreamt; drink drank drunk; drive drove driven; eat ate eaten; fall fell fallen; feed fed;
feel felt; fight fought; find found; flee fled; fling flung; fly flew flown; forbid forbade
forbidden; forget forgot forgotten; forgive forgave forgiven; forsake forsook forsaken; freeze
froze frozen; get got gotten; give gave given; go goes went gone; grind ground; grow grew grown;
hang hung; hear heard; hide hid hidden; hold held; keep kept; kneel knelt; know knew known; lay
laid; lead led; leap leapt; learn learnt; leave left; lend lent; lie lay lain; lose lost; make
made; mean meant; meet met; mistake mistook mistaken; overcome overcame; pay paid; ride rode
ridden; ring rang rung; rise rose risen; run ran; say said; see saw seen; seek sought; sell
sold; send sent; shake shook shaken; shine shone; shoot shot; show shown; shrink shrank shrunk;
sing sang sung; sink sank sunk; sit sat; slay slew slain; sleep slept; speak spoke spoken; spend
spent; spring sprang sprung; stand stood; steal stole stolen; stick stuck; strike struck
stricken; strive strove striven; swear swore sworn; sweep swept; swim swam swum; swing swung;
take took taken; teach taught; tear tore torn; tell told; think thought; throw threw thrown;
tread trod trodden; understand understood; undertake undertook undertaken; wake woke woken; wear
wore worn; weave wove woven; weep wept; win won; withdraw withdrew withdrawn; write wrote
written; child children; foot feet; tooth teeth; man men; woman women; mouse mice; goose geese;
life lives; wife wives; thief thieves; wolf wolves; knife knives; half halves; loaf loaves;
hoof hooves; self selves; ox oxen; brother brethren; person people; good better best; bad worse
worst; far farther further; little less least
"""


@lru_cache(maxsize=1)
def _bases() -> dict[str, str]:
    return {
        form: forms[0]
        for forms in (line.split() for line in _FORMS.split(";"))
        for form in forms[1:]
    }


def base_of(word: str) -> str:
    """Return the base of an irregular form, and any other word as it is."""
    return _bases().get(word, word)
