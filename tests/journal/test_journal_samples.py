"""One line of every act and version is kept for ever: the newest code reads it and writes it back to the byte.

When an act gets a new version, add a sample for it; never change one that is there.
"""

import json
from pathlib import Path
from typing import Any

import jsonschema  # type: ignore[import-untyped] # its stubs are a package of their own
import pytest

from visit_builder import build_visit
from witnessmark.journal.acts import ACTS, BODIES, Sealed
from witnessmark.journal.chain import check_chains
from witnessmark.journal.codec import to_line
from witnessmark.journal.entry import Entry
from witnessmark.journal.fold import fold
from witnessmark.journal.lines import read_lines
from witnessmark.journal.schema import schema_files, schema_name, schema_of
from witnessmark.journal.seal import check_seal

SAMPLES = Path(__file__).parent / "samples"
PUBLISHED = Path(__file__).resolve().parents[2] / "docs" / "schema"
KEYS = sorted(BODIES)


def sample(act: str, v: int) -> tuple[Entry, bytes]:
    data = (SAMPLES / f"{act}-v{v}.jsonl").read_bytes()
    entries, problems = read_lines(data, f"{act}-v{v}.jsonl")
    assert not problems, "\n".join(map(str, problems))
    (entry,) = entries
    return entry, data


@pytest.mark.parametrize(("act", "v"), KEYS)
def test_read_and_written_back_to_the_byte(act: str, v: int) -> None:
    entry, data = sample(act, v)
    assert (entry.act, entry.v) == (act, v)
    assert type(entry.body) is BODIES[act, v]
    assert to_line(entry) + b"\n" == data


def test_every_act_and_version_has_a_sample_and_a_schema() -> None:
    names = {f"{act}-v{v}" for act, v in KEYS}
    assert {path.stem for path in SAMPLES.glob("*.jsonl")} == names
    assert {path.name for path in PUBLISHED.glob("entry-*.json")} == {schema_name(act, v) for act, v in KEYS}
    assert set(ACTS) == {act for act, _ in KEYS}


def test_the_samples_are_one_whole_chain_with_a_good_seal() -> None:
    entries = [sample(act, v)[0] for act, v in KEYS]
    assert check_chains(entries) == []
    (seal,) = [entry for entry in entries if isinstance(entry.body, Sealed)]
    assert check_seal(seal, entries) == []
    record = fold(entries)
    assert not record.waiting
    assert not record.drafts
    assert len(record.dismissed) == 1


def test_the_published_schemas_are_those_of_the_code() -> None:
    stale = [name for name, data in schema_files().items() if (PUBLISHED / name).read_bytes() != data]
    assert not stale, "run: python tests/journal/publish_schemas.py"


def validator(act: str, v: int) -> jsonschema.Draft202012Validator:
    return jsonschema.Draft202012Validator(schema_of(act, v))


@pytest.mark.parametrize(("act", "v"), KEYS)
def test_the_sample_is_valid_and_each_fault_is_not(act: str, v: int) -> None:
    check = validator(act, v)
    check.check_schema(check.schema)
    plain: dict[str, Any] = json.loads(sample(act, v)[1])
    check.validate(plain)
    faults: list[dict[str, Any]] = [
        {**plain, "extra": 1},
        {**plain, "body": {**plain["body"], "extra": 1}},
        {**plain, "act": "other"},
        {**plain, "v": v + 1},
        {**plain, "draft": False},
        {**plain, "at": "2026-03-14T09:26:53"},
        {**plain, "media": []},
        {name: value for name, value in plain.items() if name != "prev"},
    ]
    for name, value in plain["body"].items():
        faults.append({**plain, "body": {**plain["body"], name: {"wrong": 1} if isinstance(value, list) else [value]}})
    for fault in faults:
        assert not check.is_valid(fault), fault


def test_a_whole_visit_is_valid() -> None:
    checks = {act: validator(act, v) for act, v in KEYS}
    for entry in build_visit(300, seed=5):
        checks[entry.act].validate(json.loads(to_line(entry)))


def test_an_amendment_that_states_another_body_is_not_valid() -> None:
    plain: dict[str, Any] = json.loads(sample("amended", 1)[1])
    plain["body"]["act"] = "read"
    assert not validator("amended", 1).is_valid(plain)
