"""The pages of the documentation that are made from packs: the form of a pack file, and each rulebook."""

from __future__ import annotations

from collections.abc import Mapping

from witnessmark.packs.kinds_page import kinds_page
from witnessmark.packs.model import (
    AttributeValue,
    ConditionWord,
    Definition,
    Delivery,
    Departure,
    Duty,
    FormItem,
    LawForm,
    LookAgain,
    Numeric,
    Packs,
    Part,
    Rulebook,
    Subject,
    Summary,
)
from witnessmark.packs.provenance import PROVENANCE_KEYS
from witnessmark.packs.rows import keys_of
from witnessmark.packs.rulebook_page import rulebook_page
from witnessmark.packs.terms import TABLES

__all__ = ["pages"]

_HEAD = """# The keys of pack files

Made from the program itself; `README.md` beside this page tells how packs are used. Every file begins with `pack` and
`version`; `source`, `tag`, `in_force` and `until` may stand there for all its rows, or in a row. A key in bold must be
there. A text is written in quotes, and so is a number that was published, so that no digit is lost.
"""

#: Fields of a rulebook that stand in tables of their own.
_FROM_TABLES = {"duties", "definitions", "condition_words", "deliveries", "summary", "departure", "form", "form_items"}
_NESTED = (
    ("a part, in `parts` of a kind", Part),
    ("a second look, `look_again` of a procedure", LookAgain),
    ("a value, in `values` of an attribute", AttributeValue),
    ("a subject, in `subjects` of a duty", Subject),
    ("a number, in `numeric` of a duty", Numeric),
)


def _table(title: str, cls: type, more: tuple[str, ...] = ()) -> list[str]:
    lines = [f"## {title}", "", "| key | holds |", "|---|---|"]
    for key in keys_of(cls):
        if key.name not in _FROM_TABLES:
            name = f"**{key.name}**" if key.required else key.name
            lines.append(f"| {name} | {key.holds} |")
    lines += [f"| {name} | see above |" for name in more]
    return [*lines, ""]


def _form() -> str:
    lines = [_HEAD]
    for table, (cls, _) in TABLES.items():
        lines += _table(f"`[[{table}]]`", cls, PROVENANCE_KEYS)
    lines += _table("`[rulebook]`", Rulebook, PROVENANCE_KEYS)
    lines += _table("`[[definition]]` of a rulebook", Definition)
    lines += _table("`[[duty]]` of a rulebook", Duty, PROVENANCE_KEYS)
    lines += _table("`[[condition_word]]` of a rulebook", ConditionWord)
    lines += _table("`[[delivery]]` of a rulebook", Delivery)
    lines += _table("`[summary]` of a rulebook", Summary)
    lines += _table("`[departure]` of a rulebook", Departure)
    lines += _table("`[form]` of a rulebook", LawForm)
    lines += _table("`[[form_item]]` of a rulebook", FormItem)
    for title, cls in _NESTED:
        lines += _table(title[0].upper() + title[1:], cls)
    return "\n".join(lines)


def pages(packs: Packs) -> Mapping[str, str]:
    """File name below ``docs/packs`` to Markdown. The same packs give the same pages."""
    made = {"keys.md": _form(), "kinds.md": kinds_page(packs)}
    for book in packs.rulebooks.values():
        made[f"{book.id}.md"] = rulebook_page(book)
    return made
