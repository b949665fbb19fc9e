"""Whether a branch circuit needed arc-fault protection when it was built, and whether today's model code asks for it."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.electrical.editions import ADOPTED, BUILT, EDITION, in_force, nec
from witnessmark.gauges.electrical.messages import FACTS_CONTRADICT
from witnessmark.gauges.electrical.protection.afci_rules import Circuit, Device, Room, Work, afci_found, type_accepted
from witnessmark.gauges.electrical.protection.requirement import judged
from witnessmark.gauges.gauge import gauge
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = ["afci_required"]

_NEVER = ("bathroom", "garage", "outdoors", "unfinished basement", "attic", "crawl space")


@gauge(
    name="afci-required",
    family="electrical",
    title="Arc-fault protection: required here when built, and today",
    gives="whether the edition in force asked for arc-fault protection, the first edition that does, and today's",
    sources=(nec("1999 to 2026", "210.12, 406.4(D)(4)", "seen in a copy"),),
    error="editions come from lists and quotations of the code; sources that differ are named in the answer",
    never="that a circuit is protected, or that a missing device breaks the law of the place",
    cautions=(
        "Many places changed or struck out the arc-fault rules when they adopted the code; ask the building department.",
    ),
    example={"room": "bedroom", "outlet": "lighting", "edition": "2002"},
)
def afci_required(
    room: Annotated[
        Room, Asked("room that the circuit serves", how="a finished basement room counts as the room it is used as")
    ],
    *,
    outlet: Annotated[
        Literal["receptacle", "lighting", "smoke alarm", "other outlet", "switch or other device"],
        Asked("what the circuit supplies there"),
    ] = "receptacle",
    work: Annotated[
        Work, Asked("what was done; edition and year are those of the work", how="from the permit")
    ] = "new circuit",
    added: Annotated[
        Quantity | None,
        Asked("length of wiring added to an existing circuit", "[in_i]", least="0", most="12000", example="4ft"),
    ] = None,
    adds_outlets: Annotated[bool | None, Asked("whether an outlet or device was added with it", example="no")] = None,
    voltage: Annotated[
        Quantity | None,
        Asked(
            "voltage of the circuit; 120 V unless given",
            "V",
            lowest="100",
            highest="250",
            least="0",
            most="1000",
            how="from the breaker's poles",
            example="120V",
        ),
    ] = None,
    amperes: Annotated[
        Quantity | None,
        Asked(
            "rating of the circuit; 15 A unless given",
            "A",
            lowest="10",
            highest="100",
            least="0",
            most="1000",
            how="from the breaker's handle, where it can be seen",
            example="15A",
        ),
    ] = None,
    fitted: Annotated[
        Device | None,
        Asked("type of arc-fault device found", how="printed on the breaker; branch/feeder types came first"),
    ] = None,
    edition: Annotated[int | None, EDITION] = None,
    built: Annotated[int | None, BUILT] = None,
    adopted: Annotated[int | None, ADOPTED] = None,
) -> Answer:
    """Whether the edition in force asked for arc-fault protection of a branch circuit of a dwelling.

    Rule:
        120 V circuits of 15 or 20 A that supply: bedroom receptacles 1999 (binding 2002); all bedroom outlets 2002;
        living rooms, halls, closets and similar rooms 2008; kitchens, laundry areas and devices 2014. Circuits that
        are extended 2011 (from 2014 not for 6 ft without a new outlet); receptacles replaced 2011 (binding 2014).
        Never bathrooms, garages, outdoors, unfinished basements. Combination type from 1 January 2008.

    Traps: the 1999 edition names receptacles, not lights; a branch/feeder type was right for its date.

    >>> afci_required("bedroom", outlet="lighting", edition=1999, built=2002)["required"]
    False
    >>> afci_required("kitchen", edition=2014)["required"]
    True
    """
    if work == "new circuit" and (added is not None or adds_outlets is not None):
        raise Refusal(FACTS_CONTRADICT.at("added", "a new circuit has no length or outlet added to an old one"))
    seen = Circuit(
        room,
        outlet,
        Decimal(120) if voltage is None else voltage.value,
        Decimal(15) if amperes is None else amperes.value,
        work,
        None if added is None else added.value,
        adds_outlets,
    )
    force = in_force(edition, built, adopted)
    answer = judged(
        "arc-fault protection",
        lambda one, year: afci_found(seen, one, year),
        force,
        present=None if fitted is None else fitted != "none",
    )
    cautions, also, words = answer.cautions, answer.also, answer.words
    if room in _NEVER and answer["first_edition"] == "none":
        cautions = (*cautions, "The 2026 edition was not read for this: look it up before relying on it.")
    if fitted not in {None, "none"} and force.possible and answer["required"] is not False:
        accepted = {type_accepted(fitted, one, force.year) for one in force.possible if one}
        told: bool | str = accepted == {True} if None not in accepted and len(accepted) == 1 else "depends"
        also = (*also, Also("type_accepted", "whether this type was accepted at that date", told))
        said = {
            True: "was accepted at that date",
            False: "was no longer accepted: combination type was asked for from 1 January 2008",
            "depends": "was accepted until 1 January 2008, so it hangs on the year of the work",
        }[told]
        words = f"{words} A {fitted} device {said}."
    return replace(answer, cautions=cautions, also=also, words=words)
