"""The form of what comes out: JSON for other programs, bodies for the journal, places and components."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any

import jsonschema  # type: ignore[import-untyped] # its stubs are a package of their own

from witnessmark.journal import acts
from witnessmark.listening import Narration, components, listen, places, read_narration, to_body
from witnessmark.packs.model import Packs
from witnessmark.units import known

if TYPE_CHECKING:
    from listening.conftest import Hear

TEXT_OR_NULL: dict[str, Any] = {"type": ["string", "null"]}
OPEN = {
    "type": "object",
    "required": ["start", "label", "kind", "what", "text"],
    "additionalProperties": False,
    "properties": {"start": {"type": "number"}, "label": {"type": "string"}, "kind": TEXT_OR_NULL,
                   "what": {"type": "string"}, "text": {"type": "string"}},
}  # fmt: skip
DRAFT = {
    "type": "object",
    "additionalProperties": False,
    "required": ["start", "end", "act", "kind", "label", "part", "place", "condition", "what", "attribute", "quantity", "value",
                 "unit", "left", "sure", "count", "text", "why"],
    "properties": {
        "start": {"type": "number", "minimum": 0},
        "end": {"type": "number", "minimum": 0},
        "act": {"enum": ["saw", "absent", "ran", "stopped", "read", "identified", "skipped", "doubted"]},
        "kind": TEXT_OR_NULL, "label": {"type": "string", "minLength": 1}, "part": TEXT_OR_NULL, "place": TEXT_OR_NULL,
        "condition": {"enum": ["sound", "adverse", "unclear", None]},
        "what": {"type": "string", "minLength": 1}, "attribute": TEXT_OR_NULL, "quantity": TEXT_OR_NULL,
        "value": {"type": ["number", "string", "null"]}, "unit": TEXT_OR_NULL, "left": {"enum": ["on", "off", None]},
        "sure": {"type": "boolean"},
        "count": {"oneOf": [{"type": "null"}, {
            "type": "object", "additionalProperties": False, "required": ["checked", "of", "adverse"],
            "properties": {"checked": {"type": "integer"}, "of": {"type": ["integer", "null"]}, "adverse": {"type": "integer"}},
        }]},
        "text": {"type": "string", "minLength": 1}, "why": {"type": "string", "minLength": 1},
    },
}  # fmt: skip
FORM = {
    "type": "object",
    "additionalProperties": False,
    "required": ["drafts", "set_aside", "standing", "misheard"],
    "properties": {
        "misheard": {"type": "array", "items": {
            "type": "object", "additionalProperties": False,
            "required": ["start", "end", "heard", "meant", "kind", "part", "why", "draft"],
            "properties": {
                "start": {"type": "number"}, "end": {"type": "number"}, "heard": {"type": "string"}, "meant": {"type": "string"},
                "kind": {"type": "string"}, "part": TEXT_OR_NULL, "why": {"type": "string"}, "draft": {"type": ["integer", "null"]},
            },
        }},
        "drafts": {"type": "array", "items": DRAFT},
        "set_aside": {"type": "array", "items": {
            "type": "object", "additionalProperties": False, "required": ["start", "end", "text", "reason"],
            "properties": {
                "start": {"type": "number"}, "end": {"type": "number"}, "text": {"type": "string"},
                "reason": {"enum": ["hypothetical", "teaching", "small talk", "corrected", "question"]},
            },
        }},
        "standing": {
            "type": "object", "additionalProperties": False, "required": ["still_on", "make_sure"],
            "properties": {"still_on": {"type": "array", "items": OPEN}, "make_sure": {"type": "array", "items": OPEN}},
        },
    },
}  # fmt: skip


def stored() -> list[Narration]:
    from listening.conftest import NARRATIONS

    return [read_narration(path) for path in sorted(NARRATIONS.glob("*.jsonl"))]


def test_the_json_has_its_form(shipped: Packs) -> None:
    for narration in stored():
        data = json.loads(json.dumps(listen(narration, shipped).as_json(), allow_nan=False))
        jsonschema.validate(data, FORM)
        assert data["drafts"]


def test_ids_and_units_are_those_of_the_packs(shipped: Packs) -> None:
    for narration in stored():
        for draft in listen(narration, shipped).drafts:
            assert draft.kind is None or draft.kind in shipped.kinds
            assert draft.part is None or draft.part in {p.id for p in shipped.kinds[draft.kind or ""].parts}
            assert draft.condition_id is None or draft.condition_id in shipped.conditions
            assert draft.measure is None or draft.measure in shipped.measures
            assert draft.reason is None or draft.reason in shipped.reasons
            assert draft.procedure is None or draft.procedure in shipped.procedures
            assert draft.place.sort in shipped.sorts
            assert draft.unit is None or known(draft.unit)
            assert draft.component.startswith(f"{draft.place.key}.")


def test_every_draft_becomes_the_body_of_its_act(shipped: Packs) -> None:
    by_act = {"saw": acts.Saw, "absent": acts.Absent, "ran": acts.Ran, "stopped": acts.Stopped, "skipped": acts.Skipped,
              "doubted": acts.Doubted, "identified": acts.Identified}  # fmt: skip
    for narration in stored():
        for draft in listen(narration, shipped).drafts:
            body = to_body(draft)
            if draft.act == "read":
                assert isinstance(body, acts.Identified if draft.attribute else acts.Read)
            else:
                assert isinstance(body, by_act[draft.act])
            assert getattr(body, "kind", draft.kind) in {draft.kind, ""}


def test_values_stay_exact(hear: Hear) -> None:
    (draft,) = hear("balusters are five and three quarters inches apart").drafts
    body = to_body(draft)
    assert isinstance(body, acts.Read)
    assert (body.value, body.unit, body.measure) == ("5.75", "[in_i]", "gap")
    assert draft.as_json()["value"] == 5.75


def test_how_it_was_left_goes_into_the_body(hear: Hear) -> None:
    (ran, stopped) = hear("filling the tub", "the tub is drained").drafts
    body, other = to_body(ran), to_body(stopped)
    assert isinstance(body, acts.Ran)
    assert (body.left, body.procedure, body.kind) == ("filled", "bathtub.fill", "bathtub")
    assert isinstance(other, acts.Stopped)


def test_an_absence_keeps_whether_it_matters(hear: Hear) -> None:
    (draft,) = hear("no smoke detector in the primary bedroom").drafts
    assert to_body(draft) == acts.Absent("smoke-alarm", None, "no smoke alarm", adverse=True, condition="smoke.none")


def test_places_and_components_are_named_once_in_order(hear: Hear) -> None:
    heard = hear(
        "we're in the kitchen sink leaks",
        "on to the hall bath",
        "the tub is cracked",
        "the tub is loose",
        "no deck here",
    )
    assert [(p.key, p.body.name, p.body.sort) for p in places(heard)] == [
        ("kitchen", "kitchen", "kitchen"), ("hall-bath", "hall bath", "bathroom"),
    ]  # fmt: skip
    assert [(c.key, c.place, c.body.kind) for c in components(heard)] == [
        ("kitchen.sink", "kitchen", "sink"), ("hall-bath.bathtub", "hall-bath", "bathtub"),
    ]  # fmt: skip
