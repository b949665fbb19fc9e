"""Packs: what kinds, procedures, conditions, limits, words and laws are there, in force when, and from which source?"""

from witnessmark.packs.applies import (
    conditions_of,
    criteria_for,
    eras_of,
    in_force,
    is_in_force,
    is_must,
    procedures_of,
    rulebook_for,
)
from witnessmark.packs.changes import Change, changes
from witnessmark.packs.pages import pages
from witnessmark.packs.phrases import Candidate, ambiguities, plain, spoken_index
from witnessmark.packs.reader import check, parse, read, scenario_texts, shipped_texts
from witnessmark.packs.shown import show
from witnessmark.packs.terms import LEAVES, SYSTEMS

__all__ = [
    "LEAVES",
    "SYSTEMS",
    "Candidate",
    "Change",
    "ambiguities",
    "changes",
    "check",
    "conditions_of",
    "criteria_for",
    "eras_of",
    "in_force",
    "is_in_force",
    "is_must",
    "pages",
    "parse",
    "plain",
    "procedures_of",
    "read",
    "rulebook_for",
    "scenario_texts",
    "shipped_texts",
    "show",
    "spoken_index",
]
