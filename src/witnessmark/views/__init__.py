"""Views: one question to the record each. Pure functions; linear in the facts; the same in any order of delivery."""

from witnessmark.views.adverse import Adverse, adverse, findings_on
from witnessmark.views.decisions import Decisions, decisions
from witnessmark.views.deliveries import Delivery, deliveries, is_delivery
from witnessmark.views.doubts import Doubt, doubts
from witnessmark.views.house import Component, House, Place, house
from witnessmark.views.looks import Look, looks
from witnessmark.views.media import Medium, media
from witnessmark.views.moments import instant
from witnessmark.views.procedures import followed
from witnessmark.views.readings import Reading, readings
from witnessmark.views.rechecks import ANSWERS, Recheck, rechecks
from witnessmark.views.running import Run, running
from witnessmark.views.timeline import Event, Interval, Timeline, timeline

__all__ = [
    "ANSWERS",
    "Adverse",
    "Component",
    "Decisions",
    "Delivery",
    "Doubt",
    "Event",
    "House",
    "Interval",
    "Look",
    "Medium",
    "Place",
    "Reading",
    "Recheck",
    "Run",
    "Timeline",
    "adverse",
    "decisions",
    "deliveries",
    "doubts",
    "findings_on",
    "followed",
    "house",
    "instant",
    "is_delivery",
    "looks",
    "media",
    "readings",
    "rechecks",
    "running",
    "timeline",
]  # fmt: skip
