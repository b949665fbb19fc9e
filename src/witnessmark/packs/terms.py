"""Which words the closed fields of a pack may hold, and what the tables of a pack file are called."""

from __future__ import annotations

from witnessmark.packs.law import ANCHORS, DAYS, MEANINGS, NEAR
from witnessmark.packs.model import (
    DIRECTIONS,
    EXTENTS,
    LANGUAGES,
    LIMITS,
    STAKES,
    TAGS,
    URGENCIES,
    VERBS,
    Attribute,
    Caution,
    Condition,
    Criterion,
    Era,
    Frame,
    Kind,
    Life,
    Measure,
    Procedure,
    Reason,
    Sort,
    Trade,
    Translation,
)  # fmt: skip

__all__ = [
    "ALLOWED", "DATES", "DUTY_SYSTEMS", "LEAVES", "NUMBERS", "OPS",
    "SYSTEMS", "TABLES", "TRANSLATED", "UNITS",
]  # fmt: skip

#: System ids in the order in which a report takes them, with the words for each.
SYSTEMS = {
    "site": "Site",
    "exterior": "Exterior",
    "structure": "Structure",
    "roof": "Roof",
    "plumbing": "Plumbing",
    "electrical": "Electrical",
    "heating": "Heating",
    "cooling": "Cooling",
    "interior": "Interior",
    "insulation": "Insulation and ventilation",
    "fireplace": "Fireplaces and solid fuel",
    "appliances": "Appliances",
    "garage": "Garage",
    "alarms": "Alarms",
}
#: What else a duty can concern: words, scope, agreement, report, records, conduct.
DUTY_SYSTEMS = (*SYSTEMS, "definition", "scope", "agreement", "report", "records", "conduct", "general")
#: How something operated is left.
LEAVES = ("as found", "on", "open", "filled", "unlatched", "tripped", "changed")
OPS = ("<=", "<", ">=", ">", "between")
FORCES = ("law", "guide")
MODALITIES = ("shall", "may", "not_required", "shall_not")

#: Table name in a file: the row class, and the field of ``Packs`` it goes to.
TABLES: dict[str, tuple[type, str]] = {
    "kind": (Kind, "kinds"),
    "procedure": (Procedure, "procedures"),
    "condition": (Condition, "conditions"),
    "measure": (Measure, "measures"),
    "criterion": (Criterion, "criteria"),
    "sort": (Sort, "sorts"),
    "reason": (Reason, "reasons"),
    "caution": (Caution, "cautions"),
    "trade": (Trade, "trades"),
    "attribute": (Attribute, "attributes"),
    "era": (Era, "eras"),
    "life": (Life, "lives"),
    "frame": (Frame, "frames"),
    "translation": (Translation, "translations"),
}
#: Tables whose rows are printed in a report and can be said in another language.
TRANSLATED = ("kind", "condition", "sort", "reason", "caution", "trade", "attribute", "measure")
#: Fields that hold one of a closed list of words.
ALLOWED: dict[tuple[str, str], tuple[str, ...]] = {
    ("Kind", "system"): tuple(SYSTEMS),
    ("Procedure", "leaves"): LEAVES,
    ("Condition", "direct"): DIRECTIONS,
    ("Condition", "rating_over"): ("", *LIMITS),
    ("Condition", "stake"): STAKES,
    ("Condition", "urgency"): URGENCIES,
    ("Criterion", "op"): OPS,
    ("Criterion", "force"): FORCES,
    ("Criterion", "stake"): STAKES,
    ("Criterion", "urgency"): URGENCIES,
    ("Duty", "system"): DUTY_SYSTEMS,
    ("Duty", "verb"): VERBS,
    ("Duty", "modality"): MODALITIES,
    ("Duty", "extent"): EXTENTS,
    ("Numeric", "op"): OPS,
    ("Definition", "tag"): TAGS,
    ("Subject", "near"): ("", *NEAR),
    ("ConditionWord", "means"): MEANINGS,
    ("ConditionWord", "tag"): TAGS,
    ("ConditionWord", "needs"): ("", "reason", "finding"),
    ("Delivery", "days"): DAYS,
    ("Delivery", "anchor"): ANCHORS,
    ("Delivery", "tag"): TAGS,
    ("Summary", "means"): MEANINGS,
    ("Summary", "tag"): TAGS,
    ("Departure", "tag"): TAGS,
    ("LawForm", "tag"): TAGS,
    ("FormItem", "tag"): TAGS,
    ("FormItem", "systems"): tuple(SYSTEMS),
    ("Frame", "language"): LANGUAGES,
    ("Translation", "language"): LANGUAGES[1:],
    ("Translation", "table"): TRANSLATED,
}
#: Fields that hold a number as it was published, in quotes.
NUMBERS = {
    ("Measure", "low"), ("Measure", "high"), ("Criterion", "value"), ("Criterion", "high"), ("Numeric", "value"),
    ("Life", "low"), ("Life", "high"), ("Subject", "within"),
}  # fmt: skip
#: Fields that hold one UCUM code, or several.
UNITS = {("Measure", "unit"), ("Measure", "units"), ("Criterion", "unit"), ("Numeric", "unit")}
#: Fields that hold a date.
DATES = {("Rulebook", "effective_from"), ("Rulebook", "effective_to"), ("Criterion", "adopted")}
