"""Times: RFC 3339, section 5.6 (with the examples of section 5.8 that the profile keeps)."""

from datetime import UTC, datetime, timedelta, timezone

import pytest
from hypothesis import given
from hypothesis import strategies as st

from witnessmark.journal.moment import instant, since_epoch, text_of
from witnessmark.problems import Refusal


def test_examples_of_rfc_3339() -> None:
    assert instant("1985-04-12T23:20:50.52Z") == datetime(1985, 4, 12, 23, 20, 50, 520_000, UTC)
    assert instant("1996-12-19T16:39:57-08:00") == instant("1996-12-20T00:39:57Z")
    assert instant("1937-01-01T12:00:27.87+00:20").utcoffset() == timedelta(minutes=20)


@pytest.mark.parametrize(
    "text",
    [
        "", "2026-03-14", "2026-03-14T09:26:53", "2026-03-14 09:26:53Z", "2026-03-14T09:26Z", "20260314T092653Z",
        "2026-03-14T09:26:53+0700", "2026-03-14T09:26:53+07", "2026-02-30T09:26:53Z", "2026-03-14T24:00:00Z",
        "1990-12-31T23:59:60Z", "2026-03-14T09:26:53.1234567Z", "2026-03-14T09:26:53.Z", "2026-03-14T09:26:53+24:00",
        "2026-03-14T09:26:53Z\n", "２０26-03-14T09:26:53Z", "0001-01-01T00:00:00+14:00", "9999-12-31T23:59:59-14:00",
        "2026-W11-6T09:26:53Z", "\ud800", "2026-03-14T09:26:53,5Z", "2026-03-14T09:26:53+07:00:30",
    ],
)  # fmt: skip
def test_anything_else_is_refused(text: str) -> None:
    with pytest.raises(Refusal) as caught:
        instant(text)
    assert caught.value.problems[0].number == "WM209"


def test_a_moment_without_offset_is_refused() -> None:
    with pytest.raises(Refusal):
        text_of(datetime(2026, 3, 14))  # noqa: DTZ001 - that it has no offset is what is refused
    with pytest.raises(Refusal):
        text_of(datetime(2026, 3, 14, tzinfo=timezone(timedelta(seconds=90))))


@given(
    st.datetimes(datetime(1900, 1, 2), datetime(9998, 12, 30)),  # noqa: DTZ001 - the offset is added below
    st.integers(-23 * 60, 23 * 60),
)
def test_text_and_back(naive: datetime, minutes: int) -> None:
    moment = naive.replace(tzinfo=timezone(timedelta(minutes=minutes)))
    again = instant(text_of(moment))
    assert again == moment
    assert again.utcoffset() == moment.utcoffset()
    assert since_epoch(text_of(moment)) == moment - datetime(1970, 1, 1, tzinfo=UTC)
