"""Names by which an author is told from a title that is a name too: *George Eliot, Silas Marner*.

Authors whose books are in the public domain and are read in the seven languages of the
headings. A name that is missing costs a guess and no more: a line of two names is then taken
as a title with its author behind it.
"""

from cards.intake.wording import folded

_SINGLE = frozenset(
    folded(
        "homer homère homero omero hesiod sappho aesop aeschylus sophocles euripides aristophanes "
        "herodotus thucydides xenophon plato platon platón platone platão aristotle aristoteles "
        "aristote epicurus epictetus plutarch lucretius cicero virgil vergil catullus horace ovid "
        "livy seneca tacitus pliny juvenal augustine boethius dante petrarch boccaccio erasmus "
        "machiavelli montaigne shakespeare cervantes molière corneille racine pascal spinoza "
        "voltaire rousseau diderot goethe schiller kant novalis hegel stendhal balzac flaubert "
        "zola "
        "colette multatuli vondel camões pessoa saki confucius laozi rumi hafez"
    ).split()
)
_SURNAMES = frozenset(
    folded(
        "austen brontë eliot dickens thackeray trollope gaskell hardy collins stevenson stoker "
        "wilde "
        "wells kipling conrad james twain hawthorne melville thoreau emerson poe whitman dickinson "
        "alcott wharton crane norris london douglass stowe cooper irving franklin shelley byron "
        "keats "
        "wordsworth coleridge blake burns scott swift defoe fielding richardson sterne goldsmith "
        "johnson boswell gibbon hume locke hobbes mill smith darwin carlyle ruskin arnold pater "
        "butler "
        "meredith gissing chesterton doyle barrie carroll milton bunyan marlowe donne pope dryden "
        "wollstonecraft godwin bacon paine woolf joyce mansfield lawrence forster yeats shaw "
        "goethe schiller lessing kleist hoffmann heine büchner droste-hülshoff keller storm "
        "fontane "
        "raabe stifter mörike eichendorff tieck nietzsche schopenhauer kafka rilke mann hesse "
        "zweig "
        "schnitzler trakl busch marx freud "
        "hugo balzac flaubert zola maupassant sand dumas verne stendhal baudelaire verlaine "
        "rimbaud "
        "mallarmé musset vigny lamartine chateaubriand montesquieu descartes pascal laclos proust "
        "rostand daudet huysmans mérimée nerval tocqueville renan gautier staël sévigné "
        "cervantes galdós bazán clarín alas bécquer larra quevedo góngora calderón lope unamuno "
        "machado hernández darío martí sarmiento isaacs echeverría "
        "manzoni verga leopardi foscolo pirandello svevo deledda collodi carducci alfieri goldoni "
        "ariosto tasso boccaccio petrarca pellico nievo capuana d’annunzio "
        "camões queirós queiroz garrett branco herculano alencar azevedo barreto cunha pessoa "
        "couperus multatuli potgieter beets eeden deken wolff vondel hooft huygens gezelle "
        "tolstoy tolstoi dostoevsky dostoyevsky chekhov turgenev gogol pushkin lermontov goncharov "
        "ibsen strindberg lagerlöf hamsun andersen kierkegaard jacobsen bjørnson "
        "tagore sōseki natsume gibran sienkiewicz prus mickiewicz"
    )
    .replace(" d annunzio", " annunzio")
    .split()
)


def is_single_name(text: str) -> bool:
    """Tell whether a text is an author known by one name: Plato, Voltaire."""
    return folded(text) in _SINGLE


def is_known_surname(text: str) -> bool:
    """Tell whether a text is a known author's name, the surname alone included."""
    words = folded(text).split()
    return bool(words) and (is_single_name(text) or words[-1] in _SURNAMES)


def is_known_author(text: str) -> bool:
    """Tell whether a text is a known author's name, or ends in one."""
    words = folded(text).split()
    return bool(words) and (is_single_name(text) or (len(words) > 1 and words[-1] in _SURNAMES))
