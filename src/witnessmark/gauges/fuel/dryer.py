"""How long a clothes dryer's exhaust duct may be, by code and edition."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Limit, Source, Step, Uncertainty
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.fuel.cautions import FINDING, LOCAL
from witnessmark.gauges.fuel.editions import RESIDENTIAL, checked_edition, standing
from witnessmark.gauges.fuel.messages import NEITHER_GIVEN
from witnessmark.gauges.fuel.sources import COMMON, IRC_DRYER, UMC_DRYER
from witnessmark.gauges.gauge import gauge
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = ["FITTINGS", "Fitting", "dryer_duct_length", "fitting_inches"]

#: Fitting to its angle and, from 2009, its equivalent length in inches.
FITTINGS: dict[str, tuple[int, int]] = {
    "4 in mitred 45": (45, 30), "4 in mitred 90": (90, 60),
    "6 in smooth 45": (45, 12), "6 in smooth 90": (90, 21),
    "8 in smooth 45": (45, 12), "8 in smooth 90": (90, 19),
    "10 in smooth 45": (45, 9), "10 in smooth 90": (90, 18),
}  # fmt: skip
#: Before the table of fittings every bend counted by its angle, in inches.
_BY_ANGLE = {45: 30, 90: 60}
_TABLE_FROM, _LONGER_FROM = 2009, 2012
_SHORT, _LONG = 25 * 12, 35 * 12
_UNIFORM, _FREE_BENDS, _EACH_MORE = 14 * 12, 2, 24
_TRANSITION = Decimal(8)


def fitting_inches(kind: str, edition: int) -> int:
    """Inches that one fitting takes off the permitted length, by edition of the International Residential Code.

    >>> fitting_inches("6 in smooth 90", 2018), fitting_inches("6 in smooth 90", 2006)
    (21, 60)
    """
    angle, table = FITTINGS[kind]
    return table if edition >= _TABLE_FROM else _BY_ANGLE[angle]


@dataclass(frozen=True, slots=True)
class Fitting:
    """Fittings of one kind in the duct."""

    kind: Annotated[
        Literal[
            "4 in mitred 45", "4 in mitred 90", "6 in smooth 45", "6 in smooth 90", "8 in smooth 45", "8 in smooth 90",
            "10 in smooth 45", "10 in smooth 90",
        ],
        Asked("radius, make and angle of the bend", how="an ordinary adjustable elbow is 4 in mitred"),
    ]  # fmt: skip
    count: Annotated[int, Asked("how many", lowest="0", highest="20", least="0", most="1000")] = 1


@gauge(
    name="dryer-duct-length",
    family="fuel",
    title="How long a dryer's exhaust duct may be",
    unit="[ft_i]",
    gives="permitted length of duct after the fittings, from the transition duct to the outlet",
    sources=(IRC_DRYER, UMC_DRYER),
    error="none in the rule; a duct behind walls is measured to about a foot",
    never="that a duct is clear: lint, screens and crushed pipe stop a short one as well",
    cautions=(
        LOCAL,
        FINDING,
        "No screen at the outlet, and no screws through the duct: both catch lint, and lint burns.",
    ),
    example={"edition": "2018", "length": "20ft", "fittings": "4 in mitred 90, 2"},
)
def dryer_duct_length(
    length: Annotated[
        Quantity | None,
        Asked(
            "length of the duct", "[ft_i]", lowest="0", highest="100", least="0",
            how="along the duct from the end of the transition duct to the outlet; the transition duct is not counted",
            example="20ft",
        ),
    ] = None,
    fittings: Annotated[tuple[Fitting, ...], Asked("bends in the duct")] = (),
    *,
    code: Annotated[
        Literal["residential", "uniform mechanical"], Asked("model code adopted where the house stands")
    ] = "residential",
    edition: Annotated[
        int | None,
        Asked(
            "edition of the International Residential Code adopted when the duct was put in", lowest="2000",
            highest="2024", example="2018",
        ),
    ] = None,
    transition: Annotated[
        Quantity | None,
        Asked(
            "length of the transition duct behind the dryer", "[ft_i]", lowest="0", highest="20", least="0",
            how="one piece from the dryer to the wall", example="5ft",
        ),
    ] = None,
    maker: Annotated[
        Quantity | None,
        Asked(
            "length permitted by the dryer maker's instructions for this run, bends counted as they count them",
            "[ft_i]", lowest="1", highest="200", least="0", how="from the manual of the dryer that is there",
            example="64ft",
        ),
    ] = None,
    built: Annotated[
        int | None, Asked("year the house was built or the duct put in", lowest="1700", highest="2100", example="1994")
    ] = None,
) -> Answer:  # fmt: skip
    """Permitted length of a dryer's exhaust duct after its fittings, by code and edition.

    Rule:
        International Residential Code 2012 and later: 35 ft; 2000 to 2009: 25 ft
        bends from 2009 by table: 4 in mitred 45 2 ft 6, 90 5 ft; 6 in smooth 45 1 ft, 90 1 ft 9; 8 in smooth 45 1 ft,
        90 1 ft 7; 10 in smooth 45 9 in, 90 1 ft 6; before 2009 2 ft 6 for 45 and 5 ft for 90 of any radius
        Uniform Mechanical Code: 14 ft with two 90s, less 2 ft for each further 90
        the maker's instructions replace all of this; the transition duct (one piece, at most 8 ft) is not counted

    Copies differ on whether the 2009 edition has 25 or 35 ft; 25 is taken here.

    >>> bends = (Fitting("4 in mitred 90", 2), Fitting("4 in mitred 45", 1))
    >>> dryer_duct_length(fittings=bends, edition=2018).value
    Decimal('22.5')
    """  # fmt: skip
    notes: list[str] = []
    late = ""
    if maker is not None:
        source, base, taken = COMMON, maker.value * 12, Decimal(0)
        words = (
            f"The maker's instructions replace the code's length: {maker.value:.1f} ft, bends as the maker counts them."
        )
        notes.append("The permit holder shows the instructions; when the dryer is replaced the code's length returns.")
    elif code == "residential":
        if edition is None:
            raise Refusal(NEITHER_GIVEN.at("edition", "of the International Residential Code, or the maker's length"))
        checked_edition(edition, RESIDENTIAL, "International Residential Code")
        source, base = IRC_DRYER, Decimal(_LONG if edition >= _LONGER_FROM else _SHORT)
        taken = Decimal(sum(one.count * fitting_inches(one.kind, edition) for one in fittings))
        words = f"By the {edition} edition: {base / 12:.0f} ft"
        late = standing(edition, built)
        if edition == _TABLE_FROM:
            notes.append("Copies of the 2009 edition differ: some print 35 ft. Check the adopted text.")
    else:
        source, base = UMC_DRYER, Decimal(_UNIFORM)
        bends = sum(one.count for one in fittings if FITTINGS[one.kind][0] == 90)  # noqa: PLR2004 - right-angle bends
        taken = Decimal(max(bends - _FREE_BENDS, 0) * _EACH_MORE)
        words = "By the Uniform Mechanical Code: 14 ft with two right-angle bends"
        if any(FITTINGS[one.kind][0] != 90 for one in fittings):  # noqa: PLR2004 - as above
            notes.append("The Uniform Mechanical Code as read says nothing of 45-degree bends; they were not counted.")
    allowed = max(base - taken, Decimal(0))
    if maker is None:
        words += f", less {taken / 12:.2f} ft for bends, leaves {allowed / 12:.2f} ft."
    also = [
        Also("base", "length before bends", base / 12, "[ft_i]"),
        Also("taken", "length taken by bends", taken / 12, "[ft_i]"),
    ]
    if transition is not None:
        also.append(Also("transition_long", "transition duct longer than 8 ft", transition.value > _TRANSITION))
        if transition.value > _TRANSITION:
            notes.append(f"The transition duct is {transition.value:.1f} ft long; 8 ft in one piece is the most.")
    verdict = None
    if length is not None:
        margin = allowed - length.value * 12
        held = Answer(value=length.value * 12, unit="[in_i]").against(
            Limit(source, highest=Quantity(allowed, "[in_i]"), words="Duct length against the permitted length")
        )
        verdict = held.verdict
        also.append(Also("margin", "length to spare (negative: too long)", margin / 12, "[ft_i]"))
        over = f" The duct measures {length.value:.1f} ft: "
        words += over + (f"{-margin / 12:.2f} ft too long." if margin < 0 else f"{margin / 12:.2f} ft to spare.")
    return Answer(
        value=allowed / 12,
        unit="[ft_i]",
        words=words + late,
        uncertainty=Uncertainty("none in the rule; a duct behind walls is measured to about a foot"),
        verdict=verdict,
        sources=_cited(source, code),
        cautions=tuple(notes),
        also=tuple(also),
        steps=(Step("length before bends", base / 12, "[ft_i]"), Step("taken by bends", taken / 12, "[ft_i]")),
    )


def _cited(source: Source, code: str) -> tuple[Source, ...]:
    if source is COMMON:
        maker = Source("Dryer maker's installation instructions", "", "exhaust length", "common practice, no source")
        return (maker, IRC_DRYER if code == "residential" else UMC_DRYER)
    return (source,)
