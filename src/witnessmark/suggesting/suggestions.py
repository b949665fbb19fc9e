"""From a narration to further drafts: ask piece by piece, check every suggestion, and never harm what listening heard."""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace

from witnessmark.listening import Draft, Heard, Narration, Open
from witnessmark.packs.model import Packs
from witnessmark.problems import Problem
from witnessmark.suggesting.asking import chunks, question
from witnessmark.suggesting.checking import Checker, Unfit
from witnessmark.suggesting.endpoint import Answer, Endpoint, NoAnswer
from witnessmark.suggesting.messages import DROPPED, ERROR_STATUS, GIVEN_UP, LEAVES, NO_ANSWER, UNUSABLE

__all__ = ["Suggested", "ask_endpoint", "together"]

#: Failures in a row after which the rest is not asked.
_PATIENCE = 2
_OK = 200
#: Statuses by which servers tell that they cannot keep to a schema.
_CANNOT = frozenset({400, 404, 415, 422, 501})


@dataclass(frozen=True, slots=True)
class Suggested:
    """What a model suggested.

    Attributes:
        drafts: those that passed every check, in the order of their times.
        dropped: how many did not, by reason.
        asked, failed: pieces of the narration that were sent, and those that brought no usable answer.
        problems: what to tell.
    """

    drafts: tuple[Draft, ...] = ()
    dropped: Mapping[str, int] = field(default_factory=dict)
    asked: int = 0
    failed: int = 0
    problems: tuple[Problem, ...] = ()


def ask_endpoint(
    narration: Narration,
    packs: Packs,
    heard: Heard,
    endpoint: Endpoint,
    *,
    tell: Callable[[int, int], None] | None = None,
) -> Suggested:
    """Ask a model for drafts that listening did not make. Never raises for what the server does.

    Args:
        narration: the timed lines.
        packs: the terms a draft may use.
        heard: what listening made of the same narration; nothing it drafted or set aside is drafted again.
        endpoint: a server whose address was checked (``at_address``).
        tell: called with pieces done and in all.
    """
    name = f"endpoint {endpoint.model}"
    checker = Checker(narration, heard, packs, endpoint.model)
    problems: list[Problem] = []
    if endpoint.public:
        problems.append(LEAVES.at(name, f"{endpoint.host}, {endpoint.address}"))
    drafts: list[Draft] = []
    dropped: Counter[str] = Counter()
    asked = failed = in_a_row = 0
    constrained = True
    pieces = list(chunks(narration.lines))
    for number, lines in enumerate(pieces, 1):
        where = f"{name}, {lines[0].start:.0f} s to {lines[-1].end:.0f} s"
        asked += 1
        try:
            answer = endpoint.ask(question(lines, packs, endpoint.model, constrained=constrained))
            if constrained and answer.status in _CANNOT:
                constrained = False
                answer = endpoint.ask(question(lines, packs, endpoint.model, constrained=False))
            rows = _rows(answer)
        except NoAnswer as error:
            problems.append(NO_ANSWER.at(where, str(error)[:200]))
            rows = None
        except _Status as error:
            problems.append(ERROR_STATUS.at(where, str(error)[:200]))
            rows = None
        except (ValueError, KeyError, TypeError, IndexError, RecursionError) as error:
            problems.append(UNUSABLE.at(where, str(error)[:200]))
            rows = None
        if rows is None:
            failed, in_a_row = failed + 1, in_a_row + 1
            if in_a_row >= _PATIENCE and number < len(pieces):
                problems.append(GIVEN_UP.at(name, f"{len(pieces) - number} of {len(pieces)} pieces"))
                break
        else:
            in_a_row = 0
            for row in rows:
                try:
                    drafts.append(checker.draft(row))
                except Unfit as error:
                    dropped[str(error)] += 1
        if tell is not None:
            tell(number, len(pieces))
    if told := {reason: count for reason, count in dropped.items() if reason != "drafted already"}:
        reasons = ", ".join(f"{count} {reason}" for reason, count in sorted(told.items()))
        problems.append(DROPPED.at(name, f"{sum(told.values())} of {sum(dropped.values()) + len(drafts)}: {reasons}"))
    drafts.sort(key=lambda draft: (draft.start, draft.first))
    return Suggested(tuple(drafts), dict(dropped), asked, failed, tuple(problems))


class _Status(Exception):  # noqa: N818 - an answer that is an error
    """Raised with what the server said beside its error status."""


def _rows(answer: Answer) -> list[object]:
    """The rows of an answer.

    Raises:
        _Status: the server answered with an error.
        ValueError, KeyError, TypeError, IndexError: it is not what was asked for.
    """
    if answer.status != _OK:
        said = " ".join(answer.body[:200].decode("utf-8", "replace").split())
        raise _Status(f"{answer.status} {said}".strip())
    content = json.loads(answer.body)["choices"][0]["message"]["content"]
    if not isinstance(content, str):
        raise TypeError("the message holds no text")
    text = content.strip()
    if text.startswith("```"):
        text = text.strip("`").removeprefix("json")
    rows = json.loads(text)["drafts"]
    if not isinstance(rows, list):
        raise TypeError("drafts is no list")
    return rows


def together(heard: Heard, suggested: Suggested) -> Heard:
    """What listening heard, with the suggestions among it. Nothing that listening holds open is closed by a suggestion."""
    drafts = sorted([*heard.drafts, *suggested.drafts], key=lambda draft: (draft.start, draft.first))
    running = tuple(Open(d) for d in suggested.drafts if d.act == "ran" and d.leaves == "on")
    doubted = tuple(Open(d) for d in suggested.drafts if d.act == "doubted")
    return replace(
        heard,
        drafts=tuple(drafts),
        still_on=_by_time(heard.still_on + running),
        make_sure=_by_time(heard.make_sure + doubted),
        problems=heard.problems + suggested.problems,
    )


def _by_time(rows: tuple[Open, ...]) -> tuple[Open, ...]:
    return tuple(sorted(rows, key=lambda row: row.draft.start))
