"""Verbs, names and subjects in a run of words: what the rules that part statements look at."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from witnessmark.listening.grammar import GRAMMAR
from witnessmark.listening.words import Token

__all__ = ["REACH", "SHORT", "Mark", "Syntax"]

#: Words within which a verb belongs to a name before it; so many words make a statement by themselves.
REACH = 6
#: So many words make a statement when one of them is a name.
SHORT = 4


@dataclass(frozen=True, slots=True)
class Mark:
    """Something named from *start* to *end* (exclusive).

    ``sort`` is ``component``, ``value``, ``quantity``, ``place``, ``plate`` or ``condition`` (a phrase for what is
    wrong or right). ``weak``: a component only by a part's name or the last word of its own.
    """

    start: int
    end: int
    sort: str
    weak: bool = False

    @property
    def component(self) -> bool:
        """Whether a thing is named that can be a subject."""
        return self.sort == "component"


class Syntax:
    """One run of words between hard marks, with what is named in it."""

    def __init__(self, tokens: Sequence[Token], marks: dict[int, Mark]) -> None:
        self.norms = [t.norm for t in tokens]
        self.marks = marks
        self.ends = {m.end: m for m in marks.values()}
        self.inside = {i for m in marks.values() for i in range(m.start + 1, m.end)}
        self.names = {
            i for m in marks.values() if m.sort != "condition" and m.end - m.start > 1 for i in range(m.start, m.end)
        }
        self.commas = {i for i, t in enumerate(tokens) if t.comma}
        self._verb: dict[int, bool] = {}

    def word(self, index: int) -> str:
        """The word at *index*; empty outside the run."""
        return self.norms[index] if 0 <= index < len(self.norms) else ""

    def is_verb(self, index: int) -> bool:
        """Whether a finite verb stands here."""
        known = self._verb.get(index)
        if known is None:
            known = self._verb[index] = self._is_verb(index)
        return known

    def _is_verb(self, index: int) -> bool:
        word = self.word(index)
        if not word or index in self.names:
            return False
        if word in GRAMMAR.aux:
            return True
        before = self.word(index - 1)
        if word in GRAMMAR.doing and (
            before in GRAMMAR.personal | {"who"}
            or (before in {"it", "they"} and (word.endswith("ed") or word in GRAMMAR.happening))
        ):
            return True
        if word in GRAMMAR.verbs:
            after = self.word(index + 1)
            if (
                before in GRAMMAR.determiners
                or before in GRAMMAR.adjectives
                or after in {"is", "are", "was", "were", "has"}
            ):
                return False
            return before not in GRAMMAR.prepositions or before in GRAMMAR.particles
        mark = self.ends.get(index)
        if mark is not None and mark.component and index not in self.marks and len(word) > 4 and word.endswith("s"):  # noqa: PLR2004 - "is"
            alone = not self.word(index - 1).endswith("s") and not word.endswith("ss") and word not in GRAMMAR.adverbs
            if alone and self.word(index + 1) not in GRAMMAR.aux and word not in GRAMMAR.locatives:
                return True  # "floor drain gurgles": whatever one named thing does
        if word in GRAMMAR.plural:
            several = index in self.ends and self.word(index - 1).endswith("s")
            return several or before in {"they", "both", "all", "these", "those", "not"}
        return False

    def verb_after(self, index: int) -> int | None:
        """The verb of a subject that ends at *index*, adverbs and place phrases passed over."""
        at, in_phrase = index, 0
        while at < min(len(self.norms), index + REACH):
            if self.is_verb(at):
                return at
            word = self.norms[at]
            if word in GRAMMAR.personal or word in {"it", "there"} or word in GRAMMAR.conjunctions:
                return None
            if word in GRAMMAR.prepositions:
                in_phrase = 4  # "on the gas line", "by the washer"
            elif word in GRAMMAR.adverbs or word in GRAMMAR.locatives:
                pass
            elif in_phrase > 0:
                in_phrase -= 1
            elif at == index and at in self.marks and self.marks[at].weak:
                pass  # "disconnect cover is": a name of two parts
            elif at not in self.marks or self.marks[at].component:
                return None
            at = self.marks[at].end if at in self.marks else at + 1
        return None

    def last_verb(self, start: int, index: int) -> int | None:
        """The last verb from *start* up to *index*."""
        return next((i for i in range(index - 1, start - 1, -1) if self.is_verb(i)), None)

    def floor(self, start: int, index: int) -> int:
        """The first word that can belong to a new name: past the last verb, and past one word of what it says."""
        verb = self.last_verb(start, index)
        if verb is None:
            return start
        at = verb + 1
        while self.word(at) in GRAMMAR.chain:
            at += 1
        likened = any(self.word(i) in {"like", "as"} for i in range(max(start, verb - 3), verb))
        if not likened and (self.word(verb) in GRAMMAR.copulas or self.word(at - 1) in {"be", "been", "got"}):
            at = self.marks[at].end if at in self.marks and not self.marks[at].component else at + 1
        return min(index, at)

    def left(self, index: int, floor: int) -> int:
        """Where the name that stands at *index* begins: articles, adjectives, "two of the", "bottom of the"."""
        at = index
        counted = False  # articles and numbers come before everything else in a name
        while at > floor:
            word = self.word(at - 1)
            mark = self.ends.get(at)
            if mark is not None and (counted or mark.sort in {"component", "plate", "condition"} or mark.start < floor):
                break
            if mark is not None:
                if self.word(mark.start - 1) in GRAMMAR.copulas:
                    break  # "needs to be metal | outlet": the value was what it says
                article = (
                    mark.sort == "quantity"
                    and "a" in {self.word(mark.start - 1), self.word(mark.start - 2)}
                    and at != mark.start + 1
                )
                if (mark.sort in {"place", "quantity"} and self._placed(mark.start)) or article:
                    break  # "up in the attic | sheathing", but "kitchen sink"; "on the two by four | door"
                counted = mark.sort == "quantity"
                at = mark.start
                continue
            if word == "one" and self.word(at - 2) in {"not", "is", "this", "that", "other", "the", "no"}:
                break
            if (
                at in self.marks
                and word in GRAMMAR.sides
                and self.word(at - 2) in GRAMMAR.determiners
                and self._after(at - 3)
            ):
                break  # "at the middle | vapor barrier"
            if word in GRAMMAR.determiners or word in GRAMMAR.adjectives or word in GRAMMAR.quantifiers:
                if word in {"that", "this", "it"} and self.is_verb(at):
                    break
                first = word in GRAMMAR.determiners or word in GRAMMAR.quantifiers
                if counted and not first:
                    break
                counted = counted or first
                at -= 1
            elif word == "off" and self.word(at - 2) == "shut" and at - 2 >= floor:
                at -= 2  # "shut off valve"
            elif word == "of" and at - 2 >= floor and (
                self.word(at - 2) in GRAMMAR.quantifiers or self.word(at - 2) in GRAMMAR.sides
            ):  # fmt: skip
                at -= 2
            else:
                break
        return at

    def _after(self, index: int) -> bool:
        return self.word(index) in GRAMMAR.prepositions

    def _placed(self, index: int) -> bool:
        """Whether a preposition with its article stands before *index*."""
        at = index - 1
        while self.word(at) in GRAMMAR.determiners:
            at -= 1
        return self.word(at) in GRAMMAR.prepositions

    def subject(self, index: int) -> bool:
        """Whether a pronoun with its verb begins here."""
        word = self.word(index)
        if word not in GRAMMAR.subjects or index in self.inside or index in self.marks:
            return False
        after = index + 1
        before = self.word(index - 1)
        if word == "it" and (index in self.commas or before in GRAMMAR.prepositions - GRAMMAR.particles):
            return False  # "wire going to it is", "not going to move it, could have"
        if (
            word == "it"
            and before in {"leave", "leaving", "left", "found", "keep", "keeping"}
            and self.word(after) not in GRAMMAR.aux
        ):
            return False  # "leaving it tripped"
        if word in {"all", "both", "each"} and index in self.ends and self.ends[index].component:
            return False  # "registers all have air"
        if word in GRAMMAR.personal:
            taken = word == "you" and (self.is_verb(index - 1) or self.word(index - 1) in GRAMMAR.taking)
            return not taken and self.word(after) not in {"", "beam", "joist"}
        if word in {"here", "there"}:
            wall = word == "here" and index in self.ends and self.ends[index].component
            if self.word(index - 1) in GRAMMAR.prepositions or wall:
                return False  # "windows in here are", "foundation wall here is"
            following = self.word(after)
            return following in {"is", "are", "was", "were", "'s"} or (word == "there" and following in GRAMMAR.aux)
        if word in {"this", "that", "these", "those", "each", "some", "which"} and self.word(after) in {"one", "ones"}:
            after += 1
        if word == "one" and self.word(index - 1) in {"that", "this", "other", "no", "the", "which", "another"}:
            return False
        while self.word(after) in {"just", "still", "really", "also", "actually", "all", "both", "never", "barely"}:
            after += 1
        return self.is_verb(after)

    def complete(self, start: int, index: int) -> bool:
        """Whether the words from *start* to *index* can stand as a statement."""
        if self.last_verb(start, index) is not None or index - start >= REACH:
            return True
        if "no" in {self.word(start), self.word(start + 1)} and index - start > 1 + (self.word(start) != "no"):
            return True
        opened = GRAMMAR.elided.at(self.norms, start)
        if opened and index - start > 1 and opened[0] <= index:
            return True
        if self.word(start) in {"probably", "possibly", "maybe"} and index - start > 1:
            return True
        named = any((m := self.marks.get(i)) is not None and m.end <= index for i in range(start, index))
        return named and index - start >= SHORT
