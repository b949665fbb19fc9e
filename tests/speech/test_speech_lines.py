"""Words become short lines that never overlap, whatever an engine makes of its times."""

from itertools import pairwise

from hypothesis import given, settings
from hypothesis import strategies as st

from witnessmark.speech import Segment, Word
from witnessmark.speech.lines import lines


def said(*rows: tuple[str, float, float]) -> Segment:
    return Segment.of(tuple(Word(text, start, end, 0.9) for text, start, end in rows))


def cut(*segments: Segment) -> list[tuple[float, float, str]]:
    return [(line.start, line.end, line.text) for line in lines(segments)]


def test_a_full_stop_ends_a_line() -> None:
    assert cut(said(("Oven", 0, 0.3), ("on.", 0.3, 0.6), ("Sink", 0.7, 1), ("drips.", 1, 1.4))) == [
        (0, 0.6, "Oven on."),
        (0.7, 1.4, "Sink drips."),
    ]


def test_a_pause_ends_a_line_also_within_a_segment() -> None:
    assert cut(said(("oven", 0, 0.3), ("on", 0.3, 0.6), ("sink", 1.3, 1.6))) == [
        (0, 0.6, "oven on"),
        (1.3, 1.6, "sink"),
    ]


def test_a_statement_that_goes_on_in_the_next_segment_stays_one_line() -> None:
    assert cut(said(("the", 0, 0.2), ("oven", 0.2, 0.5)), said(("is", 0.6, 0.7), ("on.", 0.7, 1))) == [
        (0, 1, "the oven is on.")
    ]


def test_long_talk_without_a_stop_is_cut() -> None:
    rows = [(f"w{n}{',' if n % 10 == 9 else ''}", n * 0.25, n * 0.25 + 0.25) for n in range(200)]
    made = cut(said(*rows))
    assert max(end - start for start, end, _ in made) <= 7.5
    assert " ".join(text for _, _, text in made) == " ".join(word for word, _, _ in rows)


def test_a_segment_without_words_is_a_line() -> None:
    assert cut(Segment(3, 5, " oven on "), Segment(6, 7, "")) == [(3, 5, "oven on")]


TIMES = st.floats(0, 50)


@given(
    st.lists(st.lists(st.tuples(st.sampled_from(["a", "b.", "c,"]), TIMES, TIMES), min_size=1, max_size=6), max_size=6)
)
@settings(max_examples=150, deadline=None)
def test_no_word_is_lost_and_lines_never_run_backwards(rows: list[list[tuple[str, float, float]]]) -> None:
    segments = [said(*((word, a, max(a, b)) for word, a, b in row)) for row in rows]
    made = cut(*segments)
    assert " ".join(text for _, _, text in made).split() == [word for row in rows for word, _, _ in row]
    assert all(start <= end for start, end, _ in made)
    assert all(a[1] <= b[0] for a, b in pairwise(made) if a[1] > a[0])
