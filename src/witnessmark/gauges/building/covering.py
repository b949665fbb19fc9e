"""Whether a roof is steep enough for what covers it."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Basis, Table
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.building.checks import Check, held_against
from witnessmark.gauges.building.editions import Built, Edition, held_to, irc
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity

__all__ = ["COVERINGS", "Covering", "Kind", "roof_covering_slope", "underlayment"]

Kind = Literal[
    "asphalt shingles", "clay or concrete tile", "metal shingles", "mineral-surfaced roll", "slate", "wood shingles",
    "wood shakes", "built-up", "built-up, coal tar", "metal panels, lapped without sealant",
    "metal panels, lapped with sealant", "metal panels, standing seam", "modified bitumen", "single-ply membrane",
    "sprayed foam", "liquid-applied",
]  # fmt: skip
_SLOPE = "[in_i]/[ft_i]"


@dataclass(frozen=True, slots=True)
class Covering:
    """Least slope of a covering in inches to 12, below which slope its underlayment is doubled, and where it says so."""

    least: Decimal
    double_below: Decimal | None
    place: str
    basis: Basis = "memory"


COVERINGS: dict[str, Covering] = {
    "asphalt shingles": Covering(Decimal(2), Decimal(4), "R905.2.2", "seen in a copy"),
    "clay or concrete tile": Covering(Decimal("2.5"), Decimal(4), "R905.3.2"),
    "metal shingles": Covering(Decimal(3), None, "R905.4.2"),
    "mineral-surfaced roll": Covering(Decimal(1), None, "R905.5.2"),
    "slate": Covering(Decimal(4), None, "R905.6.2"),
    "wood shingles": Covering(Decimal(3), None, "R905.7.2"),
    "wood shakes": Covering(Decimal(3), None, "R905.8.2"),
    "built-up": Covering(Decimal("0.25"), None, "R905.9.1"),
    "built-up, coal tar": Covering(Decimal("0.125"), None, "R905.9.1"),
    "metal panels, lapped without sealant": Covering(Decimal(3), None, "R905.10.2"),
    "metal panels, lapped with sealant": Covering(Decimal("0.5"), None, "R905.10.2"),
    "metal panels, standing seam": Covering(Decimal("0.25"), None, "R905.10.2"),
    "modified bitumen": Covering(Decimal("0.25"), None, "R905.11.1"),
    "single-ply membrane": Covering(Decimal("0.25"), None, "R905.12.1, R905.13.1"),
    "sprayed foam": Covering(Decimal("0.25"), None, "R905.14.1"),
    "liquid-applied": Covering(Decimal("0.25"), None, "R905.15.1"),
}


def underlayment(kind: str, pitch: Decimal) -> str:
    """"double", "single" or "none stated" for a covering at a pitch in inches to 12; "not allowed" below its least slope.

    >>> underlayment("asphalt shingles", Decimal("3.99")), underlayment("asphalt shingles", Decimal(4))
    ('double', 'single')
    """  # fmt: skip
    covering = COVERINGS[kind]
    if pitch < covering.least:
        return "not allowed"
    if covering.double_below is None:
        return "none stated"
    return "double" if pitch < covering.double_below else "single"


@gauge(
    name="roof-covering-slope",
    family="building",
    title="Least roof slope of a covering",
    unit="[in_i]/[ft_i]",
    gives="slope of the roof",
    sources=(irc("R905.2.2", "seen in a copy"), irc("R905.3 to R905.15", "memory")),
    error="a slope read to half a degree is off by 0.1 in 12 on a low roof",
    never="that the roof does not leak",
    cautions=("The maker's instructions and the listing can ask for more; underlayment can hardly ever be seen.",),
    example={"slope": "3:12", "covering": "asphalt shingles", "edition": "2018"},
)
def roof_covering_slope(
    slope: Annotated[
        Quantity,
        Asked(
            "slope of the roof as a pitch or in %",
            _SLOPE,
            lowest="0",
            highest="48",
            least="0",
            how="12 in on a level, tape down; from an angle by roof-slope",
            example="3:12",
        ),
    ],
    covering: Annotated[Kind, Asked("what covers the roof", example="asphalt shingles")],
    edition: Edition = None,
    built: Built = None,
) -> Answer:
    """Whether a roof is steep enough for its covering, and whether the underlayment is asked to be double.

    Rule:
        asphalt shingles at least 2:12, double underlayment below 4:12; tile 2 1/2:12 (double below 4:12); slate 4:12;
        wood shingles and shakes 3:12; metal shingles 3:12; roll roofing 1:12; metal panels 3:12 lapped without sealant,
        1/2:12 with it, 1/4:12 standing seam; built-up, membranes, foam and liquid 1/4:12, coal tar 1/8:12

    >>> from witnessmark.units import parse_quantity as q
    >>> roof_covering_slope(q("1.9:12"), "asphalt shingles", edition=2018)["within"]
    False
    """
    found = COVERINGS[covering]
    pitch = slope.value
    under = underlayment(covering, pitch)
    told = {"double": "Underlayment is asked double here. ", "single": "One layer of underlayment is asked. "}.get(
        under, ""
    )
    answer = held_against(
        held_to(edition, built),
        lambda _: (Check("slope", f"slope under {covering}", pitch, _SLOPE, found.place, lowest=found.least),),
        basis=found.basis,
        value=pitch,
        unit=_SLOPE,
        lead=told,
        also=(Also("underlayment", "underlayment asked", under), Also("least", "least slope", found.least, _SLOPE)),
    )
    rows = tuple((name, one.least, one.place) for name, one in COVERINGS.items())
    return Answer(
        value=answer.value,
        unit=_SLOPE,
        words=answer.words,
        verdict=answer.verdict,
        sources=answer.sources,
        cautions=answer.cautions,
        also=answer.also,
        table=Table((("covering", ""), ("least slope", _SLOPE), ("section", "")), rows),
    )
