"""Whether what stands between garage and house is what an edition asks: boards, the door, ducts."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Basis, Verdict
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.building.asking import inches
from witnessmark.gauges.building.checks import said, when_rows
from witnessmark.gauges.building.editions import IRC, Built, Edition, Held, held_to, irc, named
from witnessmark.gauges.building.messages import NEEDED_HERE
from witnessmark.gauges.gauge import gauge
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = ["door_shortfalls", "garage_board", "garage_door_to_house", "garage_duct", "self_closing_asked"]

_HALF, _FIVE_EIGHTHS, _DOOR = Decimal("0.5"), Decimal("0.625"), Decimal("1.375")
_GAUGE = 26
_CLOSER_SINCE, _CLOSER_DOUBTFUL = 2015, 2012
_IN = "[in_i]"
Part = Literal[
    "wall to the house", "ceiling to the attic", "ceiling under a habitable room", "wall or post that carries that ceiling",
    "detached garage within 3 ft",
]  # fmt: skip
Board = Literal["gypsum", "Type X gypsum", "other", "none"]
Door = Literal["solid wood", "solid steel", "honeycomb steel", "20-minute label", "hollow", "other"]


def _answer(
    held: Held,
    place: str,
    basis: Basis,
    lead: str,
    *,
    misses: tuple[str, ...],
    today: tuple[str, ...],
    cautions: tuple[str, ...],
) -> Answer:
    """The answer to a separation question from what is missed by the edition held against, and by today's."""
    source = irc(place, basis, held.edition or IRC[-1])
    ours = today if held.edition is None else misses
    name = named(IRC[-1]) if held.edition is None else held.name
    told = "; ".join(ours) if ours else f"nothing found short of {name}"
    words = f"{lead} Against {name}: {told}."
    if held.edition is None:
        words += " It was not judged by the code of its day, which is not held here; this is what is recommended today."
    elif today and not misses:
        words += (
            f" {named(IRC[-1])} would ask more: {'; '.join(today)}. Not yet required when built; recommended today."
        )
    outcome: Literal["within", "beyond", "undecided"]
    outcome = "undecided" if held.edition is None else "beyond" if misses else "within"
    return Answer(
        words=words,
        verdict=Verdict(outcome, told, source),
        sources=(source,),
        cautions=(*held.cautions, *cautions),
        also=(
            Also("within", f"what {name} asks is there", not ours),
            Also("within_today", f"what {named(IRC[-1])} asks is there", not today),
            *when_rows(held, IRC[0]),
        ),
    )


def _board_misses(part: str, board: str, thickness: Decimal | None) -> tuple[str, ...]:
    under = part == "ceiling under a habitable room"
    least, want = (_FIVE_EIGHTHS, "5/8 in Type X gypsum board") if under else (_HALF, "1/2 in gypsum board")
    if board in {"other", "none"}:
        return (f"{part}: {board} where {want} or its equal is asked",)
    if thickness is None:
        raise Refusal(NEEDED_HERE.at("thickness", f"{part}: {want} is asked"))
    found = []
    if thickness < least:
        found.append(f"{part}: {said(thickness, _IN)} thick where {want} is asked")
    if under and board != "Type X gypsum":
        found.append(f"{part}: not Type X, which is asked")
    return tuple(found)


@gauge(
    name="garage-separation",
    family="building",
    title="Boards between garage and house",
    gives="whether the board is what the edition asks at this part",
    sources=(
        irc("R302.6, Table R302.6 (R309.2 to 2006)", "seen in a copy"),
        irc("Table R302.6, ceilings and supports", "memory"),
    ),
    error="thickness is read at a cut edge or a box; paint hides the stamp of Type X",
    never="how long the wall would stand a fire",
    cautions=("Openings for pipes, wires and pull-down stairs break the separation too: look at them.",),
    example={"part": "wall to the house", "board": "gypsum", "thickness": "1/2 in", "edition": "2018"},
)
def garage_board(
    part: Annotated[Part, Asked("which part of the garage", example="wall to the house")],
    board: Annotated[Board, Asked("what covers it on the garage side", example="gypsum")],
    thickness: Annotated[
        Quantity | None, inches("thickness of the board", most="6", how="at a box or a cut edge", example="1/2 in")
    ] = None,
    edition: Edition = None,
    built: Built = None,
) -> Answer:
    """Whether the board on the garage side is the one an edition asks at this part.

    Rule:
        wall to the house and ceiling to its attic: 1/2 in gypsum on the garage side; under a habitable room: 5/8 in
        Type X, and 1/2 in on what carries that ceiling; detached garage within 3 ft: 1/2 in inside on that wall. Walls
        square to the dwelling are exempt.

    >>> from witnessmark.units import parse_quantity as q
    >>> garage_board("ceiling under a habitable room", "gypsum", q("1/2 in"), edition=2018)["within"]
    False
    """
    misses = _board_misses(part, board, None if thickness is None else thickness.value)
    cautions = (
        ("IRC 2000 may have asked only 1/2 in under habitable rooms: look at the text adopted.",)
        if part == "ceiling under a habitable room"
        else ()
    )
    return _answer(
        held_to(edition, built),
        "Table R302.6",
        "memory" if part.startswith(("ceiling under", "wall or post")) else "seen in a copy",
        f"{part[:1].upper()}{part[1:]}: {board}.",
        misses=misses,
        today=misses,
        cautions=cautions,
    )


def self_closing_asked(edition: int) -> bool:
    """Whether an IRC edition asks that the door between garage and house closes itself: from 2015 on.

    >>> self_closing_asked(2009), self_closing_asked(2018)
    (False, True)
    """
    return edition >= _CLOSER_SINCE


def door_shortfalls(
    edition: int, door: str, thickness: Decimal | None, *, closes: bool | None, bedroom: bool
) -> tuple[str, ...]:
    """What a door between garage and house falls short of by an IRC edition; *thickness* in inches.

    >>> door_shortfalls(2009, "solid wood", Decimal("1.25"), closes=None, bedroom=False)
    ('solid wood door 1 1/4 in thick, 1 3/8 in asked',)
    """
    found = []
    if bedroom:
        found.append("opening from the garage into a sleeping room")
    if door in {"hollow", "other"}:
        found.append(f"{door} door without a 20-minute label")
    elif door != "20-minute label":
        if thickness is None:
            raise Refusal(NEEDED_HERE.at("thickness", f"{door}: 1 3/8 in is asked"))
        if thickness < _DOOR:
            found.append(f"{door} door {said(thickness, _IN)} thick, 1 3/8 in asked")
    if closes is False and self_closing_asked(edition):
        found.append("door does not close itself")
    return tuple(found)


@gauge(
    name="garage-house-door",
    family="building",
    title="Door between garage and house",
    gives="whether the door is what the edition asks",
    sources=(
        irc("R302.5.1", "seen in a copy", 2018),
        irc("R302.5.1 (R309.1 to 2006), history of self-closing", "memory"),
    ),
    error="thickness at the edge to 1/16 in; a painted-over label is no label",
    never="how long the door would stand a fire",
    example={"door": "solid wood", "thickness": "1 3/4 in", "self_closing": "yes", "edition": "2018"},
)
def garage_door_to_house(
    door: Annotated[Door, Asked("kind of door", how="knock; read the label on the hinge edge", example="solid wood")],
    thickness: Annotated[Quantity | None, inches("thickness of the door", most="12", example="1 3/4 in")] = None,
    self_closing: Annotated[
        bool | None,
        Asked("whether it closes itself from any angle", how="open it to a hand's breadth and let go", example="yes"),
    ] = None,
    into_bedroom: Annotated[bool, Asked("whether it opens into a sleeping room", example="no")] = False,
    *,
    edition: Edition = None,
    built: Built = None,
) -> Answer:
    """Whether the door between garage and house is one an edition allows, and whether it must close itself.

    Rule:
        solid wood 1 3/8 in, or solid or honeycomb steel 1 3/8 in, or a 20-minute label; self-closing from IRC 2015 (not
        in 2000 to 2009; recollections of 2012 differ); no opening into a sleeping room in any edition

    >>> from witnessmark.units import parse_quantity as q
    >>> garage_door_to_house("hollow", q("1 3/8 in"), edition=2018)["within"]
    False
    """
    thick = None if thickness is None else thickness.value
    held = held_to(edition, built)

    def short(one: int) -> tuple[str, ...]:
        return door_shortfalls(one, door, thick, closes=self_closing, bedroom=into_bedroom)

    cautions: tuple[str, ...] = ()
    if held.edition == _CLOSER_DOUBTFUL:
        cautions = ("Whether IRC 2012 already asked for a self-closing door is recalled both ways: look at the text.",)
    elif self_closing is None:
        cautions = ("Whether the door closes itself was not given; IRC 2015 and later ask it.",)
    answer = _answer(
        held,
        "R302.5.1",
        "seen in a copy" if (held.edition or IRC[-1]) >= _CLOSER_SINCE else "memory",
        f"Door: {door}.",
        misses=short(held.edition or IRC[-1]),
        today=short(IRC[-1]),
        cautions=cautions,
    )
    closer = held.edition is not None and self_closing_asked(held.edition)
    return Answer(
        words=answer.words,
        verdict=answer.verdict,
        sources=answer.sources,
        cautions=answer.cautions,
        also=(
            *answer.also,
            Also("self_closing_required", f"self-closing asked by {held.name}", closer),
            Also("self_closing_first", "first edition that asks it", named(_CLOSER_SINCE)),
        ),
    )


@gauge(
    name="garage-duct",
    family="building",
    title="Duct through the garage",
    gives="whether a duct in the garage keeps the separation",
    sources=(irc("R302.5.2 (R309.1.1 to 2006)", "seen in a copy", 2015),),
    error="the gauge number of steel is read from a mark or measured with a sheet gauge",
    never="that no exhaust gas enters the house by the duct",
    example={"steel_gauge": "26", "openings": "no", "edition": "2018"},
)
def garage_duct(
    steel_gauge: Annotated[
        int | None,
        Asked(
            "gauge number of the sheet steel (a smaller number is thicker); leave out for another material",
            lowest="10",
            highest="36",
            least="0",
            most="50",
            example="26",
        ),
    ] = None,
    openings: Annotated[
        bool, Asked("whether the duct has any grille or opening into the garage", example="no")
    ] = False,
    edition: Edition = None,
    built: Built = None,
) -> Answer:
    """Whether a duct that runs through the garage or its separation is steel thick enough and closed.

    Rule:
        ducts in the garage and through the walls or ceiling to the house: sheet steel of No. 26 gauge at least (0.48 mm)
        or other approved material, with no openings into the garage

    >>> garage_duct(28, edition=2018)["within"], garage_duct(26, edition=2018)["within"]
    (False, True)
    """
    misses = []
    if steel_gauge is None:
        misses.append("duct of another material than sheet steel: needs the approval of the place")
    elif steel_gauge > _GAUGE:
        misses.append(f"No. {steel_gauge} gauge is thinner than No. {_GAUGE}")
    if openings:
        misses.append("duct opens into the garage")
    short = tuple(misses)
    return _answer(
        held_to(edition, built),
        "R302.5.2",
        "seen in a copy",
        "Duct in the garage.",
        misses=short,
        today=short,
        cautions=(),
    )
