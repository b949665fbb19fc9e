"""How large the openings must be that bring combustion air into a room."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Limit, Step
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.fuel.cautions import GAS, LICENSED, LOCAL, MONOXIDE
from witnessmark.gauges.fuel.sources import OPENINGS
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity

__all__ = ["combustion_air_openings", "opening_area"]

#: Way: Btu/h for one square inch, least area of each opening, number of openings, where they lie.
_WAYS: dict[str, tuple[int, int, int, str]] = {
    "rooms on one storey": (1000, 100, 2, "one begins within 12 in of the top, one within 12 in of the bottom"),
    "rooms on two storeys": (500, 0, 1, "in doors or floors between the storeys; the area is the total"),
    "outdoors direct": (4000, 0, 2, "one begins within 12 in of the top, one within 12 in of the bottom"),
    "outdoors vertical ducts": (4000, 0, 2, "one begins within 12 in of the top, one within 12 in of the bottom"),
    "outdoors horizontal ducts": (2000, 0, 2, "one begins within 12 in of the top, one within 12 in of the bottom"),
    "outdoors one opening": (
        3000, 0, 1, "it begins within 12 in of the top; appliance 1 in clear at sides and back, 6 in at the front",
    ),
}  # fmt: skip

#: Free share of a covering's area where it is not marked (fuel gas code 304.10, recalled).
_FREE = {"open": Decimal(1), "metal louver": Decimal("0.75"), "wood louver": Decimal("0.25")}


def opening_area(btu_per_hour: Decimal, way: str) -> Decimal:
    """Least free area in square inches of each opening for a total input in Btu/h (no reduction, no connectors).

    International Fuel Gas Code 304.5.3 and 304.6.

    >>> opening_area(Decimal(120000), "outdoors horizontal ducts")
    Decimal('60')
    """
    each, least, _, _ = _WAYS[way]
    return max(btu_per_hour / each, Decimal(least))


@gauge(
    name="combustion-air-openings",
    family="fuel",
    title="Free area of the openings that bring combustion air",
    unit="[sin_i]",
    gives="least free area of each opening",
    sources=(OPENINGS,),
    error="none in the rule; the free area behind a louver is seldom known better than to a quarter",
    never="that enough air comes: screens clog, and ducts and dampers close",
    cautions=(
        GAS, MONOXIDE, LOCAL, LICENSED,
        "Free area is what is left between the blades; no opening is less than 3 in across.",
    ),
    example={"input": "120000 Btu/h", "way": "rooms on one storey", "covering": "metal louver", "face": "200 sq in"},
)  # fmt: skip
def combustion_air_openings(
    input: Annotated[  # noqa: A002 - the word on every rating plate
        Quantity,
        Asked(
            "total input of the appliances in the room, direct-vent ones left out", "[Btu_IT]/h", lowest="0",
            highest="400000", least="0", how="from the rating plates", example="120000 Btu/h",
        ),
    ],
    way: Annotated[
        Literal[
            "rooms on one storey", "rooms on two storeys", "outdoors direct", "outdoors vertical ducts",
            "outdoors horizontal ducts", "outdoors one opening",
        ],
        Asked("where the openings lead"),
    ],
    *,
    face: Annotated[
        Quantity | None,
        Asked(
            "face area of the smaller opening", "[sin_i]", lowest="0", highest="10000", least="0",
            how="measure the opening itself, not the flange", example="200 sq in",
        ),
    ] = None,
    covering: Annotated[
        Literal["open", "metal louver", "wood louver"],
        Asked("what covers it, where its free area is not marked on it"),
    ] = "open",
    connectors: Annotated[
        Quantity | None,
        Asked(
            "total area of the vent connectors in the room, for one opening", "[sin_i]", lowest="0", highest="1000",
            least="0", how="from their diameters", example="28 sq in",
        ),
    ] = None,
    indoor_share: Annotated[
        Quantity | None,
        Asked(
            "indoor volume available over indoor volume required, for indoor and outdoor air together", "1",
            lowest="0", highest="1", least="0", how="from combustion-air-indoors", example="40%",
        ),
    ] = None,
) -> Answer:  # fmt: skip
    """Least free area of each opening, by the ways of the fuel gas code.

    Rule:
        rooms on one storey: two openings, each 1 in2 per 1000 Btu/h and at least 100 in2
        rooms on two storeys: 2 in2 per 1000 Btu/h in all (recalled)
        outdoors, direct or by vertical ducts: two openings, each 1 in2 per 4000 Btu/h
        outdoors by horizontal ducts: two openings, each 1 in2 per 2000 Btu/h
        outdoors, one opening: 1 in2 per 3000 Btu/h, and not less than the vent connectors together
        indoor and outdoor air together: outdoor area x (1 - indoor share)

    Free share of an unmarked louver, 75 % metal and 25 % wood, is recalled.

    >>> from witnessmark.units import parse_quantity as q
    >>> combustion_air_openings(q("60000 Btu/h"), "rooms on one storey").value
    Decimal('100')
    """  # fmt: skip
    each, _, count, where = _WAYS[way]
    outdoors = way.startswith("outdoors")
    needed = opening_area(input.value, way)
    steps = [Step(f"1 square inch for each {each} Btu/h", input.value / each, "[sin_i]")]
    notes = []
    if indoor_share is not None and outdoors:
        factor = max(1 - indoor_share.value, Decimal(0))
        needed *= factor
        steps.append(Step("outdoor share, 1 less the indoor share", factor, "1"))
    elif indoor_share is not None:
        notes.append("An indoor share reduces outdoor openings only; it was not applied.")
    if way == "outdoors one opening":
        if connectors is None:
            notes.append("A single opening is also no smaller than the vent connectors together; they were not given.")
        else:
            needed = max(needed, connectors.value)
            steps.append(Step("vent connectors together", connectors.value, "[sin_i]"))
    each_word = "Each of two openings" if count == 2 else "The opening"  # noqa: PLR2004 - two openings or one
    words = f"{each_word} needs {needed:,.1f} square inches of free area; {where}."
    also = [Also("openings", "number of openings", Decimal(count), "1")]
    answer = Answer(
        value=needed, unit="[sin_i]", words=words, cautions=tuple(notes), steps=tuple(steps), also=tuple(also)
    )
    if face is None:
        return answer
    free = face.value * _FREE[covering]
    held = Answer(value=free, unit="[sin_i]").against(
        Limit(OPENINGS, lowest=Quantity(needed, "[sin_i]"), words="Free area against the least free area")
    )
    told = f" The smaller one measures {face.value:,.1f} and leaves about {free:,.1f} free."
    return Answer(
        value=needed, unit="[sin_i]", words=words + told, verdict=held.verdict, cautions=tuple(notes),
        steps=tuple(steps),
        also=(
            *also, Also("free", "free area of the smaller opening", free, "[sin_i]"),
            Also("margin", "free area beyond the need (negative: short)", free - needed, "[sin_i]"),
        ),
    )  # fmt: skip
