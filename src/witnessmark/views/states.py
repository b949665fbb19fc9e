"""Whether two ways of saying how something stands mean the same state."""

from __future__ import annotations

import re
from functools import lru_cache

from witnessmark.problems import Refusal
from witnessmark.units import exact, parse_quantity

__all__ = ["as_it_was", "contradicts", "leaves_something", "restores", "same_state"]

#: ``left`` words that leave nothing running.
_NOTHING = frozenset({"", "as found", "off", "closed"})
#: Words that say by themselves that something is back as it was found.
_BACK = re.compile(r"\b(as (it was )?found|as it was|put back|restored|back in place|replaced)\b")
_NEGATED = re.compile(r"\b(not|never|no longer|isn't|wasn't|couldn't|could not)\b")
_WORD = re.compile(r"[\w.%°/]+")
#: Ways of saying one state. Each set is one state.
_SAME = (
    frozenset({"off", "stopped", "shut off", "turned off", "switched off", "not running"}),
    frozenset({"on", "running", "turned on", "switched on"}),
    frozenset({"closed", "shut"}),
    frozenset({"empty", "drained", "emptied"}),
    frozenset({"latched", "fastened"}),
)


def leaves_something(left: str) -> bool:
    """Whether a ``left`` word says that something is still running, open, filled, unlatched, tripped or changed."""
    return " ".join(left.lower().split()) not in _NOTHING


def as_it_was(state: str) -> bool:
    """Whether the words say that something is back as it was found, without naming the state.

    >>> as_it_was("cover put back"), as_it_was("not put back")
    (True, False)
    """
    plain = state.lower()
    return bool(_BACK.search(plain)) and not _NEGATED.search(plain)


def _plain(text: str) -> str:
    return " ".join(text.lower().split())


@lru_cache(maxsize=4096)
def _same(left: str, right: str) -> bool:
    one, two = _plain(left), _plain(right)
    if one == two or any(one in names and two in names for names in _SAME):
        return True
    try:
        first, second = parse_quantity(left), parse_quantity(right)
        return exact(first, second.unit) == second.value
    except Refusal:
        return False


def same_state(left: str | None, right: str | None) -> bool:
    """Whether two descriptions of a state are one: the same words, words known to mean one, or the same quantity.

    Nothing agrees with nothing said.

    >>> same_state("68 degF", "68 °F"), same_state("off", "turned off"), same_state("on", "on standby")
    (True, True, False)
    """
    return bool(left) and bool(right) and _same(left or "", right or "")


def restores(state: str, found: str) -> bool:
    """Whether *state* says that something stands again as it was *found*: it says all that *found* says.

    >>> restores("set back to 68 °F", "68"), restores("off", "off and locked"), restores("not locked", "locked")
    (True, False, False)
    """
    if same_state(state, found) or as_it_was(state):
        return True
    if bool(_NEGATED.search(state.lower())) != bool(_NEGATED.search(found.lower())):
        return False
    wanted = set(_WORD.findall(_plain(found)))
    return bool(wanted) and wanted <= set(_WORD.findall(_plain(state)))


def contradicts(state: str, left: str) -> bool:
    """Whether *state* says that something still stands as it was *left*, or was not put back.

    >>> contradicts("open", "open"), contradicts("closed", "open"), contradicts("not put back", "on")
    (True, False, True)
    """
    if same_state(state, left):
        return True
    if any(_plain(state) in names for names in _SAME) or as_it_was(state):
        return False
    return bool(_NEGATED.search(state.lower())) or "still" in _WORD.findall(_plain(state))
