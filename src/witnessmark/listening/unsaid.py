"""Which unit goes without saying? Of a number that was read off an instrument, said of a rating, or said before "wide"."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from witnessmark.listening.focus import Thing
from witnessmark.listening.overcurrent import ampere_told
from witnessmark.listening.quantities import RATINGS, Quantity
from witnessmark.listening.statement import Statement
from witnessmark.problems import Refusal
from witnessmark.units import dimension

__all__ = ["same_dimension", "with_unit"]

#: The units that instruments show, the likeliest first; common practice, no source.
_SHOWN = {
    "thermometer": ("[degF]",), "infrared": ("[degF]",), "inferred": ("[degF]",), "ir": ("[degF]",), "camera": ("[degF]",),
    "thermal": ("[degF]",), "probe": ("[degF]",), "meter": ("%", "V"), "pins": ("%",), "manometer": ("[in_i'H2O]",), "gauge": ("[psi]",),
    "tape": ("[in_i]",), "string": ("[in_i]",), "ruler": ("[in_i]",), "level": ("[in_i]",), "caliper": ("[in_i]",), "awl": ("[in_i]",),
    "tester": ("V",), "multimeter": ("V",), "sniffer": ("[ppm]",), "monitor": ("[ppm]", "pCi/L"), "hygrometer": ("%",),
    "moisture": ("%",), "amprobe": ("A",), "clamp": ("A",), "temp": ("[degF]",), "temperature": ("[degF]",), "thermostat": ("[degF]",),
    "stat": ("[degF]",), "gun": ("[degF]",), "laser": ("[degF]",),
}  # fmt: skip
#: Words after a number that say it is a length, in inches unless it is a large one.
_SHOWING = frozenset(
    {
        "says",
        "reads",
        "reading",
        "shows",
        "string",
        "inferred",
        "infrared",
        "thermometer",
        "manometer",
        "gauge",
        "multimeter",
    }
)
_LENGTHS = frozenset({"wide", "deep", "high", "tall", "thick", "long", "apart", "across", "clear"})
#: What a device does at a pressure or a temperature.
_REACHES = frozenset(
    {
        (v, w)
        for v in ("sticks", "stuck", "stands", "comes", "rises", "projects", "hangs")
        for w in ("up", "out", "down", "over")
    }
)
_AT = frozenset({"in", "on", "off", "out"})
_CUTS = frozenset(
    {"kicks", "kicked", "cuts", "cut", "comes", "came", "shuts", "shut", "pops", "turns", "starts", "stops"}
)
_RATED = frozenset({"rated", "main", "mains", "breaker", "fuse", "feed", "feeder", "service", "rating", "panel"})
_BEFORE = frozenset({"is", "a", "on", "are", "at", "of", "main", "rated", "'s", "was", "an", "the", "says"})


def same_dimension(one: str, other: str) -> bool:
    """Whether two units are of one dimension, a difference of temperatures like a temperature."""
    if one.removesuffix("{difference}") == other.removesuffix("{difference}"):
        return True
    try:
        return dimension(one) == dimension(other)
    except Refusal:
        return False


def _units_of(st: Statement, thing: Thing | None) -> tuple[str, ...]:
    """The units of what can be measured at a component."""
    row = st.scene.lexicon.kind(thing.kind) if thing else None
    measures = st.scene.lexicon.packs.measures
    return tuple(measures[id_].unit for id_ in row.measures if id_ in measures) if row else ()


#: No moisture meter shows more.
_PERCENT = Decimal(100)


def _shown(st: Statement, quantity: Quantity) -> str | None:
    """The unit of the instrument named before the number."""
    before = range(min(quantity.start, len(st.norms)) - 1, -1, -1)
    for at in (*before, *range(quantity.end, len(st.norms))):
        units = _SHOWN.get(st.norms[at])
        if units is None or (at == quantity.end and st.norms[at] == "gauge"):
            continue  # "fourteen gauge" is a wire
        own = _units_of(st, st.thing)
        if own and units[0] not in own and quantity.value > _PERCENT and "V" in units:
            return "V"
        return next((u for u in units if any(same_dimension(u, o) for o in own)), units[0])
    return None


def _rating(st: Statement, quantity: Quantity) -> str | None:
    """Amperes, for a standard rating said of what has one ("main is one fifty", "a fifty breaker")."""
    if ampere_told(st, quantity):
        return "A"
    if quantity.value not in RATINGS or quantity.value < 15 or not _RATED & set(st.norms):  # noqa: PLR2004 - the smallest breaker
        return None
    row = st.scene.lexicon.kind(st.thing.kind if st.thing else None)
    if (
        row is not None
        and row.system == "electrical"
        and {"rated"} & {*st.norms[quantity.start - 1 : quantity.start], *st.norms[quantity.end : quantity.end + 1]}
    ):
        return "A"
    if row is None or not ("rating-amps" in row.describe or any(u == "A" for u in _units_of(st, st.thing))):
        return None
    before = st.norms[quantity.start - 1] if quantity.start else ""
    after = st.norms[quantity.end] if quantity.end < len(st.norms) else ""
    if after in _RATED or (before in _BEFORE and (quantity.end == len(st.norms) or after in {"on", "and", "in", "so"})):
        return "A"
    return None


#: What is measured in inches of water by itself.
_COLUMNS = frozenset(
    {
        "column",
        "w",
        "wc",
        "pressure",
        "static",
        "manometer",
        "gas",
        "manifold",
        "draft",
        "esp",
        "vacuum",
        "negative",
        "positive",
    }
)


def _is_depth(st: Statement, quantity: Quantity) -> bool:
    """Whether "two inches of water" stand somewhere, and are no pressure."""
    if _COLUMNS & set(st.norms) or (quantity.value * 8) % 1:
        return False
    return not any(same_dimension(u, "Pa") for u in _units_of(st, st.thing))


def with_unit(st: Statement, quantity: Quantity, before: Statement | None = None) -> Quantity:
    """*quantity* with the unit that goes without saying, or as it is; *before* may name the instrument."""
    if quantity.unit == "[in_i'H2O]" and _is_depth(st, quantity):
        return replace(quantity, unit="[in_i]")
    if quantity.unit is not None or quantity.form not in {"bare", "quantity"}:
        return quantity
    after = st.norms[quantity.end] if quantity.end < len(st.norms) else ""
    lone = st.norms[quantity.start - 1 : quantity.start]
    unit: str | None = None
    if after in _LENGTHS and quantity.value < 200 and not (after == "clear" and st.norms[quantity.end + 1 :]):  # noqa: PLR2004 - inches
        unit = "[in_i]"
    elif (
        ampere_told(st, quantity)
        or after in {"breaker", "breakers", "main", "fuse", "feed", "panel"}
        or _RATED & set(st.norms)
    ):
        unit = _rating(st, quantity)
    if (
        unit is None
        and before is not None
        and before.norms[-1] in {"breaker", "fuse", "main", "mains"}
        and quantity.start <= st.opening()
        and quantity.value in RATINGS
        and after not in {"percent", "of"}
    ):
        unit = "A"  # "max breaker | forty on the plate"
    if unit is None and {"temp", "temperature"} & set(st.norms):
        unit = "[degF]"
    if unit is None and (st.instruments or _SHOWING & set(st.norms)) and lone not in (["number"], ["zone"]):
        unit = _shown(st, quantity)
    if (
        unit is None
        and before is not None
        and before.instruments
        and not before.quantities
        and quantity.start <= st.opening()
    ):
        unit = _shown(before, Quantity(len(before.norms), len(before.norms), quantity.value, None, "bare"))
    if (
        unit is None
        and quantity.value != int(quantity.value)
        and "point" not in st.norms[quantity.start : quantity.end]
    ):
        told = lone and lone[0] in _BEFORE | {"get", "got", "only", "about"}
        unit = (
            "[in_i]"
            if (told or (quantity.start <= st.opening() and quantity.end == len(st.norms)))
            and "." not in st.norms[quantity.end - 1]
            and after not in {"of", "full", "open", "way", "inch"}
            else None
        )
    before_it = tuple(st.norms[max(0, quantity.start - 2) : quantity.start])
    if unit is None and (before_it in _REACHES or before_it[-1:] == ("stands",)) and quantity.value < 200:  # noqa: PLR2004 - inches
        unit = "[in_i]"  # "sticks up fourteen"
    if unit is None and lone == ["at"] and _CUTS & set(st.norms) and _AT & set(st.norms):
        unit = next((u for u in _units_of(st, st.thing) if u == "[psi]" and quantity.value >= Decimal(5)), None)
    return quantity if unit is None else replace(quantity, unit=unit, form="quantity")
