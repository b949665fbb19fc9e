"""The facts of a job in TOML: written, read back, and every mistake named with the key and what is allowed."""

from __future__ import annotations

import dataclasses
import tomllib
from hashlib import sha256

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from witnessmark.journal.identity import new_id
from witnessmark.journal.job import Alteration, Job
from witnessmark.journal.job_codec import facts_hash, job_from_toml, job_to_toml
from witnessmark.problems import Refusal

ID = "017f22e2-79b0-7cc3-98c4-dc0c0c07398f"
WRITTEN = f"""
id = "{ID}"
address = "12 Invented Lane"
town = "Sampleton, WA 98000"
client = "C. Example"
inspector = "I. Example"
licence = "0000"
rulebook = "us.wa.308-408c"
date = 2026-03-14
year_built = 1962
storeys = 1.5
area = 1850
area_unit = "[sft_i]"
foundation = "crawl space"
occupied = false
fuels = ["natural gas", "wood"]
attached_garage = true
firm = "Example Inspections"
invented = true
note = "key in the lockbox"

[[altered]]
what = "kitchen"
year = 2004
""".encode()
READ = Job(
    id=ID,
    address="12 Invented Lane",
    town="Sampleton, WA 98000",
    client="C. Example",
    inspector="I. Example",
    licence="0000",
    rulebook="us.wa.308-408c",
    date="2026-03-14",
    year_built=1962,
    altered=(Alteration("kitchen", 2004),),
    storeys="1.5",
    area="1850",
    area_unit="[sft_i]",
    foundation="crawl space",
    occupied=False,
    fuels=("natural gas", "wood"),
    attached_garage=True,
    firm="Example Inspections",
    invented=True,
    note="key in the lockbox",
)


def test_as_a_person_writes_it() -> None:
    assert job_from_toml(WRITTEN, "job.toml") == READ
    assert job_from_toml(job_to_toml(READ), "job.toml") == READ


def test_what_is_not_known_is_left_out() -> None:
    data = job_to_toml(Job(ID))
    assert tomllib.loads(data.decode()) == {"id": ID}
    assert job_from_toml(data, "job.toml") == Job(ID)


def test_the_hash_is_that_of_the_bytes() -> None:
    assert facts_hash(WRITTEN) == sha256(WRITTEN).hexdigest()


@pytest.mark.parametrize(
    ("line", "number", "said"),
    [
        ("adress = 'x'", "WM251", "key adress, which holds 'x': allowed are id, address, town"),
        ("address = ['x']", "WM252", "key address"),
        ("address = true", "WM252", "text in quotes"),
        ("client = 1979-05-27T07:32:00Z", "WM252", "key client"),
        ("year_built = '1962'", "WM252", "year of four digits"),
        ("year_built = 62", "WM252", "year of four digits"),
        ("year_built = true", "WM252", "year of four digits"),
        ("occupied = 'no'", "WM252", "true or false"),
        ("occupied = 0", "WM252", "true or false"),
        ("fuels = 'wood'", "WM252", "list of texts"),
        ("fuels = [1]", "WM252", "list of texts"),
        ("date = 'March 14'", "WM252", "such as 2026-03-14"),
        ("date = 2026-03-14T00:00:00Z", "WM252", "such as 2026-03-14"),
        ("date = '20260314'", "WM252", "such as 2026-03-14"),
        ("area = '1,850'", "WM252", "without separators"),
        ("area = -3", "WM252", "without separators"),
        ("altered = 'kitchen'", "WM252", "what and year"),
        ("altered = ['kitchen']", "WM252", "what and year"),
        ("altered = [{ what = 'kitchen' }]", "WM252", "what and year"),
        ("altered = [{ what = 'kitchen', year = '2004' }]", "WM252", "year of four digits"),
        ("altered = [{ what = 'kitchen', year = 2004, by = 'x' }]", "WM252", "what and year"),
        ("address =", "WM250", "not TOML"),
        ("address = 'x'\naddress = 'y'", "WM250", "not TOML"),
        ("x = " + "[" * 5000, "WM250", "not TOML"),
        ("x = " + "9" * 5000, "WM250", "not TOML"),
    ],
)
def test_a_mistake_is_named(line: str, number: str, said: str) -> None:
    with pytest.raises(Refusal) as caught:
        job_from_toml(f'id = "{ID}"\n{line}\n'.encode(), "house/job.toml")
    (problem,) = caught.value.problems
    assert (problem.number, problem.where) == (number, "house/job.toml")
    assert said in problem.detail


@pytest.mark.parametrize(("data", "number"), [(b"", "WM252"), (b"id = 'x'", "WM252"), (b"\xff", "WM250")])
def test_the_id_is_needed(data: bytes, number: str) -> None:
    with pytest.raises(Refusal) as caught:
        job_from_toml(data, "job.toml")
    assert [problem.number for problem in caught.value.problems] == [number]


def test_every_mistake_is_told_at_once() -> None:
    with pytest.raises(Refusal) as caught:
        job_from_toml(b"colour = 1\nyear_built = 'old'\n", "job.toml")
    assert [problem.number for problem in caught.value.problems] == ["WM251", "WM252", "WM252"]


@pytest.mark.parametrize(
    "change", [{"id": "x"}, {"year_built": 62}, {"area": "large"}, {"date": "today"}, {"note": 3}, {"address": "\ud800"},
               {"fuels": [None]}],
    ids=str,
)  # fmt: skip
def test_what_could_not_be_read_back_is_not_written(change: dict[str, object]) -> None:
    with pytest.raises(Refusal) as caught:
        job_to_toml(dataclasses.replace(READ, **change))  # type: ignore[arg-type] # what a caller may get wrong
    assert {problem.number for problem in caught.value.problems} == {"WM252"}


texts = st.text(max_size=20)
jobs = st.builds(
    Job,
    id=st.builds(new_id),
    address=texts,
    town=texts,
    client=texts,
    date=st.just("") | st.dates().map(lambda day: day.isoformat()),
    year_built=st.none() | st.integers(1000, 9999),
    altered=st.lists(st.builds(Alteration, texts, st.integers(1000, 9999)), max_size=3).map(tuple),
    storeys=st.none() | texts.filter(bool),
    area=st.none() | st.decimals(0, 10**6, places=2).map(str),
    occupied=st.none() | st.booleans(),
    fuels=st.lists(texts, max_size=3).map(tuple),
    invented=st.booleans(),
    note=st.none() | texts.filter(bool),
)


@given(jobs)
@settings(max_examples=150)
def test_round_trip(job: Job) -> None:
    assert job_from_toml(job_to_toml(job), "job.toml") == job


@given(st.binary(max_size=100) | st.text(max_size=100).map(str.encode))
@settings(max_examples=150)
def test_any_bytes_are_refused_and_never_an_error(data: bytes) -> None:
    with pytest.raises(Refusal) as caught:
        job_from_toml(data, "job.toml")
    assert str(caught.value).encode()
