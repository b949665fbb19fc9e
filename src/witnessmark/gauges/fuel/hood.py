"""Whether a range hood needs make-up air, by edition."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Verdict
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.fuel.cautions import FINDING, LICENSED, LOCAL, MONOXIDE
from witnessmark.gauges.fuel.editions import RESIDENTIAL, checked_edition, since, standing
from witnessmark.gauges.fuel.sources import HOOD
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity

__all__ = ["range_hood_make_up_air"]

_MORE_THAN = Decimal(400)
_FIRST, _BY_APPLIANCE = 2009, 2018


@gauge(
    name="range-hood-make-up-air",
    family="fuel",
    title="Whether a range hood needs make-up air",
    unit="[cft_i]/min",
    gives="make-up air that the edition asks for, about equal to the exhaust",
    sources=(HOOD,),
    error="none in the rule; a hood's rating is its capability, what it moves in its duct is less",
    never="that a hood under the limit cannot draw flue gas into the room: a tight house can backdraft at 150 cfm",
    cautions=(MONOXIDE, LOCAL, FINDING, LICENSED),
    example={"exhaust": "600 cfm", "edition": "2015"},
)
def range_hood_make_up_air(
    exhaust: Annotated[
        Quantity,
        Asked(
            "airflow that the hood is able to exhaust", "[cft_i]/min", lowest="0", highest="2000", least="0",
            how="from its plate or manual at the highest speed", example="600 cfm",
        ),
    ],
    edition: Annotated[
        int,
        Asked(
            "edition of the International Residential Code adopted where and when it was put in", lowest="2000",
            highest="2024", how="from the permit, or ask the building department", example="2015",
        ),
    ],
    burner: Annotated[
        Literal["natural draft", "direct vent or mechanical draft", "none"],
        Asked("fuel-burning appliances inside the house's air barrier, the weakest kind of venting that is there"),
    ] = "natural draft",
    make_up: Annotated[
        Quantity | None,
        Asked(
            "make-up air that is brought in when the hood runs", "[cft_i]/min", lowest="0", highest="2000", least="0",
            how="from the plate or permit of its fan or damper; 0 where there is none", example="600 cfm",
        ),
    ] = None,
    built: Annotated[
        int | None, Asked("year the house was built or the hood put in", lowest="1700", highest="2100", example="1994")
    ] = None,
) -> Answer:  # fmt: skip
    """Make-up air for a kitchen exhaust, by edition of the residential code.

    Rule:
        before 2009: not required
        2009 to 2015 (M1503.4): a hood able to exhaust more than 400 cfm
        2018 and later (M1503.6): an exhaust of more than 400 cfm, where a fuel-burning appliance that is neither
        direct-vent nor mechanical-draft stands inside the air barrier
        about equal to the exhaust, with at least one damper that opens when it runs and can be reached

    More than 400: 401 yes, 400 no.

    >>> from witnessmark.units import parse_quantity as q
    >>> range_hood_make_up_air(q("401 cfm"), 2015)["required"], range_hood_make_up_air(q("400 cfm"), 2015)["required"]
    (True, False)
    """  # fmt: skip
    checked_edition(edition, RESIDENTIAL, "International Residential Code")
    large = exhaust.value > _MORE_THAN
    in_text = edition >= _FIRST
    exempt = edition >= _BY_APPLIANCE and burner != "natural draft"
    required = large and in_text and not exempt
    section = "M1503.6" if edition >= _BY_APPLIANCE else "M1503.4"
    late = standing(edition, built)
    if required:
        words = (
            f"Above 400 cfm: the {edition} edition ({section}) asks for make-up air of about {exhaust.value:,.0f} cfm."
        )
    elif not in_text:
        words = (
            f"Not yet required in the {edition} edition; first required by the 2009 edition for hoods above 400 cfm."
        )
        words += " Recommended today." if large else ""
    elif not large:
        words = f"{exhaust.value:,.0f} cfm is not above 400 cfm: the {edition} edition asks for none."
    else:
        words = (
            f"Above 400 cfm, but the {edition} edition ({section}) asks only where a natural-draft appliance stands "
            "inside the air barrier."
        )
    verdict = None if required and make_up is None else _verdict(exhaust.value, required, make_up)
    if required and make_up is not None:
        words += f" About {make_up.value:,.0f} cfm is brought in."
    return Answer(
        value=exhaust.value if required else Decimal(0),
        unit="[cft_i]/min",
        words=words + (late if required else ""),
        verdict=verdict,
        also=(*since(required=required, first=_FIRST), Also("section", "section", section if in_text else "none")),
    )


def _verdict(exhaust: Decimal, required: bool, make_up: Quantity | None) -> Verdict:
    if not required or make_up is None:
        return Verdict("within", "No make-up air is asked for by this edition", HOOD)
    if make_up.value == 0:
        return Verdict("beyond", "Make-up air is asked for by this edition and none is brought in", HOOD)
    if make_up.value < exhaust:
        told = "The code says about equal and gives no figure; how much less will do is for the building department"
        return Verdict("undecided", told, HOOD)
    return Verdict("within", "At least the exhaust is brought in", HOOD)
