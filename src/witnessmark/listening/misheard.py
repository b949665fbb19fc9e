"""What may have been said where the words as heard name nothing? Guesses to show beside the drafts, never applied.

A guess is made only for words that name nothing and are no everyday words of such talk; only of words by which the packs
call what is in focus, what was spoken of lately, what stands in the place, or what is of the same system; and only where
they sound much alike (``likeness``). The further from the focus, the more alike they must be.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType

from witnessmark.listening.boundaries import familiar
from witnessmark.listening.drafts import Misheard
from witnessmark.listening.grammar import GRAMMAR
from witnessmark.listening.lexicon import Lexicon, stems
from witnessmark.listening.likeness import likeness
from witnessmark.listening.numerals import number_words
from witnessmark.listening.sounds import sound
from witnessmark.listening.statement import Statement
from witnessmark.listening.terms import members
from witnessmark.listening.words import Token, Word, quoted, root, stem

__all__ = ["misheard"]

#: Shortest word, fewest sounds, and shortest word that several words can be.
_SHORTEST, _FEWEST_SOUNDS, _SHORTEST_OF_SEVERAL = 4, 2, 5
#: How many letters more or fewer a word may have than words that it was heard as.
_LETTERS_APART = 4
#: How many words together may be one.
_TOGETHER = 3
#: After these a verb follows, and no name.
_BEFORE_VERBS = frozenset({"to", "i", "we", "you", "they", "he", "she", "will", "would", "can", "could", "should", "do", "does",
                           "did", "not", "might", "let"})  # fmt: skip
#: Least likeness of a strange word, of a word that is one by itself, of several words, of several with a small one.
_STRANGE, _KNOWN, _SEVERAL, _WITH_SMALL = 0.80, 0.86, 0.84, 0.86
#: How much more alike it must be, the less likely the thing is to be meant.
_FOCUS, _RECENT, _PLACE, _SYSTEM = 0.0, 0.02, 0.03, 0.07
#: How much less where the guess completes a name ("belief valve"), how much more where it is only said of a fault.
_COMPLETES, _OF_FAULT = -0.12, 0.05
#: Of guesses at overlapping words, that holds which explains more of them.
_EACH_STRANGE, _EACH_WORD = 0.04, 0.02
#: So much of a longer word is that word itself with an ending.
_MOST_OF = 0.7
#: How many of the things spoken of lately still count.
_LATELY = 4


@dataclass(frozen=True, slots=True)
class _Vocabulary:
    """The words by which the packs call each kind and its parts, and what is said of them.

    ``of`` gives kind and part of a word, ``exact`` the words by their sounds, ``near`` the same with one sound left out,
    ``faults`` the words that only tell of faults, ``letters`` the letters of each word.
    """

    of: Mapping[str, Mapping[str, str | None]]
    exact: Mapping[str, tuple[str, ...]]
    near: Mapping[str, tuple[str, ...]]
    faults: frozenset[str]
    letters: Mapping[str, frozenset[str]]


@cache
def _small() -> frozenset[str]:
    """Words of the language that are never guessed at by themselves."""
    lists = ("determiners", "subjects", "personal", "auxiliaries", "prepositions", "conjunctions", "subordinators", "adverbs",
             "verbs", "plural_verbs", "quantifiers", "locatives")  # fmt: skip
    return frozenset(word for name in lists for word in members("clauses", name)) | GRAMMAR.doing


def _said_of(lexicon: Lexicon) -> Iterator[tuple[str, str, str | None, bool]]:
    """Each text of the packs with the kind and part that it is said of, and whether it tells of a fault."""
    packs = lexicon.packs
    for kind in packs.kinds.values():
        for text in (kind.name, *kind.spoken):
            yield text, kind.id, None, False
        for part in kind.parts:
            for text in (part.name, *part.spoken):
                yield text, kind.id, part.id, False
        for name in kind.describe:
            attribute = packs.attributes.get(name)
            for text in [t for value in attribute.values for t in value.spoken] if attribute is not None else ():
                yield text, kind.id, None, False
        for condition, _ in lexicon.conditions.get(kind.id, ()):
            for text in (condition.name, *condition.spoken):
                yield text, kind.id, condition.part, True


def _vocabulary_of(lexicon: Lexicon) -> _Vocabulary:
    general = _small() | {stem(w) for w in _small() | number_words()} | members("clauses", "adjectives")
    general |= members("clauses", "sides")
    of: dict[str, dict[str, str | None]] = {}
    names: set[str] = set()
    for text, kind, part, fault in _said_of(lexicon):
        for word in stems(text):
            if len(word) >= _SHORTEST and word.isascii() and word.isalpha() and word not in general:
                of.setdefault(word, {}).setdefault(kind, part)
                if not fault:
                    names.add(word)
    for word in [word for word in of if word not in names and word in familiar()]:
        del of[word]
    exact: dict[str, list[str]] = {}
    near: dict[str, dict[str, None]] = {}
    for word in sorted(of):
        exact.setdefault(sound(word), []).append(word)
        for key in _around(sound(word)):
            near.setdefault(key, {})[word] = None
    return _Vocabulary(
        MappingProxyType({word: MappingProxyType(kinds) for word, kinds in of.items()}),
        MappingProxyType({key: tuple(words) for key, words in exact.items()}),
        MappingProxyType({key: tuple(words) for key, words in near.items()}),
        frozenset(word for word in of if word not in names or word.endswith(("ing", "ed"))),
        MappingProxyType({word: frozenset(word) for word in of}),
    )


def _around(key: str) -> set[str]:
    """The sounds of a word, and the same with one of them left out; two sounds stay two, for too much is alike to one."""
    coarse = key.translate(_COARSE)
    return {
        coarse,
        *(coarse[:at] + coarse[at + 1 :] for at in range(len(coarse) if len(coarse) > _FEWEST_SOUNDS else 0)),
    }


#: Sounds that are taken for each other so often that they are looked up as one.
_COARSE = str.maketrans("ML", "NR")


#: The vocabulary last made, with the lexicon it belongs to.
_kept: list[tuple[Lexicon, _Vocabulary]] = []


def _vocabulary(lexicon: Lexicon) -> _Vocabulary:
    if not _kept or _kept[0][0] is not lexicon:
        _kept[:] = [(lexicon, _vocabulary_of(lexicon))]
    return _kept[0][1]


class _Context:
    """Which kinds are likely to be meant by a statement: how much more alike a word of theirs must be, and why."""

    def __init__(self, st: Statement) -> None:
        scene = st.scene
        self._kinds = scene.lexicon.packs.kinds
        self._known: dict[str, tuple[float, str] | None] = {}
        self._place = scene.place
        self._spoken = {t.kind for t in (st.thing, scene.focus) if t is not None}
        self._named = {meaning.kind for _, meaning in st.mentions}
        self._lately = {thing.kind for thing in scene.recent[-_LATELY:]}
        self._systems = {self._kinds[k].system for k in self._spoken | self._named | self._lately if k is not None}

    def of(self, kind: str) -> tuple[float, str] | None:
        """What a kind asks for, None where nothing speaks for it."""
        if kind not in self._known:
            self._known[kind] = self._asked(kind)
        return self._known[kind]

    def _asked(self, kind: str) -> tuple[float, str] | None:
        row = self._kinds[kind]
        if kind in self._spoken:
            return _FOCUS, f"{row.name} is spoken of"
        if kind in self._named:
            return _FOCUS, f"{row.name} is named here"
        if kind in self._lately:
            return _RECENT, f"{row.name} was spoken of"
        if self._place.sort in row.sorts:
            return _PLACE, f"{row.name} may stand in the {self._place.name}"
        return (_SYSTEM, f"{row.name} is of the same system") if row.system in self._systems else None

    def likeliest(self, kinds: Iterable[str]) -> tuple[float, str, str] | None:
        """The likeliest of several kinds: what it asks for, its id, and why."""
        found = [(row[0], kind, row[1]) for kind in kinds if (row := self.of(kind)) is not None]
        return min(found, key=lambda row: row[0], default=None)


@dataclass(frozen=True, slots=True)
class _Run:
    """Words of a statement that name nothing, from *start* to *end*, run together; so many of them are ``strange``."""

    start: int
    end: int
    text: str
    key: str
    strange: int
    least: float


def _taken(st: Statement) -> frozenset[int]:
    """Positions inside names, values, numbers, plates and instruments."""
    spans = [(c.start, c.end) for c in st.components] + [(v.start, v.end) for v in st.values] + st.instruments
    spans += [(p.start, p.end) for p in st.plates] + [(q.start, q.end) for q in st.quantities]
    return frozenset(i for a, b in spans for i in range(a, b))


def _is_strange(token: Token, lexicon: Lexicon) -> bool:
    return token.stem not in lexicon.known and token.norm not in lexicon.known


def _runs(st: Statement, taken: Collection[int]) -> Iterator[_Run]:
    """Words that name nothing: strange ones, those that stand where a name belongs, and two or three run together."""
    lexicon, small = st.scene.lexicon, _small()
    free = [at not in taken and token.norm.isascii() and token.norm.isalpha() for at, token in enumerate(st.tokens)]
    strange = [free[at] and _is_strange(token, lexicon) for at, token in enumerate(st.tokens)]
    called = st.thing.label.split() if st.thing is not None and st.thing.kind is None and st.named else []
    for at, token in enumerate(st.tokens):
        if not free[at] or (at and st.norms[at - 1] in _BEFORE_VERBS):
            continue
        alone = strange[at] or token.norm in called
        if alone and len(token.norm) >= _SHORTEST and token.norm not in small and token.norm not in familiar():
            yield _Run(at, at + 1, token.stem, sound(token.stem), strange[at], _STRANGE if strange[at] else _KNOWN)
        text, key = token.norm, sound(token.norm)
        for end in range(at + 2, min(at + _TOGETHER, len(st.tokens)) + 1):
            if not free[end - 1] or st.tokens[end - 2].hard:
                break
            text, key = text + st.tokens[end - 1].norm, key + sound(st.tokens[end - 1].norm)
            ends_small = (token.norm in small, st.tokens[end - 1].norm in small)
            if not all(ends_small) or any(st.tokens[i].norm not in small for i in range(at + 1, end - 1)):
                yield _Run(at, end, text, key, sum(strange[at:end]), _WITH_SMALL if any(ends_small) else _SEVERAL)


def _is_inside(token: Token, word: str, run: _Run) -> bool:
    """Whether a word heard is the guess itself in another form, or already most of it ("crack in" is no "cracking")."""
    most = run.end - run.start > 1 and len(token.norm) >= _MOST_OF * len(word)
    return root(token.norm) == root(word) or (most and (word.startswith(token.norm) or word.endswith(token.norm)))


def _completes(st: Statement, run: _Run, word: str) -> bool:
    """Whether the guess makes a name of the packs with a word beside it."""
    lexicon = st.scene.lexicon
    before, after = st.stems[max(0, run.start - 1) : run.start], st.stems[run.end : run.end + 1]
    return any(
        (found := table.at([*words, ""], 0)) is not None and found[0] == len(words)
        for words in ([*before, word], [word, *after])
        if len(words) > 1
        for table in (lexicon.components, lexicon.values)
    )


def _likely(words: _Vocabulary, run: _Run) -> Sequence[str]:
    """The words of the packs that may be a run: with a strange word in it, those that differ in one sound or two.

    They have half of their letters in common at least.
    """
    if len(run.key) < _FEWEST_SOUNDS:
        return ()
    if not run.strange and run.end - run.start > 1:
        return words.exact.get(run.key, ())
    letters, of_letters = frozenset(run.text), words.letters
    found = {
        word
        for key in _around(run.key)
        for word in words.near.get(key, ())
        if 2 * len(letters & of_letters[word]) >= max(len(letters), len(of_letters[word]))
    }
    if run.end - run.start > 1:  # words run together keep how the one word began
        found = {
            word for word in found if sound(word)[:1] == run.key[0] and abs(len(word) - len(run.text)) <= _LETTERS_APART
        }
    return sorted(found)


def misheard(st: Statement, spoken: Sequence[Word]) -> list[Misheard]:
    """The guesses at words of one statement, in their order; none of them overlap. The scene is not changed."""
    taken = _taken(st)
    words = _vocabulary(st.scene.lexicon)
    rows = [(run, word) for run in _runs(st, taken) for word in _likely(words, run)]
    if not rows:
        return []
    named, context = {st.stems[i] for i in taken}, _Context(st)
    found: list[tuple[float, _Run, Misheard]] = []
    for run, word in rows:
        several = run.end - run.start > 1
        if word in named or (several and len(word) < _SHORTEST_OF_SEVERAL):
            continue
        meant = context.likeliest(words.of[word])
        if meant is None:
            continue
        least = run.least + meant[0] + (_OF_FAULT if word in words.faults else 0.0)
        alike = likeness(run.text, word, least + _COMPLETES if run.strange else least)
        if alike < least and run.strange and _completes(st, run, word):
            least += _COMPLETES
        if alike < least or any(_is_inside(t, word, run) for t in st.tokens[run.start : run.end]):
            continue
        more = _EACH_STRANGE * run.strange + _EACH_WORD * several
        found.append(
            (
                alike - meant[0] + more,
                run,
                _guess(st, spoken, run, _Meant(word, meant[1], words.of[word][meant[1]], meant[2])),
            )
        )
    found.sort(key=lambda row: (-row[0], row[1].start))
    made: list[Misheard] = []
    used: set[int] = set()
    for _, run, guess in found:
        span = range(run.start, run.end)
        if used.isdisjoint(span):
            used.update(span)
            made.append(guess)
    return sorted(made, key=lambda row: row.first)


@dataclass(frozen=True, slots=True)
class _Meant:
    """What a run may stand for: the word, what of the packs is called so, and why that is likely here."""

    word: str
    kind: str
    part: str | None
    why: str


def _guess(st: Statement, spoken: Sequence[Word], run: _Run, meant: _Meant) -> Misheard:
    first, last = st.tokens[run.start].first, st.tokens[run.end - 1].last
    return Misheard(
        st.words[first].start, st.words[last].end, quoted(spoken, first, last), meant.word, meant.kind, meant.part,
        f"sounds like '{meant.word}'; {meant.why}", first, last,
    )  # fmt: skip
