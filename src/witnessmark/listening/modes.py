"""How is a statement meant? As seen and done here and now, or as a what-if, teaching, a question, hearsay, chatter."""

from __future__ import annotations

from collections.abc import Sequence

from witnessmark.listening.polarity import is_wrong
from witnessmark.listening.statement import Statement
from witnessmark.listening.supposing import follows as goes_on
from witnessmark.listening.supposing import sets_aside, states_fact
from witnessmark.listening.terms import cues, members

__all__ = ["hearsay", "is_requirement", "mode", "said_by", "source", "taught_from", "told_from"]


def _supposes(st: Statement) -> bool:
    """Whether a condition opens the statement that does not merely ask ("not sure if")."""
    found = cues("scopes", "conditionals").first(st.norms)
    while found:
        start, end, words = found
        if words != "if":
            return words != "unless" or start == 0
        before = st.norms[start - 1] if start else ""
        if st.norms[start : end + 1] == ["if", "you"] and cues("scopes", "pointing").at(st.norms, start):
            return False
        if before not in members("scopes", "asking"):
            return start <= st.opening() + 1 or before == "what"
        found = cues("scopes", "conditionals").first(st.norms, end)
    return False


def _teaches(st: Statement) -> bool:
    pointing = cues("scopes", "pointing").first(st.norms)
    praised = {i for a, b, _ in cues("conditions", "sound").find(st.norms) if b - a > 2 for i in range(a, b)}  # noqa: PLR2004 - "where you want it"
    found = cues("scopes", "teaching").first(st.norms)
    while found:
        start, end, words = found
        if (
            start not in praised
            and not (words in _MOST and _told_of_these(st, end))
            and not (pointing and pointing[0] <= start < pointing[1])
            and not (words == "normally" and st.norms[-1] == "normally")
        ):
            return True
        found = cues("scopes", "teaching").first(st.norms, end)
    generic = st.begins("scopes", "generic")
    return bool(generic) and any(w in {"will", "can", "tend", "usually", "always", "would", "are"} for w in st.norms)


#: "Most of these" teaches, but not "most of these windows are painted shut".
_MOST = frozenset(
    {"most of these", "most of those", "a lot of these", "a lot of those", "lots of these", "lots of those"}
)


def _told_of_these(st: Statement, end: int) -> bool:
    rest = set(st.norms[end:])
    return bool({"are", "is"} & rest) and not {"usually", "always", "would", "will", "can", "old", "houses"} & rest


def taught_from(st: Statement) -> int | None:
    """Where teaching begins in a statement that tells something before it: nobody marked where that ends."""
    for start, _, words in cues("scopes", "teaching").find(st.norms):
        if start <= st.opening() + 2 or (words == "normally" and st.norms[-1] == "normally"):
            continue
        before = st.norms[:start]
        told = any(is_wrong(w) for w in before) or bool(set(before) & members("clauses", "auxiliaries"))
        linked = before[-1] in {
            "which",
            "that",
            "what",
            "and",
            "so",
            "because",
            "than",
            "as",
            "like",
            "where",
            "not",
            "it",
            "to",
        }
        generic = words.split()[0] in {
            "you",
            "they",
            "people",
            "when",
            "normally",
            "usually",
            "typically",
            "nobody",
            "code",
        }
        if told and generic and not linked:
            return start
        return None
    return None


def _asks(st: Statement) -> bool:
    if st.tokens[-1].question:
        return True
    at = st.opening()
    inverted = st.norms[at] in {"is", "are", "was", "were", "does", "has"} and st.norms[at + 1 : at + 2] and (
        st.norms[at + 1] in {"the", "that", "this", "those", "these", "it", "they", "your", "all"}
    )  # fmt: skip
    return bool(inverted) or st.begins("scopes", "questions") is not None


def _chats(st: Statement) -> bool:
    return (
        st.cue("scopes", "small_talk") is not None
        and not st.mentions
        and not st.quantities
        and not any(is_wrong(w) for w in st.norms)
    )


#: After "they said" a whole statement follows; "they said okay" tells nothing.
_TOLD_LEAST = 2


_SAYING = frozenset({"says", "said", "say", "told", "tells", "tell", "claims", "claimed", "claim", "mentioned", "mentions", "mention",
                     "reports", "reported", "states", "stated", "swears", "swore", "swear", "insists", "insisted", "insist", "thinks",
                     "disclosed", "discloses", "lists", "listed", "indicated", "indicates", "figures", "reckons", "advertises",
                     "believes", "noted", "notes", "admitted", "explained", "promised", "promises", "assured"})  # fmt: skip
#: How far the verb of saying stands from who says it.
_SAYER_WITHIN = 6


def said_by(st: Statement) -> tuple[int, int] | None:
    """Where somebody else is said to have said it: from who it is to the end of the verb of saying."""
    found = st.cue("scopes", "hearsay")
    if found is not None and "nobody" not in st.norms[max(0, found[0] - 2) : found[0]]:
        return found[0], found[1]
    people = members("scopes", "sources") | members("scopes", "people")
    for at, word in enumerate(st.norms):
        if word in _SAYING and at not in st.masked:
            who = next((i for i in range(at - 1, max(-1, at - 1 - _SAYER_WITHIN), -1) if st.norms[i] in people), None)
            if who is not None and not {"not", "i", "we"} & set(st.norms[who:at]):
                return who, at + 1
    return None


def hearsay(st: Statement) -> bool:
    """Whether somebody else said it: a source and a verb of saying, with something said."""
    found = said_by(st)
    if found is None:
        return False
    start, end = found
    if any(
        w in {"i", "we"} and st.norms[end + i + 1 : end + i + 2] and st.norms[end + i + 1].endswith("ed")
        for i, w in enumerate(st.norms[end:])
    ):
        return False  # "wood burning they tell me | damper i opened it"
    return len(st.norms) - end >= _TOLD_LEAST or start > st.opening() + 1 or any(q.start >= end for q in st.quantities)


def told_from(st: Statement) -> int | None:
    """Where hearsay begins in a statement that tells something of its own before it."""
    found = said_by(st)
    if found is None or len(st.norms) - found[1] < _TOLD_LEAST:
        return None
    start = found[0]
    while start > 0 and st.norms[start - 1] in members("clauses", "determiners") | {"your", "the", "and", "but", "so"}:
        start -= 1
    verbs = members("clauses", "auxiliaries") | members("clauses", "verbs") | members("conditions", "adverse")
    before = st.norms[st.opening() : start]
    return (
        start
        if len(before) > _TOLD_LEAST and set(before) & verbs and before[-1] not in {"as", "like", "what", "than"}
        else None
    )


def source(st: Statement) -> str | None:
    """Who said it, in the words used ("the seller"); None when nobody is named."""
    people = members("scopes", "sources")
    at = next((i for i, w in enumerate(st.norms) if w in people), None)
    return f"the {st.norms[at]}" if at is not None else None


#: Before a measure these say how much there ought to be: "wants six inches".
_ASKS = frozenset({"wants", "needs", "requires", "want", "require", "demands"})


def _asks_so_much(st: Statement) -> bool:
    """Whether it says how much there ought to be: "wants six inches"."""
    return any(
        w in _ASKS and any(at < q.start <= at + 3 and q.form == "quantity" for q in st.quantities)
        for at, w in enumerate(st.norms)
    )


def is_requirement(st: Statement) -> bool:
    """Whether it says how something ought to be."""
    found = st.cue("scopes", "requirements")
    if found is None:
        return _asks_so_much(st)
    if any(a <= found[0] < b for a, b, _ in cues("conditions", "sound").find(st.norms)):
        return False  # "right where it should be"
    return not set(st.norms[found[1] : found[1] + 2]) & {"good", "fine", "okay", "able", "fun", "nice"}


def _is_fragment(st: Statement) -> bool:
    """Whether a statement has no verb of its own and no "no" that would deny what was supposed."""
    verbs = members("clauses", "auxiliaries") | members("clauses", "verbs") | members("clauses", "plural_verbs")
    small = len(st.norms) <= 8  # noqa: PLR2004 - "melted plastic up on top here"
    return (
        small
        and not st.mentions
        and st.opening() == 0
        and not set(st.norms) & (verbs | {"no", "i", "we"})
        and not st.quantities
        and not st.plates
    )


#: What shows that this very thing is meant.
_HERE = frozenset({"this", "here", "these", "i", "we", "ours", "i'm"})
#: With these a reason or a result of what was taught goes on.
_GOES_ON = frozenset(
    {"so", "to", "that", "which", "because", "cause", "or", "otherwise", "then", "until", "before", "after"}
)
_MODALS = frozenset({"would", "could", "might", "may", "should", "can"})
#: What things of a sort do, told of any of them: "a GFCI senses …".
_HABITS = frozenset({"senses", "detects", "works", "uses", "makes", "lets", "keeps", "catches", "allows", "prevents", "protects",
                     "stops", "gives", "trips", "measures", "closes", "opens", "carries", "takes", "needs", "wants", "lasts",
                     "helps", "means", "costs", "runs", "tells", "gets"})  # fmt: skip
_GENERIC_WITHIN = 7


_ANYTHING = frozenset({"over", "under", "more", "less", "above", "below", "that", "past", "beyond", "bigger", "smaller", "higher", "lower",
                       "closer", "farther", "older", "newer"})  # fmt: skip
_ANYBODY = frozenset({"nobody", "anybody", "anyone", "everybody", "everyone", "whoever", "people", "folks"})


def _generic(st: Statement) -> bool:
    """Whether it tells of any thing of its sort: "a good gutter will last", "a GFCI senses"."""
    at = st.opening()
    words = st.norms[at : at + _GENERIC_WITHIN]
    if words[:1] == ["anything"] and words[1:2] and words[1] in _ANYTHING:
        return True
    if (
        words[0] in _ANYBODY
        and words[1:2]
        and words[1] in _MODALS | _HABITS | {"gets", "ever", "will", "likes", "has", "does", "thinks", "wants"}
    ):
        return True
    here = [w for i, w in enumerate(st.norms) if w in _HERE and st.norms[max(0, i - 1) : i] != ["like"]]
    if words[:1] not in (["a"], ["an"], ["any"], ["every"]) or here:
        return False
    verbs = [w for w in words if w in _MODALS | {"will", "is", "are", "has", "was", "were"} | _HABITS]
    return bool(verbs) and verbs[0] not in {"is", "are", "has", "was", "were"}


def _supposed_by_order(st: Statement) -> bool:
    """Whether the verb comes first: "had it been leaking", "were it mine"."""
    at = st.opening()
    return st.norms[at : at + 1] in (["had"], ["were"]) and st.norms[at + 1 : at + 2] in (
        ["it"], ["they"], ["this"], ["that"], ["there"], ["the"], ["he"], ["she"], ["somebody"], ["someone"])  # fmt: skip


def _goes_on(st: Statement) -> bool:
    """Whether a statement goes on with what was supposed or taught just before it."""
    at = st.opening()
    first = st.norms[at : at + 8]
    begins = st.norms[0] if st.norms else ""
    if not first:
        return False
    if first[0] in {"is", "are", "was"} and begins == first[0]:
        return True  # "what you don't want | is a crack"
    verb = set(first) & (_MODALS - {"can", "should"} if not {"you", "people"} & set(first) else _MODALS)
    if set(first[:3]) & {"i", "we"}:
        return False
    if verb and not {"not"} & set(first) and not _HERE & set(first[:2]):
        return True
    if verb - {"can", "should"} and set(first) & {"you", "it", "they", "there", "that", "people", "well", "this"}:
        return True
    if "will" in first and "not" not in first and not _HERE & set(first[:3]):
        return True
    if first[0] in {"you", "people", "most", "your"} or cues("scopes", "teaching").at(st.norms, at):
        return True
    if {"i", "we"} & set(st.norms):
        return False
    if {"you", "your", "people", "nobody", "anybody", "somebody"} & set(st.norms) and not st.cue("scopes", "pointing"):
        return True
    if (
        begins == "and"
        and not st.named
        and not _HERE & set(st.norms)
        and "there" not in st.norms[:3]
        and not st.quantities
    ):
        return True
    link = next((i for i, w in enumerate(st.norms[: at + 1]) if w in _GOES_ON), None)
    if link is None or _HERE & set(st.norms) or st.quantities or begins == "but":
        return False
    return not any(n.start <= link + 3 for n, _ in st.mentions)  # "that wiring is stapled": a thing that is there


#: After so many words of "i …" a "would" no longer makes the whole a supposition.
_OWN_FIRST = 4


#: After these words what was supposed or taught has not ended yet: "you'd see | rust on the burner".
_OPEN_ENDS = frozenset({"see", "get", "have", "want", "need", "notice", "smell", "hear", "find", "be", "expect", "like", "for", "of", "a",
                        "the", "some", "and", "or", "with", "to", "in", "on", "at", "had", "put", "add", "use"})  # fmt: skip
#: After these a whole statement still belongs to what was taught: "won't write a policy till | it's gone".
_HANGING = frozenset({"till", "until", "before", "unless", "because", "when", "if", "whenever", "once"})
_REST = 2


def _is_rest(st: Statement) -> bool:
    """Whether a statement has no verb: the end of the one before it."""
    return not set(st.norms) & (members("clauses", "auxiliaries") | {"no", "i", "we"})


def mode(st: Statement, before: str | None, earlier: Sequence[str] = ()) -> str | None:
    """``hypothetical``, ``teaching``, ``question``, ``small talk``, or None for a statement of what is.

    *before* is the mode of the statement just before it, *earlier* its words: what follows from a what-if is one too, as long as it says
    would, will, can, or speaks of "you".
    """
    if _supposes(st) or _supposed_by_order(st):
        return "hypothetical"
    at = st.opening()
    after = earlier[-1] if earlier else ""
    follows = before in {"hypothetical", "teaching"}
    if (
        follows
        and before is not None
        and (goes_on(st, earlier, before) or (_goes_on(st) and not states_fact(st, earlier)))
    ):
        return before
    if follows and not st.fresh and (_is_fragment(st) or (_is_rest(st) and after in _OPEN_ENDS)):
        return before
    if follows and not st.fresh and after in _HANGING and not (after == "once" and earlier[0] in {"i", "we"}):
        return before
    if before == "hypothetical" and not st.fresh and len(st.norms) <= _REST and is_wrong(st.norms[0]):
        return before  # "suppose the pump | failed"
    aside = sets_aside(st)
    if aside is not None:
        return aside
    generic = st.norms[at] not in _HERE | {"that", "it", "those", "they", "the", "so"} and _asks_so_much(st)
    if generic or _teaches(st) or _generic(st):
        return "teaching"
    if _asks(st) and st.cue("doubts", "cues") is None:
        return "question"
    if _chats(st):
        return "small talk"
    would = [i for i, w in enumerate(st.norms) if w == "would"]
    if would and not st.cue("conditions", "adverse", max(0, would[0] - 1)) and not st.cue("doubts", "cues"):
        nearby = st.norms[max(0, would[0] - 2) : would[0]]
        own = set(st.norms[at : at + 3]) & {"i", "we"}
        if set(nearby) & {"you", "it", "they", "that", "this", "there"} and not (own and would[0] > at + _OWN_FIRST):
            return "hypothetical"
    return None
