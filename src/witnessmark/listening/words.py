"""The words of a narration with the times of their lines, and the forms in which words are compared."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

from witnessmark.listening.narration import Line
from witnessmark.listening.sound_marks import without_sound_marks

__all__ = ["PAUSE", "Token", "Word", "expanded", "pace", "phrase", "quoted", "root", "stem", "tokens", "words"]

#: Silence between two lines that ends a clause (seconds); only where the file gives the ends of lines.
PAUSE = 1.0

_WORD = re.compile(r"(?<!\S)'s(?=\s|$)|\d+'\d+(?=[\"″”])|[^\W_]+(?:[.,/]\d+)*(?:['’][^\W\d_]+)*|[%°]|(?<=\d)[\"″”'′]")
_HARD = re.compile(r"[.?!;:](?:\s|$|[\"”)])|\n|\s[-–—]{1,2}\s|…")
_SIGNS = {"%": "percent", "°": "degrees", '"': "inches", "″": "inches", "”": "inches", "'": "feet", "′": "feet"}
_THOUSANDS = re.compile(r"^\d{1,3}(,\d{3})+$")
_STUCK = re.compile(r"^(\d+(?:\.\d+)?)(f|psi|gal|amp|amps|a|v|in|ft|ppm|lb|lbs|sf|sq|k|btu|cfm|gpm|years?|yr)$")
_FILLERS = frozenset({"um", "uh", "erm", "uhm", "hmm", "mm", "er", "ah"})

#: Contractions as two or three words; those that captions write without an apostrophe are here too.
_CONTRACTED = {
    "can't": ("can", "not"), "cant": ("can", "not"), "cannot": ("can", "not"), "won't": ("will", "not"),
    "wont": ("will", "not"), "shan't": ("shall", "not"), "ain't": ("is", "not"), "aint": ("is", "not"),
    "isnt": ("is", "not"), "arent": ("are", "not"), "wasnt": ("was", "not"), "werent": ("were", "not"),
    "doesnt": ("does", "not"), "dont": ("do", "not"), "didnt": ("did", "not"), "hasnt": ("has", "not"),
    "havent": ("have", "not"), "hadnt": ("had", "not"), "couldnt": ("could", "not"), "wouldnt": ("would", "not"),
    "shouldnt": ("should", "not"), "theres": ("there", "is"), "thats": ("that", "is"), "im": ("i", "am"),
    "ive": ("i", "have"), "whats": ("what", "is"), "gonna": ("going", "to"), "wanna": ("want", "to"),
    "gotta": ("got", "to"), "kinda": ("kind", "of"), "let's": ("let", "us"), "lets": ("let", "us"),
    "y'all": ("you", "all"),
}  # fmt: skip
_ENDINGS = {"'m": "am", "'re": "are", "'ve": "have", "'ll": "will", "'d": "would"}
_IS_AFTER = frozenset({
    "it", "he", "she", "that", "there", "here", "what", "who", "where", "how", "this", "everything", "nothing",
    "something", "one", "which", "everybody",
})  # fmt: skip


@dataclass(frozen=True, slots=True)
class Word:
    """One word as it stands in a line: ``text`` as written, ``line`` its index, marks that follow it."""

    text: str
    line: int
    start: float
    end: float
    hard: bool = False
    comma: bool = False
    question: bool = False


@dataclass(slots=True)
class Token:
    """One word as it is compared. Stands for the words ``first`` to ``last`` (indexes, inclusive)."""

    norm: str
    stem: str
    first: int
    last: int
    at: float
    hard: bool = False
    comma: bool = False
    question: bool = False
    case: str = ""


def words(lines: Sequence[Line]) -> list[Word]:
    """The words of all lines. A line's end is no boundary by itself; a real pause before the next line is."""
    found: list[Word] = []
    for index, line in enumerate(lines):
        following = lines[index + 1] if index + 1 < len(lines) else None
        text = without_sound_marks(line.text)
        matches = list(_WORD.finditer(text))
        for place, match in enumerate(matches):
            to = matches[place + 1].start() if place + 1 < len(matches) else len(text)
            between = text[match.end() : to]
            last = place + 1 == len(matches)
            silent = last and line.timed_end and following is not None and following.start - line.end >= PAUSE
            hard = silent or bool(between not in {"", " "} and between.strip() and _HARD.search(between))
            found.append(
                Word(match.group(), index, line.start, line.end, hard, "," in between, hard and "?" in between)
            )
    return found


def pace(lines: Sequence[Line]) -> list[float]:
    """Seconds that each line took a word, the silence after it included: a slow line held a pause."""
    paced = []
    for index, line in enumerate(lines):
        following = lines[index + 1].start if index + 1 < len(lines) else line.end
        paced.append((following - line.start) / max(1, len(line.text.split())))
    return paced


def _split(raw: str) -> tuple[str, ...]:
    text = raw.lower().replace("’", "'")
    if text == "'s":
        return (text,)
    if text in _SIGNS:
        return (_SIGNS[text],)
    if text in _CONTRACTED:
        return _CONTRACTED[text]
    if "'" in text:
        if text.endswith("n't"):
            return (text[:-3], "not")
        head, _, tail = text.partition("'")
        ending = _ENDINGS.get("'" + tail)
        if ending:
            return (head, ending)
        if tail == "s":
            return (head, "is") if head in _IS_AFTER else (head, "'s")
        if head.isdecimal() and tail.isdecimal():
            return (head, "feet", tail)
        return (head + tail,)
    if _THOUSANDS.match(text):
        return (text.replace(",", ""),)
    stuck = _STUCK.match(text)
    return (stuck.group(1), stuck.group(2)) if stuck else (text,)


@lru_cache(maxsize=20_000)
def expanded(raw: str) -> tuple[str, ...]:
    """The compared forms of one written word: lower case, contractions opened, signs as words.

    >>> expanded("Couldn't"), expanded("it’s"), expanded("3,000"), expanded("%")
    (('could', 'not'), ('it', 'is'), ('3000',), ('percent',))
    """
    return _split(raw)


@lru_cache(maxsize=20_000)
def stem(word: str) -> str:
    """The singular of a noun, roughly; the same rough cut is made on every phrase it is compared with.

    >>> stem("joists"), stem("trusses"), stem("glass"), stem("gas")
    ('joist', 'truss', 'glass', 'gas')
    """
    if len(word) > 3 and word.endswith("s") and not word.endswith(("ss", "us", "is")):  # noqa: PLR2004 - "gas"
        if word.endswith("ies") and len(word) > 4:  # noqa: PLR2004 - "ties"
            return word[:-3] + "y"
        if word.endswith(("ches", "shes", "xes", "sses", "zes")):
            return word[:-2]
        return word[:-1]
    return word


_ROOTS = {
    "corrosion": "corrod", "corroding": "corrod", "broke": "break", "broken": "break", "torn": "tear", "bent": "bend",
    "rotten": "rot", "worn": "wear", "burnt": "burn", "burned": "burn", "lay": "lie", "laying": "lie",
    "lying": "lie", "hung": "hang", "blown": "blow", "leakage": "leak", "seepage": "seep", "gone": "gone",
    "ran": "run", "running": "run", "fell": "fall", "fallen": "fall", "missing": "missing",
}  # fmt: skip
_SHORT = 3


@lru_cache(maxsize=20_000)
def root(word: str) -> str:
    """What is common to the forms of a word, roughly: ``cracked``, ``cracks`` and ``cracking`` become ``crack``.

    >>> root("dripping"), root("rusty"), root("corroded"), root("painted")
    ('drip', 'rust', 'corrod', 'paint')
    """
    if word in _ROOTS:
        return _ROOTS[word]
    cut = stem(word)
    for ending in ("ing", "ed"):
        if cut.endswith(ending) and len(cut) - len(ending) >= _SHORT:
            cut = cut[: -len(ending)]
            if cut[-1] == cut[-2] and cut[-1] not in "lsz":
                cut = cut[:-1]
            break
    if len(cut) > _SHORT + 1 and cut[-1] == "y" and cut[-2] not in "aeiou":
        cut = cut[:-1]
        if cut[-1] == cut[-2] and cut[-1] not in "ls":
            cut = cut[:-1]
    return cut.removesuffix("e") if len(cut) > _SHORT else cut


def tokens(spoken: Sequence[Word]) -> list[Token]:
    """The compared form of every word, fillers left out."""
    made: list[Token] = []
    for index, word in enumerate(spoken):
        forms = expanded(word.text)
        if forms[0] in _FILLERS:
            if word.hard and made:
                made[-1].hard = True
            continue
        made += [Token(form, stem(form), index, index, word.start, case=word.text) for form in forms]
        made[-1].hard, made[-1].comma, made[-1].question = word.hard, word.comma, word.question
    return made


@lru_cache(maxsize=20_000)
def phrase(text: str) -> tuple[str, ...]:
    """The compared words of a phrase of the packs or of the term lists."""
    return tuple(form for match in _WORD.finditer(text.replace("-", " ")) for form in expanded(match.group()))


def quoted(spoken: Sequence[Word], first: int, last: int) -> str:
    """The words from one index to another (inclusive) as recognised."""
    return " ".join(word.text for word in spoken[first : last + 1])
