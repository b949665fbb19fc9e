"""Nothing a user writes into a pack file raises anything but numbered problems."""

import random
import tomllib
from typing import Any

import tomli_w
from hypothesis import given, settings
from hypothesis import strategies as st

from packs.small_pack import small
from witnessmark.packs import ambiguities, parse, spoken_index
from witnessmark.problems import Problem


def survives(data: bytes, path: str = "things.toml") -> list[Problem]:
    packs, problems = parse(small() | {path: data})
    for problem in problems:
        assert problem.number.startswith("WM4")
        assert str(problem)
    spoken_index(packs)
    ambiguities(packs)
    return problems


@given(st.binary(max_size=300))
@settings(max_examples=60, deadline=None)
def test_any_bytes(data: bytes) -> None:
    survives(data)


@given(st.sampled_from(sorted(small())), st.integers(0, 10_000), st.integers(0, 40), st.binary(max_size=8))
@settings(max_examples=150, deadline=None)
def test_good_files_with_a_piece_cut_or_put_in(path: str, at: int, cut: int, put: bytes) -> None:
    data = small()[path]
    at %= len(data)
    survives(data[:at] + put + data[at + cut :], path)


SCALARS = (
    st.text(max_size=8) | st.integers(-(2**40), 2**40) | st.booleans() | st.floats(allow_nan=True) | st.dates()
    | st.datetimes()
)  # fmt: skip
VALUES = st.recursive(
    SCALARS, lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=6), inner, max_size=3)
)


@given(st.sampled_from(sorted(small())), st.randoms(use_true_random=False), VALUES)
@settings(max_examples=150, deadline=None)
def test_good_files_with_one_value_changed(path: str, chance: random.Random, value: object) -> None:
    table: Any = tomllib.loads(small()[path].decode())
    node = table
    while node:
        step = chance.randrange(len(node)) if isinstance(node, list) else chance.choice(sorted(node))
        child = node[step]
        if chance.random() < 0.4 or not isinstance(child, list | dict):
            node[step] = value
            break
        node = child
    survives(tomli_w.dumps(table).encode(), path)
