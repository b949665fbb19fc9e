"""What does "nothing" say? After a switch, that the thing is dead; after a sniffer or a meter, that there is nothing to find."""

from __future__ import annotations

from collections.abc import Sequence

from witnessmark.listening.beside import Item
from witnessmark.listening.drafts import Draft
from witnessmark.listening.statement import Statement

__all__ = ["answered_nothing"]

#: What is said when nothing answers; small words before and after it are passed over.
_NOTHING = frozenset({"nothing", "nada", "zip", "zilch"})
_SMALL = frozenset(
    {"and", "but", "so", "well", "still", "there", "here", "yet", "no", "nope", "again", "either", "at", "all", "just"}
)
#: Words of looking for what should not be there.
_LOOKED_FOR = frozenset({"sniffed", "sniffer", "detector", "smelled", "smell", "sniff", "meter", "probed", "tester", "soap", "soaped",
                         "bubbles", "felt", "listened", "checked", "looked", "scanned", "camera", "mirror", "dye", "flashlight"})  # fmt: skip


def answered_nothing(st: Statement, items: Sequence[Item]) -> list[Draft]:
    """One draft where a statement ends in "nothing" and it, or the one before it, tells what was tried or looked for."""
    words = [word for word in st.norms if word not in _SMALL]
    if not words or words[-1] not in _NOTHING:
        return []
    alone = len(words) == 1
    last = items[-1] if alone and items else None
    if alone and (last is None or last.mode is not None):
        return []
    said = set(last.statement.norms if last is not None else words)
    thing = st.thing if last is None or st.named else last.statement.thing
    if thing is None and last is not None and last.statement.mentions:
        thing = st.scene.thing(last.statement.mentions[0][1], st.scene.place)  # "over the gas piping with the sniffer"
    if thing is None:
        return []
    if said & _LOOKED_FOR:
        return [st.draft("saw", "nothing found", "'nothing'", thing, condition="sound")]
    started = last is not None and any(d.act == "ran" and d.left in {"on", None} for d in last.drafts)
    if started or (not alone and st.operated):
        return [st.draft("saw", "nothing happened", "'nothing'", thing, condition="adverse")]
    return []
