"""Canonical JSON against RFC 8785 (its appendix B and the examples of section 3.2) and the library rfc8785."""

import json
import struct
from typing import Any

import pytest
import rfc8785
from hypothesis import example, given, settings
from hypothesis import strategies as st

from witnessmark.journal.canonical import DEEPEST, LARGEST_WHOLE, encode, encode_simple
from witnessmark.problems import Refusal

# RFC 8785, appendix B, table 1: IEEE 754 bits and their JSON; checked in several public copies of the table.
APPENDIX_B = [
    ("0000000000000000", "0"),
    ("8000000000000000", "0"),
    ("0000000000000001", "5e-324"),
    ("8000000000000001", "-5e-324"),
    ("7fefffffffffffff", "1.7976931348623157e+308"),
    ("ffefffffffffffff", "-1.7976931348623157e+308"),
    ("4340000000000000", "9007199254740992"),
    ("c340000000000000", "-9007199254740992"),
    ("4430000000000000", "295147905179352830000"),
    ("44b52d02c7e14af5", "9.999999999999997e+22"),
    ("44b52d02c7e14af6", "1e+23"),
    ("44b52d02c7e14af7", "1.0000000000000001e+23"),
    ("444b1ae4d6e2ef4e", "999999999999999700000"),
    ("444b1ae4d6e2ef4f", "999999999999999900000"),
    ("444b1ae4d6e2ef50", "1e+21"),
    ("3eb0c6f7a0b5ed8c", "9.999999999999997e-7"),
    ("3eb0c6f7a0b5ed8d", "0.000001"),
    ("41b3de4355555553", "333333333.3333332"),
    ("41b3de4355555554", "333333333.33333325"),
    ("41b3de4355555555", "333333333.3333333"),
    ("41b3de4355555556", "333333333.3333334"),
    ("41b3de4355555557", "333333333.33333343"),
    ("becbf647612f3696", "-0.0000033333333333333333"),
    ("43143ff3c1cb0959", "1424953923781206.2"),
]


@pytest.mark.parametrize(("bits", "text"), APPENDIX_B)
def test_numbers_of_appendix_b(bits: str, text: str) -> None:
    (value,) = struct.unpack(">d", bytes.fromhex(bits))
    assert encode(value) == text.encode()


@pytest.mark.parametrize("bits", ["7fffffffffffffff", "7ff0000000000000", "fff0000000000000"])
def test_what_is_no_number_is_refused(bits: str) -> None:
    (value,) = struct.unpack(">d", bytes.fromhex(bits))
    with pytest.raises(Refusal) as caught:
        encode([value])
    assert caught.value.problems[0].number == "WM208"


def test_the_example_of_section_3_2_2() -> None:
    value = json.loads(
        '{"numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],'
        '"string": "\\u20ac$\\u000F\\u000aA\'\\u0042\\u0022\\u005c\\\\\\"\\/", "literals": [null, true, false]}'
    )
    assert encode(value).decode() == (
        '{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],'
        '"string":"€$\\u000f\\nA\'B\\"\\\\\\\\\\"/"}'
    )


def test_the_key_order_of_section_3_2_3() -> None:
    value = {
        "\u20ac": "Euro Sign",
        "\r": "Carriage Return",
        "\ufb33": "Hebrew Letter Dalet With Dagesh",
        "1": "One",
        "\U0001f600": "Emoji: Grinning Face",
        "\u0080": "Control",
        "\u00f6": "Latin Small Letter O With Diaeresis",
    }
    assert [word.split('"')[0] for word in encode(value).decode().split(':"')[1:]] == [
        "Carriage Return", "One", "Control", "Latin Small Letter O With Diaeresis", "Euro Sign", "Emoji: Grinning Face",
        "Hebrew Letter Dalet With Dagesh",
    ]  # fmt: skip


values = st.recursive(
    st.none()
    | st.booleans()
    | st.integers(-LARGEST_WHOLE, LARGEST_WHOLE)
    | st.floats(allow_nan=False, allow_infinity=False)
    | st.text(),
    lambda inner: st.lists(inner, max_size=5) | st.dictionaries(st.text(), inner, max_size=5),
    max_leaves=25,
)


@given(values)
@settings(max_examples=300)
@example({"\ue000": 1, "\U00010000": 2})
@example({"a": 1e300, "b": [-0.0, 1e-7, 123456789012345680000.0]})
def test_same_bytes_as_the_library(value: Any) -> None:
    assert encode(value) == rfc8785.dumps(value)


@given(values)
@settings(max_examples=100)
def test_it_parses_back_and_encoding_again_changes_nothing(value: object) -> None:
    def number(text: str) -> float:
        # A double from 2**53 up is written without decimals; a reader must take it for a double again.
        return int(text) if abs(int(text)) <= LARGEST_WHOLE else float(text)

    assert encode(json.loads(encode(value), parse_int=number)) == encode(value)


@given(st.dictionaries(st.text(alphabet="azAZ_", max_size=4), st.text() | st.integers(0, LARGEST_WHOLE) | st.none()))
def test_the_fast_way_gives_the_same_bytes(value: Any) -> None:
    assert encode_simple(value) == rfc8785.dumps(value)


@pytest.mark.parametrize(
    "value",
    [
        "\ud800",
        {"\udfff": 1},
        {"é": "\ud800"},
        LARGEST_WHOLE + 1,
        [-LARGEST_WHOLE - 1, 0.5],
        {1: "a"},
        {"a": {1, 2}},
        b"bytes",
    ],
    ids=repr,
)
def test_what_has_no_form_is_refused(value: object) -> None:
    with pytest.raises(Refusal) as caught:
        encode(value)
    assert caught.value.problems[0].number == "WM208"


def test_too_deep_is_refused_rather_than_running_out_of_stack() -> None:
    deep: list[object] = []
    for _ in range(DEEPEST):
        deep = [deep]
    assert encode(deep) == b"[" * (DEEPEST + 1) + b"]" * (DEEPEST + 1)
    for _ in range(100_000):
        deep = [deep]
    with pytest.raises(Refusal) as caught:
        encode(deep)
    assert caught.value.problems[0].number == "WM208"
