"""What does a statement describe, beside what it judges? "Leader's cast iron, split at the seam" tells both.

Of a statement that finds fault only the words before the fault can describe, and only what is plainly said of the
thing ("is", "'s"); the words of the fault themselves never do.
"""

from __future__ import annotations

from collections.abc import Sequence

from witnessmark.listening.drafts import Draft
from witnessmark.listening.identities import described
from witnessmark.listening.made_of import made_of
from witnessmark.listening.polarity import senses
from witnessmark.listening.statement import Statement
from witnessmark.listening.subjects import about
from witnessmark.listening.zones import sliced

__all__ = ["descriptions"]

_COPULAS = frozenset({"is", "are", "'s", "was", "were"})
#: Words before a fault that can name a thing and say what it is.
_FEWEST = 3


def descriptions(st: Statement, judgement: Sequence[Draft], others: Sequence[Draft]) -> list[Draft]:
    """Drafts of what is described; *judgement* is what the statement judges, *others* what else it gives."""
    if any(d.condition == "adverse" for d in judgement):
        return _before_fault(st)
    found = described(st)
    if found or others:
        return found
    if judgement:
        taken = {i for s in senses(st)[0] for i in range(s.start, s.end)}
        return made_of(st, taken)
    return made_of(st)


def _before_fault(st: Statement) -> list[Draft]:
    """What is described before the first fault."""
    found, _ = senses(st)
    first = min((s.start for s in found if s.adverse), default=0)
    if st.subject is None or first < max(_FEWEST, st.subject.end + 1):
        return []
    part = sliced(st, 0, first)
    copula = next((i for i, word in enumerate(part.norms) if word in _COPULAS), None)
    if copula is None or copula + 1 >= first:
        return []
    about(part)
    if not part.named or part.thing is None:
        return []
    return [d for d in described(part) or made_of(part) if d.attribute != "location"]
