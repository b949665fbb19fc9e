"""Ids: UUID version 7 as RFC 9562 defines it."""

import random
import uuid

import pytest
from hypothesis import given
from hypothesis import strategies as st

from witnessmark.journal.identity import Ids, is_id, is_uuid, new_id


def test_the_example_of_rfc_9562() -> None:
    # Appendix A.6: 2022-02-22 14:22:22.00 GMT-05:00, rand_a 0xcc3, rand_b 0x18c4dc0c0c07398f.
    assert is_id("017f22e2-79b0-7cc3-98c4-dc0c0c07398f")
    tail = 0xCC3 << 62 | 0x18C4DC0C0C07398F
    assert tail >> 73 == 1  # a maker leaves the top bit clear, so it counts up to this one
    parts = iter([tail - 2, 1])
    maker = Ids(lambda _: next(parts))
    maker.new(0x017F22E279B0)
    assert maker.new(0x017F22E279B0) == "017f22e2-79b0-7cc3-98c4-dc0c0c07398f"


@given(st.integers(0, 2**48 - 1))
def test_the_standard_library_reads_the_same_version_variant_and_time(ms: int) -> None:
    made = uuid.UUID(Ids().new(ms))
    assert (made.version, made.variant) == (7, uuid.RFC_4122)
    assert made.int >> 80 == ms


@given(st.lists(st.integers(0, 5), min_size=2, max_size=50), st.integers(0, 2**32))
def test_ids_only_grow_even_when_the_clock_does_not(clock: list[int], seed: int) -> None:
    maker = Ids(random.Random(seed).getrandbits)  # noqa: S311 - any bits will do, not secrets
    made = [maker.new(ms) for ms in clock]
    assert made == sorted(set(made))
    assert all(is_id(one) for one in made)


def test_a_full_millisecond_runs_over_into_the_next() -> None:
    maker = Ids(lambda bits: 2**bits - 1)
    ids = [maker.new(7)]
    maker._tail = 2**74 - 1
    ids += [maker.new(7), maker.new(7)]
    assert ids == sorted(set(ids))
    assert uuid.UUID(ids[1]).int >> 80 == 8


def test_ids_of_the_process() -> None:
    made = [new_id() for _ in range(2000)]
    assert made == sorted(set(made))


@pytest.mark.parametrize("ms", [-1, 2**48])
def test_a_time_that_does_not_fit(ms: int) -> None:
    with pytest.raises(ValueError, match="do not fit an id"):
        Ids().new(ms)


@pytest.mark.parametrize(
    ("text", "id_", "uuid_"),
    [
        ("106dd8f9-28a0-4e3c-beff-2f74defbcbff", False, True),
        ("017F22E2-79B0-7CC3-98C4-DC0C0C07398F", False, False),
        ("017f22e2-79b0-7cc3-18c4-dc0c0c07398f", False, False),
        ("017f22e279b07cc398c4dc0c0c07398f", False, False),
        ("017f22e2-79b0-7cc3-98c4-dc0c0c07398f\n", False, False),
        ("", False, False),
    ],
)
def test_what_is_an_id(text: str, id_: bool, uuid_: bool) -> None:
    assert (is_id(text), is_uuid(text)) == (id_, uuid_)
