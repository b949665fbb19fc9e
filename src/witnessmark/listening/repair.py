"""What was said, where the recogniser heard something else? Every repair keeps the words as they were recognised.

Four ways, from the surest to the least sure: the table of corrections; letters spoken one by one (``gee f see eye``)
that make an acronym of the packs; one word of a two-word name that sounds like the right one (``choice hangers``); and
two or three words that together sound and look like one long word of the packs (``core owed``), of which none belongs to
a number of several words (``comb one and a half horse``).
"""

from __future__ import annotations

from collections.abc import Sequence
from collections.abc import Set as AbstractSet
from functools import lru_cache

from witnessmark.listening.lexicon import Lexicon
from witnessmark.listening.quantities import quantities
from witnessmark.listening.sounds import close_in_spelling, sound
from witnessmark.listening.terms import corrections, cues, members
from witnessmark.listening.words import Token, phrase, stem

__all__ = ["LETTERS", "letter", "repaired"]

#: Letters as recognisers write them.
LETTERS = {
    "gee": "g", "see": "c", "sea": "c", "eye": "i", "tea": "t", "tee": "t", "pea": "p", "pee": "p", "cue": "q",
    "queue": "q", "jay": "j", "kay": "k", "bee": "b", "be": "b", "are": "r", "you": "u", "why": "y", "oh": "o",
    "ex": "x", "em": "m", "en": "n", "el": "l", "ell": "l", "ess": "s", "vee": "v", "dee": "d", "ay": "a", "eh": "a",
    "zee": "z", "eff": "f", "aitch": "h",
}  # fmt: skip
_LONGEST_ACRONYM = 6
_CONSONANTS = frozenset("bcdfghjklmnpqrstvwxyz")


def letter(word: str) -> str | None:
    """The letters that a word spells out: itself when it is one letter or a short run of consonants, else by ear."""
    if word.isalpha() and (len(word) == 1 or (len(word) <= 3 and set(word) <= _CONSONANTS)):  # noqa: PLR2004 - "pr"
        return word
    return LETTERS.get(word)


def _one(tokens: Sequence[Token], start: int, end: int, words: Sequence[str]) -> list[Token]:
    """The words *words* standing for the tokens from *start* to *end*."""
    first, last = tokens[start], tokens[end - 1]
    made = [Token(w, stem(w), first.first, last.last, first.at, case=w) for w in words]
    made[-1].hard, made[-1].comma, made[-1].question = last.hard, last.comma, last.question
    return made


def _acronym(tokens: Sequence[Token], index: int, lexicon: Lexicon) -> tuple[int, str] | None:
    spelled = letter(tokens[index].norm)
    if spelled is None or (len(spelled) > 1 and tokens[index].norm in lexicon.known):
        return None
    run: list[str] = []
    for token in tokens[index : index + _LONGEST_ACRONYM]:
        spelled = letter(token.norm)
        if spelled is None:
            break
        run.append(spelled)
        if token.hard:
            break
    for size in range(len(run), 1, -1):
        # At least one of them must be no word by itself, or "are you" would be an acronym.
        plain = any((len(t.norm) == 1 and t.norm not in {"a", "i"}) or (t.norm not in LETTERS and len(t.norm) > 1)
                    for t in tokens[index : index + size])  # fmt: skip
        word = "".join(run[:size])
        if plain and (word in lexicon.acronyms or stem(word) in lexicon.acronyms or word in _UNITS):
            return index + size, word
    return None


_UNITS = frozenset({"psi", "ppm", "gpm", "cfm", "btu", "awg", "amp"})
_LEAST_SOUND = 3
_SHORT_SOUND = 3
#: Spelling agreement asked of joined words: much when the sound is short, less when it is long.
_AGREE_SHORT, _AGREE_LONG = 0.75, 0.6
_AGREE_ONE = 0.86
#: When every word is a common one by itself.
_AGREE_COMMON = 0.88


def _near(tokens: Sequence[Token], index: int, lexicon: Lexicon) -> list[str] | None:
    if index + 1 >= len(tokens) or tokens[index].hard:
        return None
    pair = (tokens[index].stem, tokens[index + 1].stem)
    if pair[0] == pair[1]:
        return None
    for place in (0, 1):
        heard, kept = pair[1 - place], pair[place]
        if heard in lexicon.known or len(heard) < 3 or len(kept) < 3 or not heard.isalpha():  # noqa: PLR2004 - too little to hear
            continue
        for words in lexicon.near.get((place, kept), ()):
            right = words[1 - place]
            if sound(right) and sound(right) == sound(heard) and len(right) >= 3:  # noqa: PLR2004 - as above
                return list(words)
    return None


def _joined(tokens: Sequence[Token], index: int, lexicon: Lexicon, numbers: AbstractSet[int]) -> tuple[int, str] | None:
    first = tokens[index]
    if not first.norm.isalpha():
        return None
    key, text = sound(first.norm), first.norm
    for size in (2, 3):
        if index + size > len(tokens) or tokens[index + size - 2].hard or index + size - 1 in numbers:
            break
        following = tokens[index + size - 1].norm
        if not following.isalpha():
            break
        key, text = key + sound(following), text + following
        if len(key) < _LEAST_SOUND:
            continue
        one = sound_of_run(key)
        likely = lexicon.by_sound.get(one, ())
        if one.endswith("S") and text.endswith("s"):
            likely += lexicon.by_sound.get(one[:-1], ())
        if not likely:
            continue
        common = all(t.stem in lexicon.known for t in tokens[index : index + size])
        agree = _AGREE_SHORT if len(key) <= _SHORT_SOUND else _AGREE_LONG
        for word in likely:
            # "stain on" is no "staining": the first word must not be most of the long one already
            shared = _shared(first.norm, word)
            alike = shared == len(first.norm) > 2 or shared >= max(len(first.norm) - 1, 4)  # noqa: PLR2004 - "so" of "soffit" is chance
            if (
                not alike
                and sound(word[0]) == sound(text[0])
                and close_in_spelling(text, word, _AGREE_COMMON if common else agree)
            ):
                return index + size, word
    return None


def _shared(one: str, other: str) -> int:
    """How many letters two words begin with in common."""
    return next((i for i, (a, b) in enumerate(zip(one, other, strict=False)) if a != b), min(len(one), len(other)))


def sound_of_run(key: str) -> str:
    """The sound of words run together: a stop doubled at the seam at the end counts once."""
    return key[:-1] if key.endswith("TT") else key


def _alone(token: Token, lexicon: Lexicon) -> str | None:
    word = token.stem
    if word in lexicon.known or len(word) < 6 or not word.isalpha():  # noqa: PLR2004 - short words are too alike
        return None
    for right in lexicon.by_sound.get(sound(word), ()):
        if right[0] == word[0] and close_in_spelling(word, right, _AGREE_ONE):
            return right
    return None


_BE = frozenset({"is", "are", "'s", "was", "were", "be", "been", "not"})


@lru_cache(maxsize=1)
def _participles() -> dict[str, str]:
    """Regular participles that judge, by their verb: "bolt" gives "bolted"."""
    words = members("conditions", "fitted") | members("conditions", "adverse") | members("conditions", "sound")
    return {word.removesuffix("ed"): word for word in sorted(words) if word.endswith(("ted", "ded"))}


def _ended(tokens: list[Token]) -> list[Token]:
    """The tokens, "it" after "is" and a verb made its ending: nobody says "the ledger is bolt it", but "is bolted"."""
    made: list[Token] = []
    for token in tokens:
        whole = (
            _participles().get(made[-1].norm) if token.norm == "it" and len(made) > 1 and not made[-1].hard else None
        )
        if (
            whole is not None
            and made[-2].norm in _BE
            and (made[-2].norm != "not" or (len(made) > 2 and made[-3].norm in _BE))  # noqa: PLR2004 - "is not bolt"
        ):
            made[-1:] = _one([made[-1], token], 0, 2, [whole])
        else:
            made.append(token)
    return made


def repaired(tokens: list[Token], lexicon: Lexicon) -> list[Token]:
    """The tokens with what was misheard put right; a repaired token stands for all the words it came from."""
    return _ended(_repaired(tokens, lexicon))


def _repaired(tokens: list[Token], lexicon: Lexicon) -> list[Token]:
    table = corrections()
    starts = cues("clauses", "personal")
    norms = [t.norm for t in tokens]
    stems = [t.stem for t in tokens]
    numbers = {i for q in quantities(norms) if q.end > q.start + 1 for i in range(q.start, q.end)}
    made: list[Token] = []
    index = 0
    while index < len(tokens):
        known = lexicon.components.at(stems, index)
        fixed = table.at(norms, index)
        misheard = known is not None and all(m.heard for m in known[1])
        if fixed and not (known and known[0] >= fixed[0] and not misheard):
            made += _one(tokens, index, fixed[0], phrase(fixed[1]))
            index = fixed[0]
            continue
        if known and (known[0] - index > 1 or len(norms[index]) > 1):
            made += tokens[index : known[0]]
            index = known[0]
            continue
        acronym = _acronym(tokens, index, lexicon)
        if acronym:
            made += _one(tokens, index, acronym[0], [acronym[1]])
            index = acronym[0]
            continue
        near = _near(tokens, index, lexicon)
        if near:
            # Words that were right stay as they were; only the misheard one is put right.
            made += _one(tokens, index, index + 2, near)
            index += 2
            continue
        whole = None if norms[index] in starts.words else _joined(tokens, index, lexicon, numbers)
        if whole:
            made += _one(tokens, index, whole[0], [whole[1]])
            index = whole[0]
            continue
        right = _alone(tokens[index], lexicon)
        if right:
            made += _one(tokens, index, index + 1, [right])
        else:
            made.append(tokens[index])
        index += 1
    return made
