"""Which file is this: timed lines by content, refusals with numbers, nothing lost."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from witnessmark.listening import LARGEST, Narration, read_narration
from witnessmark.problems import Refusal

VTT = """WEBVTT - a title

NOTE this is no cue
and neither is this

STYLE
::cue { color: red }

1
00:00:02.800 --> 00:00:06.400 align:start position:0%
<v Speaker>flue <i>looks</i> good &amp; tight

00:01:06.400 --> 01:00:08.900
second
line
"""
SRT = "1\r\n00:00:01,500 --> 00:00:03,000\r\nflue looks good\r\n\r\n2\r\n00:00:03,000 --> 00:00:05,250\r\nfilter is dirty\r\n"


def lines(text: str | bytes) -> list[tuple[float, float, str]]:
    data = text if isinstance(text, bytes) else text.encode()
    return [(line.start, line.end, line.text) for line in read_narration(data, "n").lines]


def numbers(text: bytes) -> list[str]:
    with pytest.raises(Refusal) as refused:
        read_narration(text, "n")
    return [p.number for p in refused.value.problems]


def test_webvtt() -> None:
    # W3C WebVTT, section 4: signature, notes, styles, identifiers, settings, tags, character references.
    assert lines(VTT) == [(2.8, 6.4, "flue looks good & tight"), (66.4, 3608.9, "second line")]


def test_webvtt_with_a_byte_order_mark_and_short_times() -> None:
    assert lines(b"\xef\xbb\xbfWEBVTT\n\n00:02.800 --> 00:06.400\nflue\n") == [(2.8, 6.4, "flue")]


def test_srt() -> None:
    assert lines(SRT) == [(1.5, 3.0, "flue looks good"), (3.0, 5.25, "filter is dirty")]


def test_srt_without_blank_lines() -> None:
    text = "1\n00:00:01,500 --> 00:00:03,000\nflue\n2\n00:00:03,000 --> 00:00:05,250\nfilter\n"
    assert [t for *_, t in lines(text)] == ["flue", "filter"]


def test_json_lines() -> None:
    text = '{"t": 2.8, "text": "flue looks good"}\n\n{"t": 5, "end": 7.5, "text": "filter"}\n'
    assert lines(text) == [(2.8, 5.0, "flue looks good"), (5.0, 7.5, "filter")]


def test_a_json_list() -> None:
    assert lines('[{"start": 1, "end": 2, "text": "flue"}]') == [(1.0, 2.0, "flue")]


@pytest.mark.parametrize("stamp", ["[3:20]", "[0:03:20]", "(3:20)", "3:20", "[03:20.0]"])
def test_plain_lines(stamp: str) -> None:
    text = f"{stamp} flue looks good\n  and tight\n[1:02:03] - filter is dirty"
    assert [(a, t) for a, _, t in lines(text)] == [(200.0, "flue looks good and tight"), (3723.0, "filter is dirty")]


def test_utf16_is_read() -> None:
    assert lines("[0:01] caf\u00e9".encode("utf-16")) == [(1.0, 1.4, "caf\u00e9")]


def test_a_caption_file_in_latin_1_is_read_and_told() -> None:
    found = read_narration(
        "1\n00:00:01,000 --> 00:00:02,000\nca\xf1on heater 5\xbd inches\n".encode("latin-1"), "old.srt"
    )
    assert found.lines[0].text == "ca\xf1on heater 5\xbd inches"
    assert [p.number for p in found.problems] == ["WM606"]
    assert "byte 34" in found.problems[0].detail
    assert "line 3" in found.problems[0].detail


@pytest.mark.parametrize(
    "head",
    [
        b"RIFF\x24\x00\x00\x00WAVEfmt ", b"ID3\x04\x00", b"\xff\xfb\x90\x64", b"\x00\x00\x00\x20ftypM4A ", b"OggS\x00\x02",
        b"fLaC\x00\x00", b"\x1aE\xdf\xa3\x01\x00",
    ],
)  # fmt: skip
def test_sound_is_refused_with_what_to_do(head: bytes) -> None:
    with pytest.raises(Refusal) as refused:
        read_narration(head + bytes(100), "walk.txt")
    problem = refused.value.problems[0]
    assert problem.number == "WM601"
    assert "speech extra" in problem.message.next


@pytest.mark.parametrize(
    ("data", "number"),
    [
        (b"", "WM602"), (b" \n\t\n", "WM602"), (b"\xef\xbb\xbf", "WM602"), (bytes(range(256)) * 4, "WM605"),
        (b"\xff\xfe\xff", "WM605"), (b"\x80\x81\x01\x02\x03\x04\x05\x06\x07", "WM605"), (b"just some words\n", "WM607"),
        (b"WEBVTT\n\n", "WM607"), (b'{"no": "times"}', "WM607"), (b"[1, 2, 3]", "WM607"),
    ],
)  # fmt: skip
def test_what_is_no_narration_is_refused(data: bytes, number: str) -> None:
    assert numbers(data)[0] == number


def test_a_folder_and_a_missing_file(tmp_path: Path) -> None:
    for path, number in ((tmp_path, "WM603"), (tmp_path / "none.vtt", "WM612")):
        with pytest.raises(Refusal) as refused:
            read_narration(path)
        assert refused.value.problems[0].number == number
        assert refused.value.problems[0].where.startswith(path.name)


def test_a_huge_file_is_refused_before_it_is_read(tmp_path: Path) -> None:
    path = tmp_path / "huge.vtt"
    with path.open("wb") as file:
        file.truncate(200_000_000)  # sparse: reading it would take the memory, asking for its size does not
    with pytest.raises(Refusal) as refused:
        read_narration(path)
    assert refused.value.problems[0].number == "WM604"
    assert f"{LARGEST:,}" in refused.value.problems[0].detail


def test_lines_out_of_order_are_ordered_and_told() -> None:
    found = read_narration(b"[0:09] c\n[0:03] a\n[0:06] b\n", "n")
    assert [line.text for line in found.lines] == ["a", "b", "c"]
    assert [p.number for p in found.problems] == ["WM609"]


def test_overlapping_lines_are_kept_and_told() -> None:
    text = b"WEBVTT\n\n00:01.000 --> 00:09.000\none\n\n00:03.000 --> 00:05.000\ntwo\n"
    found = read_narration(text, "n")
    assert [line.text for line in found.lines] == ["one", "two"]
    assert [p.number for p in found.problems] == ["WM610"]


def test_a_bad_line_is_told_and_the_others_are_read() -> None:
    found = read_narration(
        b'{"t": 1, "text": "a"}\nnot json\n{"t": -4, "text": "b"}\n{"t": 3, "text": 7}\n{"t": 4, "text": "c"}', "n"
    )
    assert [line.text for line in found.lines] == ["a", "c"]
    assert [p.number for p in found.problems] == ["WM608"] * 3
    assert "line 2" in found.problems[0].where


def test_the_same_words_from_every_form() -> None:
    here = Path(__file__).parent / "narrations"
    one, other = (
        read_narration(here / "d1_basement_mechanical.jsonl"),
        read_narration(here / "d1_basement_mechanical.vtt"),
    )
    assert [line.text for line in one.lines] == [line.text for line in other.lines]
    assert [line.start for line in one.lines] == [line.start for line in other.lines]


def read_or_refuse(data: bytes) -> Narration | None:
    try:
        return read_narration(data, "n")
    except Refusal as refusal:
        return None if refusal.problems else Narration("refused without a reason", ())


TIMES = st.one_of(st.integers(), st.floats(), st.none(), st.text(max_size=5), st.booleans())
ROWS = st.lists(
    st.dictionaries(st.sampled_from(["t", "start", "end", "text"]), TIMES | st.text(max_size=20)), max_size=6
)
CUE = st.from_regex(
    r"\A(?:WEBVTT\n\n)?(?:\d{1,3}:\d{2}[.,]\d{3} --> \d{1,3}:\d{2}[.,]\d{3}\n[a-z <>&;]{0,20}\n\n?){1,5}\Z"
)


@settings(max_examples=150, deadline=None)
@given(st.one_of(st.binary(max_size=300), st.text(max_size=300).map(str.encode), CUE.map(str.encode),
                 ROWS.map(lambda rows: "\n".join(map(json.dumps, rows)).encode())))  # fmt: skip
def test_any_bytes_are_read_or_refused(data: bytes) -> None:
    found = read_or_refuse(data)
    if found is not None:
        assert found.lines
        starts = [line.start for line in found.lines]
        assert starts == sorted(starts)
        assert all(line.end >= line.start and line.text.strip() for line in found.lines)
