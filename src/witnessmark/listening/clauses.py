"""Where does one statement end and the next begin, when nobody wrote the full stops?

Marks and pauses decide where there are any. Elsewhere a statement ends where another subject takes another verb: a
pronoun and its verb, a named thing and its verb, a verb whose subject is left out ("tested it", "couldn't see"), a "no
X" after something complete, a thing named after something complete. What follows "that", "when" or "which" belongs to
the statement it stands in. Rules look at closed classes of words (``grammar``) and at the names of the packs, so that
nothing depends on any one trade word.

Long because the rules decide about the same boundary and read as one list; apart, their order would be hidden.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from witnessmark.listening.grammar import GRAMMAR
from witnessmark.listening.syntax import REACH, SHORT, Mark, Syntax
from witnessmark.listening.words import Token

__all__ = ["Clause", "Mark", "clauses", "with_cuts"]

#: Words after which a statement that never ends is cut, so that other languages and noise stay harmless.
LONGEST = 40
#: Words of "no real" before a name.
_NO_REAL = 2


@dataclass(frozen=True, slots=True)
class Clause:
    """Tokens *start* to *end* (exclusive) that make one statement."""

    start: int
    end: int


class _Cutter(Syntax):
    """Finds the cuts in one run of words."""

    def begins(self, start: int, index: int) -> int | None:
        """Where a cut falls, when the word at *index* shows that a new statement has begun; None otherwise."""
        word, before = self.word(index), self.word(index - 1)
        if index not in self.inside and self.retracted(index) is not None:
            return index
        mark = self.marks.get(index)
        plate = mark is not None and mark.sort == "plate" and before not in {"the", "a", "and"}
        if plate or (index in self.ends and self.ends[index].sort == "plate" and word not in GRAMMAR.conjunctions):
            return index
        if index in self.inside:
            return None
        opened = GRAMMAR.openers.at(self.norms, start)
        if opened and index < opened[0]:
            return None
        if self._opens(index, word, before) or self._closed(start, index) or self._some(start, index):
            return index
        if index - 1 in self.commas and self._after_comma(start, index):
            return index
        if self.subject(index):
            return self._joint(start, index)
        if mark is not None and mark.component:
            found = self._named(start, mark)
            if found is not None:
                return found
        if mark is not None and mark.sort == "quantity":
            found = self._measured(start, mark)
            if found is not None:
                return found
        if self.is_verb(index):
            if self._asks(index):
                return index
            hedge = self._hedge(index)
            if hedge and self._in_phrase(index, start):
                return index
            found = self._second_verb(start, index)
            if found is not None:
                return found
        return self._elided(start, index)

    def retracted(self, index: int) -> int | None:
        """Where words end that begin at *index* and take back what was said; None when none do."""
        if self.norms[index] not in GRAMMAR.retracting:
            return None
        return next((found[0] for table in GRAMMAR.retractions if (found := table.at(self.norms, index))), None)

    def _after_comma(self, start: int, index: int) -> bool:
        """Whether a comma parts two statements: something complete before it, and more than a word after it."""
        following = next((i for i in range(index, len(self.norms)) if i in self.commas), len(self.norms) - 1)
        joined = self.word(index) in {"and", "or"} | GRAMMAR.subordinators
        return self.complete(start, index) and following > index and not joined

    def _hedge(self, index: int) -> bool:
        """Whether a hedge begins here that says more than "about"."""
        found = GRAMMAR.elided.at(self.norms, index)
        quantity = self.marks.get(found[0]) if found else None
        return found is not None and found[1] in GRAMMAR.hedges and (quantity is None or quantity.sort != "quantity")

    def _some(self, start: int, index: int) -> bool:
        """Whether "some …" or "a few …" begins something new after a statement that is complete."""
        word, before, after = self.word(index), self.word(index - 1), self.word(index + 1)
        opens = (word in {"some", "several", "lots"} and after not in GRAMMAR.prepositions) or (
            word == "a" and after in {"couple", "few", "bit", "little", "lot"}
        )
        if not opens:
            return False
        held = self.is_verb(index - 1) or before in GRAMMAR.holding
        return not held and index >= self.floor(start, index) + 1 and self.complete(start, index)

    def _opens(self, index: int, word: str, before: str) -> bool:
        opener = GRAMMAR.openers.at(self.norms, index)
        if opener:
            judged = before in GRAMMAR.determiners or before in {"is", "are", "it", "not", "test", "tests", "look", "looks",
                                                               "seems", "works", "work", "drains", "runs"}  # fmt: skip
            loose = word in {"well", "back", "over", "up", "down"} and (
                before in GRAMMAR.prepositions
                or before in {"as", "very", "drain", "window", *GRAMMAR.phrasal}
                or self.is_verb(index - 1)
            )
            participle = word in {"okay", "ok"} and before.endswith(("ed", "ing")) and before != "missing"
            if not judged and not loose and not participle:
                return True
        mark = self.marks.get(index)
        if mark is not None and mark.sort == "place" and self.word(mark.end) in {"next", "now", "again"}:
            return not self._placed(index)
        return word == "now" and self.subject(index + 1)

    def _closed(self, start: int, index: int) -> bool:
        """Whether a closing phrase ends here and something else follows."""
        if self.word(index - 1) not in GRAMMAR.closer_ends or self.word(index) in GRAMMAR.carrying:
            return False
        if self.is_verb(index) or self.word(index) in {"valve", "valves", "switch"}:
            return False
        for size in (2, 3, 4):
            at = index - size
            if at >= start and (found := GRAMMAR.closers.at(self.norms, at, index)) and found[0] == index:
                return at > start or size > 1
        return False

    def _asks(self, index: int) -> bool:
        """Whether a question begins here: "did you", or one that is answered at once ("is that aluminum, no")."""
        word, after = self.word(index), self.word(index + 1)
        if word in GRAMMAR.asking and after in GRAMMAR.persons:
            return self.word(index - 1) not in {
                "what",
                "how",
                "where",
                "which",
                "why",
                "so",
                "as",
                "than",
                "and",
                "neither",
            }
        return (
            word in GRAMMAR.aux
            and after in {"that", "this", "it", "those", "these", "they", "you", "we", "there"}
            and any(self.word(i) in {"no", "nope", "yeah", "yep", "yes"} for i in range(index + 3, index + 6))
        )

    def _in_phrase(self, index: int, start: int) -> bool:
        """Whether what stands before a hedge is the end of a place phrase or an adverb, not its subject."""
        mark = self.ends.get(index)
        if mark is None:
            return self.complete(start, index) and self.word(index - 1) not in GRAMMAR.subjects - {"there", "here"}
        return self.word(self.left(mark.start, start) - 1) in GRAMMAR.prepositions and self.complete(start, index)

    def _joint(self, start: int, index: int) -> int | None:
        before, earlier = self.word(index - 1), self.word(index - 2)
        if before in GRAMMAR.conjunctions:
            cut = index - 1
            return cut if cut > start else None
        if before in GRAMMAR.conditionals:
            if earlier in {"sure", "certain", "know", "see", "tell"}:
                return None
            cut = index - 2 if earlier in {"what", "even", "and", "but", "so", "now"} else index - 1
            return cut if cut > start else None
        if before in {"yeah", "yep", "yup"} and index - 1 == start:
            return None  # "yep it is": an answer
        if before == "know" and earlier == "not" and self.word(index) == "there":
            return index  # "but i don't know | there's a wet spot"
        if before in GRAMMAR.knowing or (before in {"me", "us"} and earlier in GRAMMAR.knowing):
            return None
        if before in {"something", "anything", "everything", "nothing", "thing", "way", "place", "time", "far"}:
            return None  # "not something i inspect"
        if before == "that" and (earlier in GRAMMAR.prepositions or earlier in GRAMMAR.taking):
            return index  # "any of that | i am running"
        if before == "like":
            owed = self.word(index + 1) in {
                "should",
                "would",
                "did",
                "does",
                "found",
                "said",
                "told",
                "mentioned",
                "left",
            }
            return index if self.complete(start, index) and not owed else None
        if before in GRAMMAR.subordinators:
            return None  # "that i can see" stays
        return index if index > start else None

    def _named(self, start: int, mark: Mark) -> int | None:
        begin = self.left(mark.start, self.floor(start, mark.start))
        before = self.word(begin - 1)
        if begin <= start or (mark.start == begin and self.word(begin) in GRAMMAR.prepositions):
            return None
        verb = self.verb_after(mark.end)
        spot = self.ends.get(begin)
        led_in = (
            self.word(start) not in GRAMMAR.taking - GRAMMAR.prepositions
        )  # but not "running water at the hall bath | sink"
        if (
            spot is not None
            and spot.sort == "place"
            and self._placed(spot.start)
            and spot.start - start <= SHORT
            and led_in
        ):
            return begin  # "on to the primary bath | shower running"
        topic = self.subject(mark.end) and self.word(mark.end) in GRAMMAR.personal | {"it"}
        taken_back = mark.end < len(self.norms) and self.retracted(mark.end) is not None
        led = self.marks.get(start)
        if (
            led is not None
            and led.sort == "place"
            and led.end < begin
            and {"again", "now", "next"} >= set(self.norms[led.end : begin])
        ):
            return begin  # "kitchen again | sink leaks"
        if before in GRAMMAR.conjunctions and (verb is not None or topic) and begin - 1 > start:
            return begin - 1
        if before in GRAMMAR.knowing or (
            before in GRAMMAR.conditionals and self.word(begin - 2) in GRAMMAR.knowing | {"see", "tell"}
        ):
            return None  # "not sure if those vents are", "agent said the roof was"
        if before in GRAMMAR.conditionals and begin - 1 > start:
            return begin - 1
        particle = before in GRAMMAR.particles
        adjacent = begin == mark.start and begin in self.ends and self.ends[begin].component
        if adjacent and (mark.weak or (verb is None and self.word(mark.end) == "it")):
            said = self.last_verb(start, begin)
            predicate = said is not None
            return (
                begin if verb is not None and predicate else None
            )  # "this is the garage | meter looks", "circulator flange"
        if before in GRAMMAR.subordinators or (before in GRAMMAR.prepositions and not particle):
            return None
        wanted = before in {"want", "need", "see"} and "what" in self.norms[max(start, begin - 4) : begin]
        phrase = begin in self.ends and self.ends[begin].sort == "condition"
        told = phrase or (before == "missing" and self.word(begin - 2) in GRAMMAR.copulas)
        if not wanted and not told and (self.is_verb(begin - 1) or before in (GRAMMAR.taking - GRAMMAR.particles)):
            return None
        if before in GRAMMAR.determiners | {"not", "be", "of", "and"} or before.endswith("ing"):
            return None
        if particle and not self._ends_particle(start, begin):
            return None
        if not self.complete(start, begin):
            return None
        if verb is not None or topic or taken_back:
            return begin
        said = self.word(begin - 2) in GRAMMAR.copulas | GRAMMAR.adverbs or self.is_verb(begin - 2)
        judged = before in GRAMMAR.judging and said
        last = self.ends.get(begin)
        quantity = last is not None and last.sort in {"quantity", "plate"}
        if last is not None and last.sort == "place" and before in GRAMMAR.sides | {"face"}:
            return begin  # "on the south side | nail pops"
        if (
            last is not None
            and last.component
            and self.word(start) == "no"
            and last.start - start <= _NO_REAL
            and not mark.weak
        ):
            return begin  # "no handrail | light switch only at the bottom"
        if before in GRAMMAR.locatives or particle or judged or quantity or told:
            return begin
        follows = begin in self.ends and self.ends[begin].sort == "value"
        return begin if follows and self.word(self.ends[begin].start - 1) in GRAMMAR.copulas else None

    def _measured(self, start: int, mark: Mark) -> int | None:
        """A quantity after something complete that does not lead to it ("all the way in | about eight inches")."""
        begin = mark.start - (self.word(mark.start - 1) in {"about", "around", "maybe", "roughly", "only"})
        before = self.word(begin - 1)
        if (
            before in {"in", "up", "down", "out"}
            and self.word(begin - 2) in {"way", "it", "back", "all"}
            and begin > start
        ):
            return begin
        return begin if before in {"here", "there", "okay"} and self.complete(start, begin) and self.verb_after(mark.end) is None and (
            self.word(mark.end) == "of") else None  # fmt: skip

    def _ends_particle(self, start: int, begin: int) -> bool:
        """Whether the particle before *begin* closes what was said ("backs off", "pumped down") and opens no phrase."""
        back = range(begin - 2, max(start, begin - 6) - 1, -1)
        verb = next((i for i in back if self.word(i) in GRAMMAR.phrasal), None)
        if verb is None and self.word(begin - 2).endswith("ed"):
            verb = begin - 2  # "tarred over"
        if verb is None or begin - 1 - verb > 3:  # noqa: PLR2004 - "shut it back off"
            return False
        for at in range(begin, begin + REACH):
            if at in self.marks:
                return self.verb_after(self.marks[at].end) is not None
        return False

    def _second_verb(self, start: int, index: int) -> int | None:
        """A verb with a subject of its own, when the statement has said something already."""
        last = self.last_verb(start, index)
        before = self.word(index - 1)
        if last == index - 1 or (last is None and not self.complete(start, index)):
            return None
        if (
            before
            in {"not", "to", "it", "there"}
            | GRAMMAR.personal
            | GRAMMAR.subordinators
            | GRAMMAR.conditionals
            | GRAMMAR.conjunctions
        ):
            return None  # "opens and closes", "which is"
        if last is not None and before in GRAMMAR.adverbs and last >= index - 3:
            return None
        near = range(max(start, index - 5, (start - 1 if last is None else last) + 1), index)
        if any(self.word(i) in GRAMMAR.subordinators - {"that"} | GRAMMAR.conditionals for i in near):
            return None
        least = start if last is None else self.floor(start, index)
        begin = self._subject_before(index, least)
        if begin is None or begin < least:
            return None
        if self.word(begin - 1) in GRAMMAR.taking - GRAMMAR.particles and begin - 1 >= start:
            if (
                self.word(index) in {"is", "are", "was", "were", "has", "have", "'s", "looks"}
                and self.word(begin - 1) not in GRAMMAR.noticing
            ):
                return begin  # "i can't reach | the back door is steel"
            done = self.word(index) in GRAMMAR.verbs and index in self.ends and self.ends[index].component
            return index if done else None  # "i ran the door with the opener | goes up"
        if self.word(begin - 1) in GRAMMAR.knowing or self.word(begin - 2) in GRAMMAR.knowing | {"see", "tell"}:
            return None
        if self.word(begin - 1) in GRAMMAR.conjunctions | GRAMMAR.conditionals:
            begin -= 1
        if self.word(begin - 1) in GRAMMAR.determiners:
            return None
        return begin if begin > start else None

    def _subject_before(self, index: int, least: int) -> int | None:
        """Where the subject of the verb at *index* begins, place phrases between them passed over."""
        noun = index
        for _ in range(3):
            while noun > least and noun not in self.ends and (
                self.word(noun - 1) in GRAMMAR.adverbs | GRAMMAR.locatives | GRAMMAR.prepositions
            ):  # fmt: skip
                noun -= 1
            if noun <= least:
                return None
            mark = self.ends.get(noun)
            begin = self.left(mark.start if mark else noun - 1, least)
            if begin <= least or self.word(begin - 1) not in GRAMMAR.prepositions:
                return begin
            noun = begin - 1  # "outlet by the washer is": the subject stands before the place
        return None

    def _elided(self, start: int, index: int) -> int | None:
        before = self.word(index - 1)
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
            if before in GRAMMAR.conjunctions:
                return index - 1 if index - 1 > start else None
            return None if before in GRAMMAR.prepositions and before not in GRAMMAR.particles else index
        found = GRAMMAR.elided.at(self.norms, index)
        if found and found[1] == "maybe" and not self._hedge(index):
            return None  # "maybe three quarters of an inch"
        if not found or not self.complete(start, index):
            return None
        if before in GRAMMAR.conjunctions:
            tail = self.word(index) in {"could", "can", "did", "might", "may", "maybe", "probably", "possibly", "not"}
            return index - 1 if tail and index - 1 > start else None
        mark = self.ends.get(index)
        if mark is not None and mark.component:
            held = self.left(mark.start, start)
            ability = self.word(index) in {"could", "can", "did", "might", "may", "would", "should", "must"}
            if self.word(index) in GRAMMAR.aux and (not ability or self.word(held - 1) not in GRAMMAR.prepositions):
                return None  # "outlets by the sink are not"
            held = self.word(held - 1) in GRAMMAR.prepositions
            if not held and found[1].endswith("ing"):
                return None  # "the shower running": a name and what it does
        done_to = before in {"it", "them", "that", "this"} and self.word(index - 2) in GRAMMAR.taking
        if before in {"there", "here"}:
            return index
        if not done_to and before in GRAMMAR.subjects | GRAMMAR.subordinators | {
            "to", "not", "be", "been", "was", "were", "is", "are", "has", "have", "got", "get", "am", "will", "would", "can",
            "could", "should", "might", "may", "must", "did", "does", "do",
        }:  # fmt: skip
            return None
        if (
            before in GRAMMAR.adverbs - GRAMMAR.particles and self.is_verb(index - 2)
        ) or before in GRAMMAR.prepositions - GRAMMAR.particles:
            return None
        return None if before in GRAMMAR.determiners else index


def _cuts(tokens: Sequence[Token], marks: dict[int, Mark]) -> list[int]:
    cutter = _Cutter(tokens, marks)
    found: list[int] = []
    start, least, index = 0, 0, 0
    while index < len(tokens):
        taken_back = cutter.retracted(index)
        cut = cutter.begins(start, index) if index > start else None
        if cut is None and index - start >= LONGEST:
            cut = index
        if cut is not None and cut > max(start, least):
            found.append(cut)
            start = cut
        if taken_back is not None:
            least = max(least, taken_back)  # nothing begins inside "wait no", nor right after it
            index = taken_back
        else:
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
            m.start - begin: Mark(m.start - begin, m.end - begin, m.sort, m.weak)
            for i in range(begin, end)
            if (m := by_start.get(i)) and m.end <= end
        }
        edges = [begin, *(begin + cut for cut in _cuts(tokens[begin:end], here)), end]
        found += [Clause(a, b) for a, b in pairwise(edges)]
        begin = end
    return found


def with_cuts(found: Sequence[Clause], cuts: Sequence[int]) -> list[Clause]:
    """The same statements, cut further at the given tokens.

    >>> with_cuts([Clause(0, 5), Clause(5, 7)], [3, 5])
    [Clause(start=0, end=3), Clause(start=3, end=5), Clause(start=5, end=7)]
    """
    if not found:
        return []
    edges = sorted({clause.start for clause in found} | {cut for cut in cuts if 0 < cut < found[-1].end})
    return [Clause(a, b) for a, b in pairwise([*edges, found[-1].end])]
