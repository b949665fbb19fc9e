"""How long parts of this kind last, by each source that says so."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.age.cautions import NO_PROMISE, OPT_IN
from witnessmark.gauges.age.lives_table import COMPONENTS, LIVES, PUBLISHED, Life
from witnessmark.gauges.age.messages import NO_LIFE_LISTED
from witnessmark.gauges.answer import Also, Answer, Source, Table, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = ["SOURCE_NAMES", "life_range", "statements"]

#: Names by which the caller chooses a source.
SOURCE_NAMES = {
    "lender tables": "FM", "capital needs report": "CNA", "appraisal guide": "MS", "builders' survey": "HB",
    "north-south list": "SW", "DOE": "DOE",
}  # fmt: skip
_NAMES = {key: name for name, key in SOURCE_NAMES.items()}
_MEMORY = "Lives marked as recalled are uncertain by two years and more: check the text before they go into a report."
_OPEN = "no end given"


def statements(component: str, climate: str | None = None, source: str | None = None) -> tuple[Life, ...]:
    """What the sources say of a *component*, for a *climate* (north, south, or None: both) and a source key or None.

    Statements for no climate hold for both.

    >>> [(one.low, one.high) for one in statements("disposer")]
    [(5, 7), (20, 20), (12, 12)]
    """
    return tuple(
        one
        for one in LIVES[component]
        if (climate is None or one.climate in {"", climate}) and (source is None or one.source == source)
    )


@gauge(
    name="life-range",
    family="age",
    title="Lives that sources give for a part",
    gives="the span over all sources, and each source's own years in the table",
    sources=tuple(PUBLISHED.values()),
    error="the same part differs two- to fivefold between sources",
    never="one expected year for this part, or that a part past a listed life must be replaced",
    cautions=(OPT_IN, NO_PROMISE, _MEMORY),
    example={"component": "storage water heater", "climate": "north", "age": "11yr"},
)
def life_range(
    component: Annotated[str, Asked("the part, by its generic name", example="disposer", choices=COMPONENTS)],
    climate: Annotated[
        Literal["north", "south"] | None,
        Asked("climate, for the source that parts them; left out, both are shown"),
    ] = None,
    source: Annotated[
        str | None,
        Asked("one source alone; left out, all are shown", example="lender tables", choices=tuple(SOURCE_NAMES)),
    ] = None,
    age: Annotated[
        Quantity | None,
        Asked(
            "age of the part, to be held beside the lives",
            "a",
            lowest="0",
            highest="100",
            least="0",
            most="500",
            how="from its plate, see part-age",
            example="12yr",
        ),
    ] = None,
) -> Answer:
    """Lives of a kind of part, by source, as a span and never as one number.

    Rule:
        span from the shortest to the longest life that any source gives for the part and climate; a life with no end
        ("50 and more") leaves the span open. A value stands only where the caller chose a source that gives one number.

    >>> life_range("disposer").words
    'Sources give 5 to 20 years for a disposer.'
    """
    key = None if source is None else SOURCE_NAMES[source]
    found = statements(component, climate, key)
    if not found:
        raise Refusal(NO_LIFE_LISTED.at(component, f"given by {', '.join(_who(component))}"))
    low = min(one.low for one in found)
    ends = [one.high for one in found if one.high is not None]
    is_open = len(ends) < len(found)
    high = max(ends, default=low)
    single = source is not None and not is_open and low == high
    span = f"{low:g} years" if low == high and not is_open else f"{low:g} to {max(high, low):g} years"
    if is_open:
        span = f"{low:g} years and more" if max(high, low) == low else f"{span}, some with no end"
    who = "Sources give" if source is None else "That source gives"
    placed, beside = _placed(age, low, None if is_open else high)
    article = "an" if component[0] in "aeiou" else "a"
    return Answer(
        value=rounded(low) if single else None,
        unit="a" if single else "",
        words=f"{who} {span} for {article} {component}.{placed}",
        sources=tuple(PUBLISHED[one] for one in dict.fromkeys(each.source for each in found)),
        also=(
            Also("lowest", "shortest life given", rounded(low), "a"),
            *(() if is_open else (Also("highest", "longest life given", rounded(high), "a"),)),
            Also("open_ended", "whether a source gives no end", is_open),
            Also("sources", "how many sources speak of it", Decimal(len({one.source for one in found})), "1"),
            *beside,
            *(_others(component, climate, key) if key else ()),
        ),
        table=_table(found),
    )


def _who(component: str) -> list[str]:
    return list(dict.fromkeys(_NAMES[one.source] for one in LIVES[component]))


def _others(component: str, climate: str | None, key: str) -> tuple[Also, ...]:
    """What the sources that were not chosen say, so that the choice is seen beside them."""
    return tuple(
        Also(f"other_{at}", f"{_NAMES[one.source]}{_about(one)}", _years(one))
        for at, one in enumerate((o for o in statements(component, climate) if o.source != key), 1)
    )


def _about(one: Life) -> str:
    told = ", ".join(filter(None, (one.climate, one.note)))
    return f" ({told})" if told else ""


def _years(one: Life) -> str:
    if one.high is None:
        return f"{one.low:g} years and more"
    return f"{one.low:g} years" if one.high == one.low else f"{one.low:g} to {one.high:g} years"


def _placed(age: Quantity | None, low: float, high: float | None) -> tuple[str, tuple[Also, ...]]:
    if age is None:
        return "", ()
    old = float(age.value)
    if high is not None and old > high:
        where = "past every life given"
    elif old < low:
        where = "below every life given"
    else:
        where = "within the span"
    return f" At {old:.4g} years it is {where}.", (Also("age_lies", "where the age lies", where),)


def _table(found: tuple[Life, ...]) -> Table:
    sources: dict[str, Source] = PUBLISHED
    return Table(
        (("source", ""), ("from", "a"), ("to", "a"), ("about", ""), ("basis", "")),
        tuple(
            (
                _NAMES[one.source],
                rounded(one.low),
                _OPEN if one.high is None else rounded(one.high),
                _about(one).strip(" ()"),
                "recalled" if sources[one.source].basis == "memory" else sources[one.source].basis,
            )
            for one in found
        ),
    )
