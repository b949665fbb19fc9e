"""Is the speaker unsure, and of what?"""

from __future__ import annotations

from decimal import Decimal
from typing import Any

from witnessmark.listening.drafts import Draft
from witnessmark.listening.grammar import GRAMMAR
from witnessmark.listening.identities import short_year_told
from witnessmark.listening.modes import hearsay, said_by, source
from witnessmark.listening.quantities import Quantity
from witnessmark.listening.sense import is_wrong
from witnessmark.listening.statement import Statement
from witnessmark.listening.terms import cues, members

__all__ = ["asks_which", "asserted_before", "cue_of_doubt", "doubted", "leaves_open", "only_hedges", "read_before"]

#: Before a number these only mean "about".
_ABOUT = frozenset({
    "maybe", "i would say", "probably", "i guess", "i would guess", "likely", "i think", "guessing", "possibly", "i am guessing",
    "i figure", "i would call", "perhaps", "most likely", "i want to say", "i think it", "i think that", "i am thinking",
    "could be", "might be",
})  # fmt: skip
_MEASURED = frozenset({"quantity", "pair", "count"})
#: Doubts about the cause of something that is there: "there's a stain, might be old".
_OF_CAUSE = frozenset({
    "might be", "may be", "could be", "maybe", "probably", "possibly", "perhaps", "likely", "most likely", "could have been",
    "might have been", "may have been", "must have been", "might just be", "could just be", "i am guessing", "i would guess",
    "my guess", "i suspect", "looks like it could", "looks like it might", "not sure", "i am not sure", "i think it",
    "hard to tell", "hard to say", "can not tell", "could not tell", "do not know",
})  # fmt: skip
_MILD = frozenset({"i think", "i believe", "i do believe", "i guess", "i would say", "probably", "maybe", "i would guess", "i figure",
                   "possibly", "i suspect", "i think so", "i imagine", "i assume"})  # fmt: skip
#: A cue with so few words after it says nothing of its own yet.
_OPEN_TAIL, _OPEN_LONGEST = 1, 8


def cue_of_doubt(st: Statement) -> tuple[int, int, str] | None:
    """What says that the speaker is unsure: from where to where, and the words."""
    never = [(a, b) for a, b, _ in cues("doubts", "never").find(st.norms)]
    at = st.opening()
    if st.norms[at : at + 1] == ["whether"]:
        return at, at + 1, "whether"
    for start, end, words in (*cues("doubts", "cues").find(st.norms), *_modal(st)):
        if words in _ABOUT and any(
            end <= q.start <= end + 2 and q.form in _MEASURED and q.unit != "a" for q in st.quantities
        ):
            continue  # "maybe thirty inches" is about thirty
        if not any((a <= start and end <= b) or a <= start < b for a, b in never):
            return start, end, words
    return _either(st)


def _modal(st: Statement) -> list[tuple[int, int, str]]:
    """Where "might" or "may" stands before any verb, but not what "you might" do."""
    found = []
    for at, word in enumerate(st.norms[:-1]):
        later = st.norms[at + 1 : at + 4]
        if (
            word == "could"
            and "be" in later[1:]
            and not {"not", "you", "i", "we", "better", "worse"} & {*later, *st.norms[max(0, at - 1) : at]}
        ):
            found.append((at, at + 2, f"could {later[0]} be"))
        if word in {"might", "may"} and (not at or st.norms[at - 1] not in {"you", "in", "of", "i", "we"}):
            following = st.norms[at + 1]
            if following.isalpha() and following not in {"as", "want", "the", "of"} and at not in st.masked:
                found.append((at, at + 2, f"{word} {following}"))
    return found


def doubted(st: Statement, *, carried: str | None = None) -> Draft | None:
    """A draft for what the speaker is not sure of, or has only been told; *carried* by the statement before it."""
    found = cue_of_doubt(st)
    told = hearsay(st)
    if only_hedges(st):
        found = None  # "i do believe", said of what went before
    if found is None and not told and carried is None:
        return None
    year = next((q for q in st.quantities if q.form == "year"), None)
    age = next((q for q in st.quantities if q.unit == "a"), None)
    more: dict[str, Any] = {}
    if year is not None:
        more = {"attribute": "made", "value": year.value, "unit": "a"}
    elif age is not None:
        more = {"attribute": "age", "value": age.value, "unit": "a"}
    else:
        other = next((q for q in st.quantities if q.form == "quantity"), None)
        short = short_year_told(st)
        bare = [q for q in st.quantities if q.form == "bare" and q.value > 1 and _ends_with(st, q)]
        if short is not None:
            more = {"attribute": "made", "value": Decimal(short), "unit": "a"}
        elif other is not None:
            more = {"value": other.value, "unit": other.unit}
        elif bare:
            more = {"value": bare[-1].value}
    by = source(st) if told else None
    what = (f"said by {by or 'somebody else'}: " if told else "") + st.said(st.opening())
    why = "hearsay" if told else carried or f"doubt: '{found[2] if found else ''}'"
    return st.draft("doubted", what, why, condition="unclear", sure=False, **more)


def _ends_with(st: Statement, quantity: Quantity) -> bool:
    """Whether a bare number is told, and counts nothing: it ends what is said, or small words follow it."""
    after = st.norms[quantity.end : quantity.end + 1]
    return not after or after[0] in members("clauses", "conjunctions") | members("clauses", "prepositions") | {
        "when",
        "maybe",
        "now",
        "years",
    }


#: Words of a question put to somebody.
_PUT_TO = frozenset({"you", "your", "guys", "we", "i", "me", "us", "anybody", "anyone"})
#: The longest statement that is nothing but one thing or another.
_EITHER_LONGEST = 5


def asks_which(st: Statement) -> bool:
    """Whether a question is the speaker's own, which of two things it is: "is that just age or is the base gone"."""
    return "or" in st.norms[2:] and not _PUT_TO & set(st.norms) and st.norms[-2:] != ["or", "not"]


def _either(st: Statement) -> tuple[int, int, str] | None:
    """One thing or another, and no more said: "mold or dirt", "from the balcony door or the unit above"."""
    at = next((i for i, w in enumerate(st.norms) if w == "or"), None)
    if at is None or at == 0 or at == len(st.norms) - 1:
        return None
    verbs = GRAMMAR.aux | GRAMMAR.verbs | {"i", "we", "not", "no"}
    numbers = {q.start for q in st.quantities} | {q.end for q in st.quantities}
    judged = any(is_wrong(w) for w in st.norms)
    if len(st.norms) <= _EITHER_LONGEST and judged and not verbs & set(st.norms) and not numbers & {at, at + 1}:
        return at, at + 1, "or"
    source_ = next((i for i in range(at) if st.norms[i] == "from"), None)
    flows = {"coming", "getting", "leaking", "running", "dripping", "entering"} & set(st.norms[:at])
    return (source_, at + 1, "or") if source_ is not None and flows else None


def only_hedges(st: Statement) -> bool:
    """Whether a statement is nothing but "maybe", "i think": it doubts what went before."""
    found = cue_of_doubt(st)
    return found is not None and found[2] in _MILD and not set(st.norms[: found[0]] + st.norms[found[1] :]) - _EMPTY


_EMPTY = frozenset({"so", "it", "that", "yeah", "or", "and"})


def leaves_open(st: Statement) -> str | None:
    """Why the next statement is in doubt: this one is hardly more than "the neighbor mentioned" or "question is whether"."""
    if len(st.norms) > _OPEN_LONGEST:
        return None
    if st.norms[-1] in {"it", "so", "okay", "though"}:
        return None
    told = said_by(st)
    if told and told[0] <= st.opening() + _OPEN_TAIL + 1 and len(st.norms) - told[1] <= _OPEN_TAIL:
        return "hearsay"
    for start, end, words in cues("doubts", "cues").find(st.norms):
        if start <= st.opening() + _OPEN_TAIL and len(st.norms) - end <= _OPEN_TAIL and words in _TAKES_MORE:
            return f"doubt: '{words}'"
    return None


_TAKES_MORE = frozenset({"there is a chance", "good chance", "doubtful", "hopefully", "question is", "i wonder", "wonder", "wondering", "i suspect", "i assume", "i believe", "my guess",
                         "presumably", "question whether", "check whether", "find out if", "find out whether"})  # fmt: skip


def asserted_before(st: Statement) -> int | None:
    """Where the doubt about a cause begins, when something was told before it: "a stain by the corner, might be old"."""
    found = cue_of_doubt(st)
    if found is None or found[2] not in _OF_CAUSE or hearsay(st):
        return None
    if st.norms[st.opening()] in members("clauses", "auxiliaries"):
        return None  # "is it still leaking i don't know"
    start = found[0]
    while start > 0 and st.norms[start - 1] in {"it", "that", "but", "and", "i", "am", "though", "this", "they"}:
        start -= 1
    before = st.norms[:start]
    told = set(before) & (members("clauses", "auxiliaries") | members("clauses", "verbs") | {"got", "some", "a", "see"})
    return start if told and before[-1:] not in (["is"], ["are"], ["was"], ["if"]) else None


def read_before(st: Statement) -> int | None:
    """Where the doubt begins, when an instrument was read before it: "meter pegs at forty … I think"."""
    found = cue_of_doubt(st)
    if found is None or not any(end <= found[0] for _, end in st.instruments):
        return None
    return found[0] if any(q.end <= found[0] for q in st.quantities) else None
