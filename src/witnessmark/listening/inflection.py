"""The forms of a verb, made by rule from the one that is written down."""

from __future__ import annotations

from collections.abc import Iterator

__all__ = ["after", "forms", "plural"]

_PARTICIPLES = {
    "swell": ("swelled", "swollen"), "bend": ("bent", "bent"), "sink": ("sunk", "sunken"), "wear": ("wore", "worn"),
    "burn": ("burned", "burned"), "blow": ("blew", "blown"), "break": ("broke", "broken"), "come": ("came", "come"),
    "fall": ("fell", "fallen"), "freeze": ("froze", "frozen"), "bind": ("bound", "bound"), "hang": ("hung", "hung"),
    "bleed": ("bled", "bled"), "cave": ("caved", "caved"), "weep": ("wept", "weeped"),
}  # fmt: skip
_ING = {"burn": "burning"}


def _parts(verb: str) -> tuple[str, bool, str]:
    head, _, tail = verb.partition(" ")
    if verb.endswith("*"):
        # "jury rig*": the last word is the verb
        words = verb.removesuffix("*").split()
        return " ".join(words), True, ""
    if head.endswith("*"):
        return head.removesuffix("*"), True, tail
    return head, False, tail


def after(verb: str) -> tuple[str, str]:
    """The verb as it is after "does not", and what always follows it: ``("come", "apart")``."""
    head, _, tail = _parts(verb)
    return head, tail


def forms(verb: str, *, present: bool = True) -> Iterator[str]:
    """The forms of *verb*; only what is done or goes on, without *present*.

    A star doubles the last letter. What follows the verb follows each form.

    >>> list(forms("drip*"))
    ['drip', 'drips', 'dripping', 'dripped']
    >>> list(forms("come apart", present=False))
    ['coming apart', 'came apart', 'come apart']
    """
    head, doubled, tail = _parts(verb)
    rest = f" {tail}" if tail else ""
    if present:
        yield head + rest
        yield plural(head) + rest
    base = head + head[-1] if doubled else head
    silent = not doubled and head.endswith("e") and not head.endswith(("ee", "oe", "ye", "nge"))
    consonant_y = head.endswith("y") and head[-2] not in "aeiou"
    yield _ING.get(head, (base[:-1] if silent else base) + "ing") + rest
    if head in _PARTICIPLES:
        yield from dict.fromkeys(word + rest for word in _PARTICIPLES[head])
    elif consonant_y:
        yield head[:-1] + "ied" + rest
    else:
        yield (base[:-1] if base.endswith("e") and not doubled else base) + "ed" + rest


def plural(noun: str) -> str:
    """Several of a thing, or what one thing does.

    >>> plural("crack"), plural("scratch"), plural("entry"), plural("pest")
    ('cracks', 'scratches', 'entries', 'pests')
    """
    if noun.endswith(("s", "x", "z", "ch", "sh")):
        return noun + "es"
    if noun.endswith("y") and noun[-2:-1] not in set("aeiou"):
        return noun[:-1] + "ies"
    return noun + "s"
