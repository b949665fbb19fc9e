"""Which procedure of the packs do the words of a statement tell of?"""

from __future__ import annotations

from witnessmark.listening.focus import Thing
from witnessmark.listening.statement import Statement
from witnessmark.listening.words import root
from witnessmark.packs.model import Procedure

__all__ = ["opening_of", "procedure_of"]


def procedure_of(st: Statement, thing: Thing | None) -> Procedure | None:
    """The procedure of *thing* of which the statement says most words; None when it tells of none."""
    if thing is None or thing.kind is None:
        return None
    rows = st.scene.lexicon.procedures.get(thing.kind, ())
    row = st.scene.lexicon.kind(thing.kind)
    own = frozenset(st.roots) | {root(w) for w in (row.name if row else thing.label).split()}
    best: tuple[int, Procedure] | None = None
    for procedure, forms in rows:
        for said in forms:
            if said.roots <= own and (best is None or len(said.roots) > best[0]):
                best = (len(said.roots), procedure)
    return best[1] if best else None


def opening_of(st: Statement, thing: Thing | None) -> Procedure | None:
    """The procedure that leaves *thing* open and says how it is closed: the one told of, else the first of its kind."""
    told = procedure_of(st, thing)
    if told is not None and told.leaves in {"open", "unlatched"}:
        return told
    rows = st.scene.lexicon.procedures.get((thing.kind or "") if thing else "", ())
    return next((row for row, _ in rows if row.leaves == "open" and row.put_back), told)
