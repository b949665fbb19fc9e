"""What was not seen, entered or operated, and why?"""

from __future__ import annotations

from decimal import Decimal

from witnessmark.listening.counts import told_count
from witnessmark.listening.drafts import Draft
from witnessmark.listening.focus import Thing
from witnessmark.listening.places import HOUSE, Place, places_in
from witnessmark.listening.statement import Statement
from witnessmark.listening.terms import cues, members

__all__ = ["reason_in", "skipped"]

_ACT_WITHIN = 3
_SEEING = frozenset({"see", "find", "view"})
_ASIDE = frozenset(
    {"really", "even", "actually", "be", "able", "to", "going", "all", "the", "way", "just", "physically", "fully"}
)


def reason_in(st: Statement) -> str | None:
    """The reason of the packs that the statement gives, or None."""
    found = sorted(st.scene.lexicon.reasons.find(st.stems), key=lambda row: row[0] - row[1])
    return found[0][2] if found else None


def _refused(st: Statement) -> tuple[int, str] | None:
    """Where the speaker says what could not or would not be done, and the act."""
    acts = members("limits", "acts")
    for start, end, negation in cues("limits", "negated").find(st.norms):
        for at in range(end, min(end + _ACT_WITHIN, len(st.norms))):
            word = st.norms[at]
            if (word in acts and at not in st.masked) or (word in acts and word == st.norms[end]):
                break
            if word not in _ASIDE:
                at = -1  # noqa: PLW2901 - something else is denied
                break
        else:
            at = -1
        if at < 0:
            continue
        act = st.norms[at]
        if act == "get" and _coaxed(st, at):
            continue  # "can't get it open": the thing does not work
        rest = st.norms[at + 1 : at + 2]
        alone = not rest or rest[0] in {"on", "off", "up", "either", "all", "at", "when", "right"}
        if negation == "did not" and start == st.opening() and alone and act in members("works", "verbs"):
            continue  # "did not open", said of what was just named
        if negation == "not" and act in _OF_THINGS and not {"i", "we"} & set(st.norms[:start]):
            continue  # "full, not running"
        if negation in {"not", "no"} and not act.endswith("ing") and act not in {"visible", "accessible"}:
            continue
        mine = st.speaker(start) or _only_a_person(st, start, at, negation)
        explicit = any(w in {"i", "we"} for w in st.norms[:start])
        if not mine or (not explicit and negation in {"would not", "will not", "do not", "was not"}):
            continue
        if act in _SEEING:
            following = st.norms[at + 1 : at + 2]
            if following == ["where"]:
                return start, f"{negation} {act}"
            looked_for = following and following[0] in members("limits", "looked_for")
            unhindered = negation in {"did not", "do not", "not", "have not"}
            whole = following and following[0] in {"the", "that", "those", "past", "behind", "inside", "all", "under"}
            if looked_for or (unhindered and not whole) or (not following and unhindered):
                continue
            if unhindered and cues("conditions", "adverse").first(st.norms, at):
                continue
        return start, f"{negation} {act}"
    return None


def _phrase(st: Statement) -> tuple[int, str] | None:
    for at, word in enumerate(st.norms):
        rest = st.norms[at + 1 : at + 2]
        if (
            word == "not"
            and st.norms[at - 2 : at] in (["i", "can"], ["i", "could"], ["we", "can"])
            and (not rest or rest[0] in {"it", "because", "they", "there", "since"})
        ):
            return at - 1, f"{st.norms[at - 1]} not do"  # "right one i can't, it's full of paint cans"
    for name in ("phrases", "stopped"):
        for start, end, words in cues("limits", name).find(st.norms):
            if start and st.norms[start - 1] == "not":
                continue
            if words.startswith("from the ") and start and st.norms[start - 1] in _COMING:
                continue  # "the line comes in from the street"
            if words == "is buried" and set(st.norms[end : end + 4]) & _SOIL:
                continue  # "siding is buried in the dirt"
            return start, words
    return None


#: Before "from the street" these tell where a thing comes from, not from where it was looked at.
_COMING = frozenset(
    {
        "in",
        "up",
        "down",
        "out",
        "away",
        "back",
        "over",
        "feet",
        "inches",
        "foot",
        "water",
        "runoff",
        "line",
        "runs",
        "comes",
        "coming",
    }
)


def _too_much_to(st: Statement) -> tuple[int, str] | None:
    """What is too much for an act of inspecting: "too tight to enter", "too cold to run it"."""
    norms = st.norms
    for at, word in enumerate(norms):
        if word != "too":
            continue
        to = next((i for i in range(at + 2, min(at + 7, len(norms) - 1)) if norms[i] == "to"), None)
        if to is None:
            continue
        act = next((w for w in norms[to + 1 : to + 4] if w not in _ASIDE or w == "see"), "")
        escape = act == "climb" and norms[to + 2 : to + 3] == [
            "out"
        ]  # "too high to climb out of": of a person who has to
        if act in members("limits", "acts") and act not in {"start", "make", "work"} and not escape:
            return at, f"too {norms[at + 1]} to {act}"
    return None


#: Before "not" these have a verb of their own after it.
_CARRIERS = frozenset({"is", "are", "was", "were", "does", "do", "did", "has", "have", "had", "will", "would", "can", "could", "should",
                       "may", "might", "must", "be", "been", "'s", "why", "if", "or", "than", "and", "but", "that", "it"})  # fmt: skip


def _left_undone(st: Statement) -> tuple[int, str] | None:
    """What was not done to a thing: "was not run", "weren't checked", "nothing was tested"."""
    norms = st.norms
    done = cues("limits", "done")
    ends = {0} | {n.end for n, _ in st.mentions}
    for at, word in enumerate(norms[:-1]):
        plain = at in ends or norms[at - 1] not in _CARRIERS
        terse = word == "not" and plain and not {"i", "we", "you", "they"} & set(norms[:at]) and done.at(norms, at + 1)
        if terse and norms[at + 1] not in {
            "seen",
            "visible",
            "included",
            "run",
            "lit",
            "reached",
            "able",
            "accessible",
        }:
            return at, f"not {norms[at + 1]}"  # "garage roof not walked"
    for at, word in enumerate(norms):
        could = norms[max(0, at - 2) : at] in (["could", "not"], ["can", "not"]) and word == "be"
        if word not in {"was", "were", "been", "being"} and not could:
            continue
        denied = could or norms[at + 1 : at + 2] == ["not"] or norms[at + 1 : at + 2] == ["never"]
        none = bool({"nothing", "none", "neither"} & set(norms[:at])) or norms[max(0, at - 2) : at] in (
            ["has", "not"],
            ["have", "not"],
        )
        if not denied and not none:
            continue
        start = at + 1 + (denied and not could)
        while start < len(norms) and norms[start] in _ASIDE:
            start += 1
        found = done.at(norms, start) if start < len(norms) else None
        if found and not (found[1] in {"seen", "visible"} and cues("conditions", "adverse").first(norms)):
            return at, f"not {found[1]}"
    return None


def _hidden(st: Statement) -> tuple[int, str] | None:
    """What things in front of it hide: "is blocked by a shelf", "snow is covering the roof"."""
    norms = st.norms
    obstacles, hidden = members("limits", "obstacles"), members("limits", "hidden")
    for at, word in enumerate(norms):
        link = norms[at + 1] if at + 1 < len(norms) else ""
        if not at or word not in hidden or link not in {"by", "with", "behind", "under", "of", "in"}:
            continue
        reached = link != "of" or not st.named or st.place is None
        if reached and not _is_clog(st, at) and any(w in obstacles for w in norms[at + 2 : at + 6]):
            return at, f"{word} {link}"
    for start, _, words in cues("limits", "hiding").find(norms):
        if ("no" not in norms[:start] and any(w in obstacles for w in norms[:start])) or (
            words == "in the way" and start
        ):
            return start, words
    return None


def _is_clog(st: Statement, at: int) -> bool:
    """Whether what is "full of leaves" is a thing that should be clear, not one that is hidden."""
    return st.norms[at] in _CLOGGED and bool(set(st.norms[at + 2 : at + 3]) & _CLOGS)


_CLOGGED = frozenset({"full", "filled", "packed", "loaded", "stuffed", "blocked", "obstructed"})
_CLOGS = frozenset(
    {"leaves", "insulation", "ice", "snow", "gravel", "mulch", "foam", "plastic", "drywall", "siding", "vines"}
)
_SOIL = frozenset({"dirt", "soil", "ground", "mulch", "grade", "concrete", "earth", "mud", "gravel"})


#: What a thing may not be doing.
_OF_THINGS = frozenset(
    {"running", "turning", "starting", "filling", "draining", "fitting", "moving", "lighting", "opening", "getting"}
)
#: What no thing does: a person is meant, whoever the statement is about ("bonding at the pipe, can't find it").
_OF_PERSONS = frozenset(
    {"see", "reach", "view", "access", "inspect", "enter", "verify", "find", "test", "check", "evaluate"}
)
_DONE_TO_IT = frozenset(
    {"force", "pull", "remove", "disturb", "touch", "try", "operate", "inspect", "test", "open", "damage"}
)
_IT = frozenset({"it", "them", "that", "those", "this", "these", "either", "any"})


def _only_a_person(st: Statement, start: int, at: int, negation: str) -> bool:
    """Whether the act at *at* is one of a person's, though the statement begins with a thing."""
    norms = st.norms
    if start and norms[start - 1] in {"it", "they", "you", "he", "she", "that", "this", "which", "who"}:
        return False
    act, following = norms[at], norms[at + 1] if at + 1 < len(norms) else ""
    if negation in {"can not", "could not"}:
        return act in _OF_PERSONS or (
            act == "get" and following in {"to", "behind", "past", "at", "into", "near", "under", "in"}
        )
    return negation in {"did not", "do not"} and act in _DONE_TO_IT and following in _IT


def _coaxed(st: Statement, at: int) -> bool:
    """Whether "get" means to make a thing do something: "get it to latch", "get the window open"."""
    following = st.norms[at + 1 : at + 7]
    if following[:1] not in (["it"], ["that"], ["this"], ["them"], ["the"], ["any"], ["these"], ["those"], ["either"]):
        return False
    done = {"open", "closed", "shut", "lit", "going", "started", "running", "working"}
    return any(w in done for w in following[1:]) or any(
        w == "to" and following[i + 1 : i + 2] and following[i + 1] in members("works", "verbs")
        for i, w in enumerate(following)
    )


def skipped(st: Statement) -> Draft | None:
    """A draft for what was not inspected. The reason is looked for here; the listener looks in the statements beside it."""
    found = _refused(st) or _too_much_to(st) or _left_undone(st) or _hidden(st) or _phrase(st)
    if found is None:
        return None
    temperature = next((q for q in st.quantities if q.form == "quantity"), None)
    year = next((q for q in st.quantities if q.form == "year"), None)
    more: dict[str, object] = {}
    if temperature is not None:
        more = {"value": temperature.value, "unit": temperature.unit}
    elif year is not None:
        more = {"value": year.value, "unit": "a"}
    elif (many := told_count(st)) is not None:
        more = {"value": Decimal(many.number), "unit": "1"}
    return st.draft(
        "skipped",
        st.said(st.opening()),
        f"not done: '{found[1]}'",
        _place(st, found[1].rpartition(" ")[2]),
        reason=reason_in(st),
        **more,
    )


#: Acts that are done to a place.
_GOING = frozenset({"get", "go", "enter", "walk", "walking", "crawl", "crawling", "traverse", "climb", "climbing", "going",
                    "getting", "fit", "cross", "step"})  # fmt: skip


def _place(st: Statement, act: str) -> Thing | None:
    """The place as a component, when a place and no component is what was not entered, walked or reached.

    "Couldn't get all the way in", said at a hatch, is said of what the hatch leads to.
    """
    if st.named:
        return None
    scene = st.scene
    spots = [p for _, _, p in places_in(st.norms, st.stems, scene.lexicon) if p.sort != HOUSE.sort]
    if spots:
        return scene.of_place(spots[0])
    if act not in _GOING:
        return None
    focus = scene.focus
    led_to = next(
        (sort for sort in scene.lexicon.packs.sorts if focus and focus.kind and focus.kind.startswith(f"{sort}-")), None
    )
    return (scene.of_place(Place(led_to, led_to.replace("-", " "), led_to)) if led_to else None) or scene.of_place(
        scene.place
    )
