"""What of a statement does the learned vote look at? Its words, with what the packs know of them told by sort.

The words of a component, a quantity, a plate or a value of the packs are each taken as one sign, so that what was
learned of one component holds for every other, and for those of an overlay.
"""

from __future__ import annotations

from itertools import pairwise

from witnessmark.listening.grammar import GRAMMAR
from witnessmark.listening.polarity import senses
from witnessmark.listening.statement import Statement
from witnessmark.listening.terms import cues
from witnessmark.listening.words import root

__all__ = ["features", "signs"]

#: Term lists whose phrases tell the sort of a statement.
_CUES = (
    ("doubts", "cues"), ("scopes", "hearsay"), ("scopes", "requirements"), ("scopes", "advice"), ("scopes", "intending"),
    ("conditions", "missing"), ("conditions", "responses"), ("operations", "ended"),
)  # fmt: skip
_LONGEST = 12
_EDGE = "|"
_SUFFIXES = ("ing", "ed", "en", "y", "less", "ly", "er")


def signs(st: Statement) -> list[str]:
    """The statement as signs: roots of words, and ``C`` component, ``Q`` quantity, ``P`` plate, ``V`` value, ``I`` instrument."""
    whole: dict[int, tuple[int, str]] = {}
    for v in st.values:
        whole[v.start] = (v.end, "V")
    for c in st.components:
        whole[c.start] = (c.end, "C")
    for q in st.quantities:
        whole[q.start] = (q.end, "Q" if q.unit else f"Q{q.form[0]}")
    for a, b in st.instruments:
        whole[a] = (b, "I")
    for p in st.plates:
        whole[p.start] = (p.end, "P")
    made: list[str] = []
    at = 0
    while at < len(st.norms):
        found = whole.get(at)
        if found is not None and found[0] > at:
            made.append(found[1])
            at = found[0]
        else:
            made.append(st.roots[at])
            at += 1
    return made


def _person(norms: list[str]) -> list[str]:
    made = []
    for at, word in enumerate(norms):
        if word in {"i", "we"}:
            following = next((w for w in norms[at + 1 :] if w not in GRAMMAR.adverbs), "")
            tense = "ed" if following.endswith("ed") else "ing" if following.endswith("ing") else following
            made.append(f"i:{tense}")
        elif word in {"you", "they", "he", "she"}:
            made.append(f"person:{word}")
    return made


def features(st: Statement, before: str | None) -> list[str]:
    """The names of what is so of a statement; *before* is what the statement before it was, None where unknown."""
    made_of = signs(st)
    made = [f"n:{min(len(made_of), _LONGEST)}", f"p:{before}"]
    edged = [_EDGE, *made_of, _EDGE]
    made += [f"w:{s}" for s in made_of]
    made += [f"b:{a} {b}" for a, b in pairwise(edged)]
    made += [f"t:{a} {b} {c}" for a, b, c in zip(edged, edged[1:], edged[2:], strict=False)]
    made.append(f"a:{made_of[0]}")
    made.append(f"z:{made_of[-1]}")
    made += [f"q:{q.unit or q.form}" for q in st.quantities]
    made += [f"v:{id_}" for v in st.values for id_, _ in v.meanings]
    made += [f"cue:{name}" for table, name in _CUES if cues(table, name).first(st.norms)]
    made += [f"x:{s}" for w in st.norms for s in _SUFFIXES if len(w) > len(s) + 2 and w.endswith(s)]
    made += _person(st.norms)
    verb = next((w for w in st.norms if w in GRAMMAR.aux or w in GRAMMAR.verbs), None)
    made.append(f"verb:{root(verb) if verb else None}")
    found, denied = senses(st)
    wrong, right = any(s.adverse for s in found), any(not s.adverse for s in found)
    made.append(f"sense:{'both' if wrong and right else 'wrong' if wrong else 'right' if right else None}")
    if denied.denied:
        made.append("denied")
    return list(dict.fromkeys(made))
