"""Is a number said without its unit a temperature, by what it is said of and what stands beside it?

"Return seventy", "fridge forty four", "the tub got to one twelve", "ninety one out", "hall's seventy two now": such a
number is one when nothing else is said that it could count, and when what is measured at the thing is a temperature.
"""

from __future__ import annotations

from decimal import Decimal

from witnessmark.listening.focus import Thing
from witnessmark.listening.places import places_in
from witnessmark.listening.quantities import Quantity
from witnessmark.listening.statement import Statement
from witnessmark.listening.terms import members
from witnessmark.packs.model import Measure

__all__ = ["is_warm", "temperature_told"]

#: Degrees Fahrenheit: what rooms are at, and what comes hot from a tap; a count is seldom as large as the third.
_ROOM, _TAP, _NO_COUNT = (Decimal(35), Decimal(130)), (Decimal(60), Decimal(190)), Decimal(32)
_WEATHER = (Decimal(-40), Decimal(125))
_OUT = frozenset({"out", "outside", "outdoors", "ambient"})
#: Without these nobody tells how warm a surface is.
_FELT = frozenset(
    {"hot", "cold", "warm", "cool", "gun", "infrared", "inferred", "thermal", "camera", "thermometer", "laser"}
)
_WATER = frozenset({"hot", "tap", "faucet", "water"})
#: Words that may stand beside such a number, above the small words of the language; common practice, no source.
_BESIDE = frozenset({"hot", "cold", "warm", "cool", "warmer", "cooler", "heat", "cooling", "heating", "air", "temp", "good", "fine", "nice",
                     "got", "gets", "get", "went", "goes", "came", "comes", "blow", "blows", "blowing", "reads", "says", "makes", "made",
                     "hits", "hit", "holds", "holding", "see", "let", "us", "okay", "right", "ish", "degrees", "climbed", "rose", "fell",
                     "dropped", "one", "it", "she", "this", "that", "there", "here", "they", "coming", "getting", "is", "up", "down",
                     "leaving", "entering", "side", "end", "yep", "yeah", "hm", "so", "i", "we", "measured", "measure", "only", "bit",
                     "then", "well", "ok", "with", "door", "fan", "on", "running", "steady", "seconds", "minute", "s",
                     "display", "gauge", "dial", "screen", "readout", "now"})  # fmt: skip
#: After these a number names or counts ("unit four", "zone two", "set to seventy" is what a thing was set to).
_NAMES = frozenset({"number", "unit", "zone", "slot", "circuit", "page", "room", "apartment", "step", "set", "by", "x", "times", "the", "every",
                    "model", "serial", "grade", "class", "type", "stage", "wire", "gauge", "these", "those", "all", "want", "wants", "a", "an"})  # fmt: skip


def is_warm(st: Statement) -> bool:
    """Whether the statement itself says that a temperature is told: of a room, or with "hot" or "cold"."""
    return bool(_FELT & set(st.norms)) or any(
        p.sort != "house" for _, _, p in places_in(st.norms, st.stems, st.scene.lexicon)
    )


def temperature_told(st: Statement, quantity: Quantity, thing: Thing | None) -> Measure | None:
    """The temperature that a bare number tells, or None when it could be something else."""
    if quantity.form != "bare" or not _stands_alone(st, quantity):
        return None
    measures = st.scene.lexicon.packs.measures
    value = quantity.value
    after = st.norms[quantity.end : quantity.end + 2]
    if after[:1] and (after[0] in _OUT or after in (["degrees", "out"], ["right", "out"])) and _within(value, _WEATHER):
        return measures.get("outdoor-temperature") if value > 20 or value < 0 else None  # noqa: PLR2004 - "two out"
    row = st.scene.lexicon.kind(thing.kind) if thing else None
    rows = [measures[id_] for id_ in (row.measures if row else ()) if id_ in measures]
    felt = bool(_FELT & set(st.norms))
    temps = [
        m for m in rows if m.unit == "[degF]" and _plausible(m, value) and m.id != "outdoor-temperature"
        and (felt or m.id != "surface-temperature")
    ]  # fmt: skip
    if value < _NO_COUNT and (not st.named or _several(st) or not temps or Decimal(temps[0].low or 0) > 0):
        return None
    said = set(st.norms)
    if _WATER & said and _within(value, _TAP) and (row is None or row.system in {"plumbing", "appliances"}):
        return next((m for m in temps if m.id == "water-temperature"), measures.get("water-temperature"))
    room = any(place.sort != "house" for _, _, place in places_in(st.norms, st.stems, st.scene.lexicon))
    if temps and (st.named or not room or row is None or row.system in {"heating", "cooling"}):
        return max(temps, key=lambda m: len(set(m.name.split()) & said))
    if room and not st.mentions and _within(value, _ROOM):
        return measures.get("air-temperature")
    return None


def _within(value: Decimal, bounds: tuple[Decimal, Decimal]) -> bool:
    return bounds[0] <= value <= bounds[1]


def _plausible(measure: Measure, value: Decimal) -> bool:
    return Decimal(measure.low or -1000) <= value <= Decimal(measure.high or 10000)


def _several(st: Statement) -> bool:
    """Whether what is named is named in the plural: a small number counts it."""
    return any(st.norms[named.end - 1].endswith("s") for named, _ in st.mentions)


def _stands_alone(st: Statement, quantity: Quantity) -> bool:
    """Whether nothing stands beside the number that it could count or be part of."""
    if quantity.end == quantity.start + 1 and st.norms[quantity.start] == "one":
        return False
    named = {i for n, _ in st.mentions for i in range(n.start, n.end)}
    named |= {i for a, b, _ in places_in(st.norms, st.stems, st.scene.lexicon) for i in range(a, b)}
    named |= {i for a, b in st.instruments for i in range(a, b)}
    before = st.norms[max(0, quantity.start - 2) : quantity.start]
    numbered = bool(before) and before[-1] in _NAMES and quantity.start - 1 not in named
    if numbered or before in (["back", "to"], ["was", "at"], ["on", "a"]):
        return False
    outside = st.norms[quantity.end : quantity.end + 1] and st.norms[quantity.end] in _OUT
    if (quantity.end in named and not outside) or any(v.start == quantity.end for v in st.values):
        return False
    small = (
        _BESIDE
        | members("clauses", "prepositions")
        | members("clauses", "conjunctions")
        | members("clauses", "locatives")
    )
    small |= members("clauses", "auxiliaries") | members("clauses", "adverbs") | {"the", "a", "an", "my"}
    opens = quantity.start <= st.opening()
    lead = st.norms[: quantity.start]
    rest = st.norms[quantity.end :]
    told = all(w in small or i in named for i, w in enumerate(lead))
    follows = all(w in small or i + quantity.end in named for i, w in enumerate(rest))
    near = bool(rest) and rest[0] in {
        "now",
        "at",
        "with",
        "inside",
        "in",
        "here",
        "coming",
        "on",
        "after",
        "out",
        "outside",
    }
    return told and (follows or (near and (opens or len(lead) < 4)))  # noqa: PLR2004 - "hot got to"
