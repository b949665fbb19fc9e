"""What is said with every answer about age and life."""

from __future__ import annotations

__all__ = ["NO_PROMISE", "OPT_IN"]

OPT_IN = (
    "Some laws do not ask for the life that is left, or forbid foretelling it (New Jersey's practice rule expressly does "
    "not require it): show this only where the law allows it and the client has asked for it in writing."
)
NO_PROMISE = (
    "Lives in lists are averages over many houses; how this part was installed, used and kept decides, and its "
    "condition on the day goes before any list."
)
