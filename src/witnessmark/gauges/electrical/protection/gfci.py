"""Whether an outlet needed ground-fault protection when it was built, and whether today's model code asks for it."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Answer
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.electrical.editions import ADOPTED, BUILT, EDITION, in_force, nec
from witnessmark.gauges.electrical.messages import FACTS_CONTRADICT
from witnessmark.gauges.electrical.protection.gfci_rules import Near, Outlet, Place, Serves, gfci_found
from witnessmark.gauges.electrical.protection.requirement import judged
from witnessmark.gauges.gauge import gauge
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = ["gfci_required"]

_REACH = 2011  # first edition that asks for the device itself to be readily accessible


@gauge(
    name="gfci-required",
    family="electrical",
    title="Ground-fault protection: required here when built, and today",
    gives="whether the edition in force asked for ground-fault protection, the first edition that does, and today's",
    sources=(nec("1968 to 2026", "210.8 (earlier 210-8, 210-22(d)), 406.4(D)(3), 422.5, 680", "seen in a copy"),),
    error="editions come from lists and quotations of the code; sources that differ are named in the answer",
    never="that an outlet is protected, or that a missing device breaks the law of the place",
    cautions=(
        "Local law may have added to or taken from the model code; the building department has the last word.",
        "Whether a device works is shown only by tripping it; testing an energised outlet has its own dangers.",
    ),
    example={"place": "garage", "built": "1979", "adopted": "1979"},
)
def gfci_required(
    place: Annotated[Place, Asked("where the outlet is", how="by what the place is, not by what it is called")],
    *,
    serves: Annotated[Serves, Asked("what the outlet serves")] = "general use",
    outlet: Annotated[
        Literal["receptacle", "hard-wired", "lighting outlet"], Asked("receptacle, or wired without one")
    ] = "receptacle",
    near: Annotated[
        Near | None, Asked("the sink, tub or pool nearest to it", how="ask again for each if several")
    ] = None,
    distance: Annotated[
        Quantity | None,
        Asked(
            "distance to its edge by the shortest path that a cord would take",
            "[in_i]",
            least="0",
            most="12000",
            how="along the counter or floor, not through a wall, door or cabinet; the bowl's edge, not the faucet",
            example="5ft 10in",
        ),
    ] = None,
    finished: Annotated[
        bool | None, Asked("whether this part of a basement is finished as habitable room", example="no")
    ] = None,
    voltage: Annotated[
        Quantity | None,
        Asked(
            "voltage of the circuit; 120 V unless given",
            "V",
            lowest="100",
            highest="250",
            least="0",
            most="1000",
            how="from the receptacle's shape or the breaker's poles",
            example="120V",
        ),
    ] = None,
    amperes: Annotated[
        Quantity | None,
        Asked(
            "rating of the circuit; 20 A unless given",
            "A",
            lowest="10",
            highest="100",
            least="0",
            most="1000",
            how="from the breaker's handle, where it can be seen",
            example="20A",
        ),
    ] = None,
    accessible: Annotated[
        bool, Asked("whether the outlet is readily accessible", how="no: a ladder or tool is needed")
    ] = True,
    dedicated: Annotated[
        bool, Asked("whether it serves one appliance in its dedicated space that is not easily moved")
    ] = False,
    grade_access: Annotated[
        bool, Asked("outdoors: reached from grade, at most 6 ft 6 in above it", how="no: a balcony without stairs")
    ] = True,
    replaced: Annotated[
        bool, Asked("whether a receptacle was replaced; edition and year are then those of the replacement")
    ] = False,
    protected: Annotated[bool | None, Asked("whether ground-fault protection was found", example="yes")] = None,
    edition: Annotated[int | None, EDITION] = None,
    built: Annotated[int | None, BUILT] = None,
    adopted: Annotated[int | None, ADOPTED] = None,
) -> Answer:
    """Whether the edition in force asked for ground-fault protection at an outlet of a dwelling.

    Rule:
        A place or use is covered from the edition that first names it: outdoors 1971 (binding 1973), bathrooms
        1975, garages 1978, counters near the kitchen sink 1987 and all counters 1996, unfinished basements 1987 to
        1990, crawl spaces 1990, and so on to 2026. What an edition excepts (out of reach, one dedicated appliance:
        until 2005) is not asked for. Without the edition every one that may have been in force is looked at.

    Traps: 1973 is a date inside the 1971 edition, not an edition; the year built is not the edition in force; "within
    6 ft" follows the cord, not the air.

    >>> gfci_required("bathroom", edition=1975)["required"]
    True
    >>> gfci_required("bathroom", edition=1971)["first_edition"]
    Decimal('1975')
    """
    if distance is not None and near in {None, "nothing"}:
        raise Refusal(FACTS_CONTRADICT.at("distance", "a distance is given, but near does not say to what"))
    if replaced and outlet != "receptacle":
        raise Refusal(FACTS_CONTRADICT.at("replaced", f"a receptacle was replaced, but the outlet is {outlet}"))
    seen = Outlet(
        place,
        serves,
        outlet,
        near,
        None if distance is None else distance.value,
        finished,
        Decimal(120) if voltage is None else voltage.value,
        Decimal(20) if amperes is None else amperes.value,
        accessible,
        dedicated,
        grade_access,
    )
    force = in_force(edition, built, adopted)
    answer = judged(
        "ground-fault protection",
        lambda one, year: gfci_found(seen, one, year, replaced=replaced),
        force,
        present=protected,
    )
    cautions = answer.cautions
    if force.possible and force.possible[-1] >= _REACH:
        cautions = (*cautions, "From the 2011 edition on the device itself must be readily accessible, to be tested.")
    if outlet == "receptacle" and place in {"pool", "spa or hot tub"}:
        cautions = (*cautions, "Pools and spas have more rules (article 680) than are looked at here.")
    return replace(answer, cautions=cautions)
