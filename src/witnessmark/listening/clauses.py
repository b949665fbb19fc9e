"""Where does one statement end and the next begin, when nobody wrote the full stops?

Marks and pauses decide where there are any. Elsewhere a statement ends where another subject takes another verb: a
pronoun and its verb, a named thing and its verb, a verb whose subject is left out ("tested it", "couldn't see"), a "no
X" after something complete, a thing named after something complete. What follows "that", "when" or "which" belongs to
the statement it stands in. Rules look at closed classes of words (``terms.toml``) and at the names of the packs, so
that nothing depends on any one trade word.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from witnessmark.listening.terms import cues, members
from witnessmark.listening.words import Token

__all__ = ["Clause", "Mark", "clauses"]

#: Words after which a statement that never ends is cut, so that other languages and noise stay harmless.
LONGEST = 40
_REACH = 6
_CHAIN = frozenset({"not", "be", "been", "being", "to", "have", "had", "got", "still", "just", "also", "really", "all",
                    "very", "going", "never", "both"})  # fmt: skip
_COPULAS = frozenset({"is", "are", "was", "were", "be", "am", "'s", "looks", "look", "seems", "feels"})
#: After these a statement about what is known follows, not a new one.
_KNOWING = frozenset({"think", "thinking", "guess", "guessing", "say", "says", "said", "believe", "suppose", "told", "hope",
                      "know", "mean", "figure", "figured", "suspect", "assume", "sure", "bet", "thought", "certain"})  # fmt: skip
#: After these "you" and "it" are what the verb is done to.
_TAKING = frozenset({"tell", "let", "give", "show", "told", "want", "ask", "call", "need", "make", "get", "keep", "leave",
                     "put", "touch", "see", "replace", "find", "feel", "hear", "has", "have", "had", "walk", "walking", "run",
                     "ran", "running", "open", "opened", "opening", "close", "closed", "closing", "test", "tested", "testing",
                     "check", "checked", "checking", "push", "pushed", "pull", "pulled", "pulling", "turn", "turned", "turning",
                     "fill", "filled", "filling", "hit", "took", "taking", "blocked", "shut", "flush", "flushed", "press",
                     "pressed", "move", "moved", "moving", "drain", "drained", "draining", "start", "started", "starting",
                     "light", "lit", "unplug", "plug", "set", "setting", "pour", "poured", "tripping", "trip", "reset",
                     "looking", "access", "reach", "enter", "inspect", "operate", "operated", "remove", "removed", "use",
                     "using", "got", "leaving", "left", "tipped", "walked", "above", "seeing", "missing", "lacks", "gives", "shows", "tells", "gave", "on", "for", "to", "with"})  # fmt: skip


@dataclass(frozen=True, slots=True)
class Mark:
    """A name of the packs in the words: ``component`` or ``value``, from *start* to *end* (exclusive)."""

    start: int
    end: int
    component: bool


@dataclass(frozen=True, slots=True)
class Clause:
    """Tokens *start* to *end* (exclusive) that make one statement."""

    start: int
    end: int


class _Grammar:
    """The word classes, looked up once."""

    def __init__(self) -> None:
        def get(name: str) -> frozenset[str]:
            return members("clauses", name)

        self.subjects, self.personal = get("subjects"), get("personal")
        self.conjunctions, self.subordinators = get("conjunctions"), get("subordinators")
        self.conditionals = get("conditionals")
        self.aux, self.verbs, self.plural = get("auxiliaries"), get("verbs"), get("plural_verbs")
        self.determiners, self.quantifiers = get("determiners"), get("quantifiers")
        self.sides, self.adjectives, self.prepositions = get("sides"), get("adjectives"), get("prepositions")
        self.adverbs, self.locatives = get("adverbs"), get("locatives")
        self.openers, self.elided = cues("clauses", "openers"), cues("clauses", "elided")
        self.retract = cues("scopes", "retract")
        self.adverse, self.sound = members("conditions", "adverse"), members("conditions", "sound")


_GRAMMAR: list[_Grammar] = []


def _grammar() -> _Grammar:
    if not _GRAMMAR:
        _GRAMMAR.append(_Grammar())
    return _GRAMMAR[0]


class _Cutter:
    """Finds the cuts in one run of tokens between hard marks."""

    def __init__(self, tokens: Sequence[Token], marks: dict[int, Mark]) -> None:
        self.norms = [t.norm for t in tokens]
        self.marks = marks
        self.ends = {m.end: m for m in marks.values()}
        self.inside = {i for m in marks.values() for i in range(m.start + 1, m.end)}
        self.g = _grammar()

    def word(self, index: int) -> str:
        return self.norms[index] if 0 <= index < len(self.norms) else ""

    def is_verb(self, index: int) -> bool:
        """Whether a finite verb stands here."""
        word = self.word(index)
        if index in self.inside or (index in self.marks and self.marks[index].end - index > 1):
            return False
        if word in self.g.aux:
            return True
        if word in self.g.verbs:
            before, after = self.word(index - 1), self.word(index + 1)
            if (
                before in self.g.determiners
                or before in self.g.adjectives
                or after in {"is", "are", "was", "were", "has"}
            ):
                return False
            return not (before in self.g.prepositions and before not in {"up", "down", "on", "off", "in", "out"})
        if word in self.g.plural:
            return (index in self.ends and self.word(index - 1).endswith("s")) or self.word(index - 1) in {
                "they", "i", "we", "you", "both", "all", "these", "those", "not", "to"}  # fmt: skip
        return False

    def verb_after(self, index: int) -> int | None:
        """The verb of a subject that ends at *index*, adverbs and place phrases passed over."""
        at, in_phrase = index, 0
        while at < min(len(self.norms), index + _REACH):
            if self.is_verb(at):
                return at
            word = self.norms[at]
            if word in self.g.personal or word in {"it", "there"} or word in self.g.conjunctions:
                return None
            if word in self.g.prepositions:
                in_phrase = 4  # "on the gas line", "by the washer"
            elif word in self.g.adverbs or word in self.g.locatives:
                pass
            elif in_phrase > 0 or at in self.marks:
                in_phrase -= 1
            else:
                return None
            at = self.marks[at].end if at in self.marks else at + 1
        return None

    def left(self, index: int, floor: int) -> int:
        """Where the name that stands at *index* begins: articles, adjectives, "two of the", "bottom of the"."""
        at = index
        while at > floor:
            word = self.word(at - 1)
            if at in self.ends and self.ends[at].component:
                break
            if word == "one" and self.word(at - 2) in {"not", "is", "this", "that", "other", "the", "no"}:
                break
            if word in self.g.determiners or word in self.g.adjectives or word in self.g.quantifiers:
                if word in {"that", "this", "it"} and self.is_verb(at):
                    break
                at -= 1
            elif at in self.ends and not self.ends[at].component and self.ends[at].start >= floor:
                if self.word(self.ends[at].start - 1) in _COPULAS:
                    break  # "needs to be metal | outlet": the value was the predicate
                at = self.ends[at].start
            elif word == "of" and at - 2 >= floor and (
                self.word(at - 2) in self.g.quantifiers or self.word(at - 2) in self.g.sides
            ):  # fmt: skip
                at -= 2
            else:
                break
        return at

    def subject(self, index: int) -> bool:
        """Whether a pronoun with its verb begins here."""
        word = self.word(index)
        if word not in self.g.subjects or index in self.inside or index in self.marks:
            return False
        after = index + 1
        if word in self.g.personal:
            taken = word == "you" and (self.is_verb(index - 1) or self.word(index - 1) in _TAKING)
            return not taken and self.word(after) not in {"", "beam", "joist"}
        if word in {"here", "there"}:
            return self.word(after) in {"is", "are", "was", "were", "'s"} or (
                word == "there" and self.word(after) in self.g.aux
            )
        if word in {"this", "that", "these", "those", "each", "some", "which"} and self.word(after) in {"one", "ones"}:
            after += 1
        if word == "one" and self.word(index - 1) in {"that", "this", "other", "no", "the", "which", "another"}:
            return False
        while self.word(after) in {"just", "still", "really", "also", "actually", "all", "both", "never", "barely"}:
            after += 1
        return self.is_verb(after)

    def complete(self, start: int, index: int) -> bool:
        """Whether the words from *start* to *index* can stand as a statement."""
        return (
            any(self.is_verb(i) for i in range(start, index))
            or index - start >= _REACH
            or ("no" in {self.word(start), self.word(start + 1)} and index - start > 1 + (self.word(start) != "no"))
        )

    def begins(self, start: int, index: int) -> int | None:
        """Where a cut falls, when the word at *index* shows that a new statement has begun; None otherwise."""
        g = self.g
        word, before = self.word(index), self.word(index - 1)
        if g.retract.at(self.norms, index) and index not in self.inside:
            return index
        opener = g.openers.at(self.norms, index)
        if opener and not (
            before in g.determiners or before in {"is", "are", "it", "not", "test", "tests", "look", "looks"}
        ):
            if word in {"well", "back", "over", "up"} and before in g.prepositions | {"as", "very", "drain", "drains"}:
                return None
            return index
        if word == "now" and self.subject(index + 1):
            return index
        if self.subject(index):
            return self._joint(start, index)
        if index in self.marks and self.marks[index].component:
            found = self._named(start, index)
            if found is not None:
                return found
        if self.is_verb(index):
            if self._asks(index):
                return index
            found = self._second_verb(start, index)
            if found is not None:
                return found
        return self._elided(start, index)

    def _asks(self, index: int) -> bool:
        """Whether a question begins here that is answered at once ("is that aluminum, no")."""
        return (
            self.word(index) in self.g.aux
            and self.word(index + 1) in {"that", "this", "it", "those", "these", "they", "you", "we", "there"}
            and any(self.word(i) in {"no", "nope", "yeah", "yep", "yes"} for i in range(index + 3, index + 6))
        )

    def floor(self, start: int, index: int) -> int:
        """The first word that can belong to a new name: past the last verb, and past one word of its predicate."""
        verb = next((i for i in range(index - 1, start - 1, -1) if self.is_verb(i)), None)
        if verb is None:
            return start
        at = verb + 1
        while self.word(at) in _CHAIN:
            at += 1
        if self.word(verb) in _COPULAS or self.word(at - 1) in {"be", "been", "got"}:
            at += 1
        return min(index, at)

    def _joint(self, start: int, index: int) -> int | None:
        before = self.word(index - 1)
        if before in self.g.conjunctions:
            cut = index - 1
            return cut if cut > start else None
        if before in self.g.conditionals:
            cut = index - 2 if self.word(index - 2) in {"what", "even", "and", "but", "so", "now"} else index - 1
            if self.word(index - 2) in {"sure", "certain", "know", "see", "tell"}:
                return None
            return cut if cut > start else None
        if before in _KNOWING:
            return None
        if before == "that" and (self.word(index - 2) in self.g.prepositions or self.word(index - 2) in _TAKING):
            return index  # "any of that | i am running"
        if before in self.g.subordinators:
            # "that i can see" stays
            return index if before == "like" and self.complete(start, index) else None
        return index if index > start else None

    def _named(self, start: int, index: int) -> int | None:
        mark = self.marks[index]
        begin = self.left(index, self.floor(start, index))
        before = self.word(begin - 1)
        if begin <= start or (mark.start == begin and self.word(begin) in self.g.prepositions):
            return None
        verb = self.verb_after(mark.end)
        topic = self.subject(mark.end) and self.word(mark.end) in self.g.personal | {"it"}
        if before in self.g.conjunctions and (verb is not None or topic):
            return begin - 1 if begin - 1 > start else None
        if before in self.g.conditionals:
            return begin - 1 if begin - 1 > start else None
        if (
            before in self.g.subordinators
            or before in self.g.prepositions
            and before not in {"up", "down", "out", "on", "off", "in"}
        ):
            return None
        particle = before in {"up", "down", "out", "on", "off", "in"}
        if (
            self.is_verb(begin - 1)
            or before in _TAKING - {"on"}
            or before in self.g.determiners | {"not", "be", "of", "and"}
        ):
            return None
        if particle and not (self._ends_particle(start, begin)):
            return None
        if (verb is not None or topic) and self.complete(start, begin):
            return begin
        if self.complete(start, begin) and (
            before in self.g.locatives or particle or before in self.g.adverse or before in self.g.sound
            or before in {"percent", "degrees", "inches", "feet", "psi", "amps"} or begin - 1 in {m.end - 1 for m in self.marks.values()}
        ):  # fmt: skip
            joined = begin in self.ends and self.ends[begin].component and begin == index
            return None if joined and verb is None else begin
        return None

    def _ends_particle(self, start: int, begin: int) -> bool:
        """Whether the particle before *begin* closes what was said ("backs off", "pumped down") and opens no phrase."""
        verb = next((i for i in range(begin - 2, max(start, begin - 6) - 1, -1) if self.is_verb(i)), None)
        return verb is not None and begin - 1 - verb <= 3 and self.verb_after(self.marks_end(begin)) is not None  # noqa: PLR2004 - "shut it back off"

    def marks_end(self, begin: int) -> int:
        """The end of the name that begins at or just after *begin*."""
        for at in range(begin, begin + _REACH):
            if at in self.marks:
                return self.marks[at].end
        return begin

    def _second_verb(self, start: int, index: int) -> int | None:
        """A verb with a subject of its own, when the statement has said something already."""
        g = self.g
        last = next((i for i in range(index - 1, start - 1, -1) if self.is_verb(i)), None)
        before = self.word(index - 1)
        if last == index - 1 or (last is None and index - start < _REACH):
            return None
        if before in {"not", "to"} | g.subordinators | g.conditionals | g.conjunctions:
            return None  # "opens and closes", "which is"
        if last is not None and before in g.adverbs and last >= index - 3:  # noqa: PLR2004 - "is just barely holding"
            return None
        near = range(max(start, index - 5, (last or start) + 1), index)
        if any(self.word(i) in g.subordinators | g.conditionals for i in near):
            return None
        least = start if last is None else self.floor(start, index)
        noun = index
        for _ in range(3):
            while (
                noun > least
                and self.word(noun - 1) in g.adverbs | g.locatives | g.prepositions
                and noun not in self.ends
            ):
                noun -= 1
            mark = self.ends.get(noun)
            begin = self.left(mark.start if mark else noun - 1, least)
            if begin < least or noun <= least:
                return None
            if self.word(begin - 1) not in g.prepositions or begin <= least:
                break
            noun = begin - 1  # "outlet by the washer is": the subject stands before the place
        else:
            return None
        if self.word(begin - 1) in g.conjunctions | g.conditionals:
            begin -= 1
        if self.word(begin - 1) in g.determiners:
            return None
        return begin if begin > start else None

    def _elided(self, start: int, index: int) -> int | None:
        before = self.word(index - 1)
        g = self.g
        if self.word(index) == "no" and self.complete(start, index):
            if self.is_verb(index - 1) or before in {
                "not",
                "wait",
                "with",
                "of",
                "or",
                "be",
                "see",
                "got",
                "have",
                "is",
            }:
                return None
            if before in g.conjunctions:
                return index - 1 if index - 1 > start else None
            return None if before in g.prepositions and before not in {"up", "on", "off", "down", "in"} else index
        found = g.elided.at(self.norms, index)
        if not found or not self.complete(start, index):
            return None
        if before in g.conjunctions:
            tail = self.word(index) in {
                "could",
                "can",
                "did",
                "might",
                "may",
                "maybe",
                "probably",
                "possibly",
                "not",
                "is",
            }
            return index - 1 if tail and index - 1 > start else None
        if index in self.ends and self.ends[index].component:
            held = self.left(self.ends[index].start, start)
            if self.is_auxiliary(index) and self.word(held - 1) not in g.prepositions:
                return None
        done_to = before in {"it", "them", "that", "this"} and self.word(index - 2) in _TAKING
        if not done_to and before in g.subjects | g.subordinators | {
            "to",
            "not",
            "be",
            "been",
            "was",
            "were",
            "is",
            "are",
            "has",
            "have",
            "got",
            "get",
            "am",
        }:
            return None
        if (
            before in g.adverbs
            and self.is_verb(index - 2)
            or before in g.prepositions - {"up", "down", "on", "off", "in", "out"}
        ):
            return None
        if (
            before in g.determiners
            or index - 1 in {m.end - 1 for m in self.marks.values()}
            and not self.is_auxiliary(index)
        ):
            # "the shower running": a name and what it does
            return None if before in g.determiners or index - self.ends[index].start == index - start else index
        return index

    def is_auxiliary(self, index: int) -> bool:
        """Whether an auxiliary stands here."""
        return self.word(index) in self.g.aux


def _cuts(tokens: Sequence[Token], marks: dict[int, Mark]) -> list[int]:
    cutter = _Cutter(tokens, marks)
    found: list[int] = []
    start = 0
    index = 1
    while index < len(tokens):
        cut = cutter.begins(start, index)
        if cut is not None and cut > start:
            found.append(cut)
            start = cut
        elif index - start >= LONGEST:
            found.append(index)
            start = index
        index += 1
    return found


def clauses(tokens: Sequence[Token], marks: Sequence[Mark]) -> list[Clause]:
    """The statements in the tokens, in order, covering all of them."""
    found: list[Clause] = []
    begin = 0
    by_start = {m.start: m for m in marks}
    for index, token in enumerate(tokens):
        if not token.hard and index + 1 < len(tokens):
            continue
        end = index + 1
        here = {
            m.start - begin: Mark(m.start - begin, m.end - begin, m.component)
            for i in range(begin, end)
            if (m := by_start.get(i)) and m.end <= end
        }
        edges = [begin, *(begin + cut for cut in _cuts(tokens[begin:end], here)), end]
        found += [Clause(a, b) for a, b in zip(edges, edges[1:], strict=False)]
        begin = end
    return found
