"""Which overcurrent device a conductor may have, with the exceptions that make a bare table look wrong."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Step, Verdict, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.electrical.calculating.ampacity import (
    AMBIENT,
    CONDUCTORS,
    INSULATION,
    SIZE,
    TERMINALS,
    Wiring,
    usable,
)
from witnessmark.gauges.electrical.calculating.ampacity_tables import (
    Material,
    next_standard,
    small_conductor_cap,
    standard_at_most,
    table_ampacity,
)
from witnessmark.gauges.electrical.calculating.cautions import WORK_ON_IT
from witnessmark.gauges.electrical.calculating.sizes import printed_size, read_size
from witnessmark.gauges.electrical.editions import EDITIONS, nec
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity

__all__ = ["Allowed", "allowed_device", "conductor_protection"]

Serves = Literal["general load", "air conditioner", "motor", "welder", "whole dwelling"]
_DECIDES = {
    "air conditioner": "the plate of the unit (minimum circuit ampacity, maximum overcurrent protection)",
    "motor": "the full-load current of the motor",
}
_IN_FORCE = (
    "Judged by the edition named; what was in force here when it was built or altered decides, and makers' plates go "
    "before tables."
)
_LARGEST_NEXT_UP = 800
_WHOLE_DWELLING = range(100, 401)
_SOURCES = {
    "general load": nec("1984 to 2023", "240.4(B), 240.4(D), 240.6(A)", "seen in a copy"),
    "air conditioner": nec("1984 to 2023", "240.4(G), 440.4(B), 440.22, 440.32", "memory"),
    "motor": nec("1984 to 2023", "240.4(G), 430.22, 430.52", "memory"),
    "welder": nec("1984 to 2023", "240.4(G), 630.11, 630.12", "memory"),
    "whole dwelling": nec("1984 to 2023", "310.12; earlier 310.15(B)(7), 310.15(B)(6)", "seen in a copy"),
}


@dataclass(frozen=True, slots=True)
class Allowed:
    """The largest device in A (None: the plate is needed), the rule that ends it, what the conductor needs in A."""

    device: int | None
    rule: str
    needs: Decimal | None = None


def allowed_device(
    size: str,
    material: str,
    edition: int,
    amperes: Decimal,
    serves: str = "general load",
    *,
    several_receptacles: bool = False,
    needed: Decimal | None = None,
    largest: Decimal | None = None,
    motor_current: Decimal | None = None,
    fuse: bool = False,
) -> Allowed:
    """The largest overcurrent device in A for a conductor of *amperes* ampacity that *serves* something.

    *needed*, *largest*: minimum circuit ampacity and maximum device of an air conditioner's plate in A;
    *motor_current*: full-load current in A. Source: NEC 240.4(B), (D), (G), 240.6(A), 310.12, 430, 440, 630.

    >>> allowed_device("12", "copper", 2020, Decimal(20)).device
    20
    >>> allowed_device("6", "copper", 2020, Decimal(55)).device
    60
    """
    if serves == "air conditioner":
        return Allowed(
            None if largest is None else int(largest),
            "the most that the plate of the unit allows (240.4(G), 440)",
            needed,
        )
    if serves == "motor":
        if motor_current is None:
            return Allowed(None, "the full-load current of the motor (240.4(G), 430)")
        times = Decimal("1.75") if fuse else Decimal("2.5")
        device = next_standard(motor_current * times) or standard_at_most(motor_current * times)
        return Allowed(device, f"{times * 100:.0f} % of the motor current (430.52)", motor_current * Decimal("1.25"))
    if serves == "welder":
        device = next_standard(2 * amperes) or standard_at_most(2 * amperes)
        return Allowed(device, "200 % of the ampacity (630.12)")
    if serves == "whole dwelling":
        full = table_ampacity(size, material, 75, edition)
        rating = standard_at_most(Decimal(full) / Decimal("0.83"))
        if rating in _WHOLE_DWELLING:
            return Allowed(rating, "83 % of the service rating (310.12)")
    up = next_standard(amperes)
    if up is None or several_receptacles or amperes > _LARGEST_NEXT_UP:
        device, rule = standard_at_most(amperes), "the standard size not above the ampacity (240.4)"
    elif up == amperes:
        device, rule = up, "the ampacity (240.4)"
    else:
        device, rule = up, "the next standard size up (240.4(B))"
    cap = small_conductor_cap(size, material)
    if cap is not None and cap <= device:
        device, rule = cap, "the limit for small conductors (240.4(D))"
    return Allowed(device, rule)


@gauge(
    name="conductor-protection",
    family="electrical",
    title="Overcurrent device against conductor",
    unit="A",
    gives="the largest overcurrent device for the conductor, by the edition given",
    sources=(
        nec("2011 to 2023", "Table 310.16 and 310.15", "seen in a copy"),
        nec("1984 to 2008", "Table 310.16", "seen in a copy"),
        *_SOURCES.values(),
    ),
    error="none in the table; size, metal, insulation and terminals are only as sure as what was read",
    never="that a circuit is rightly protected, or that a device larger than the table is a defect by itself",
    cautions=(
        WORK_ON_IT,
        _IN_FORCE,
    ),
    example={
        "size": "14 AWG",
        "material": "copper",
        "wiring": "NM cable",
        "device": "20A",
        "edition": "2020",
    },
)
def conductor_protection(
    size: Annotated[str, SIZE],
    material: Annotated[
        Material, Asked("metal of the conductor", how="by its colour at a terminal or by the print (AL)")
    ],
    wiring: Annotated[Wiring, Asked("kind of wiring", how="from the print on the sheath")],
    device: Annotated[
        Quantity,
        Asked(
            "rating of the breaker or fuse",
            "A",
            lowest="15",
            highest="800",
            least="0.1",
            most="6000",
            how="the number on the handle or the fuse; a two-pole breaker counts once",
            example="20A",
        ),
    ],
    edition: Annotated[int, Asked("edition of the code in force there at that time", example="2020", choices=EDITIONS)],
    *,
    serves: Annotated[
        Serves,
        Asked(
            "what the conductor serves; 'whole dwelling' only where it carries the entire load of the house",
            how="air conditioners, motors and welders have rules of their own",
        ),
    ] = "general load",
    several_receptacles: Annotated[
        bool, Asked("whether it is a branch circuit with more than one receptacle for portable loads", example="no")
    ] = False,
    insulation: Annotated[int | None, INSULATION] = None,
    terminals: Annotated[int | None, TERMINALS] = None,
    ambient: Annotated[Quantity | None, AMBIENT] = None,
    conductors: Annotated[int, CONDUCTORS] = 3,
    minimum_circuit_ampacity: Annotated[
        Quantity | None,
        Asked(
            "minimum circuit ampacity (MCA) on the plate of the air conditioner",
            "A",
            lowest="1",
            highest="200",
            least="0.1",
            most="2000",
            how="from the plate on the outdoor unit",
            example="18.6A",
        ),
    ] = None,
    maximum_device: Annotated[
        Quantity | None,
        Asked(
            "maximum overcurrent protection (MOCP, maximum fuse or breaker) on the same plate",
            "A",
            lowest="15",
            highest="200",
            least="1",
            most="2000",
            how="from the plate on the outdoor unit; see whether it says fuse, or fuse or breaker",
            example="30A",
        ),
    ] = None,
    motor_current: Annotated[
        Quantity | None,
        Asked(
            "full-load current of the motor by the code's motor tables",
            "A",
            lowest="1",
            highest="200",
            least="0.1",
            most="2000",
            how="from horsepower and voltage in the tables of article 430, not from the plate",
            example="8A",
        ),
    ] = None,
    fuse: Annotated[
        bool, Asked("whether the motor is protected by time-delay fuses, not a breaker", example="no")
    ] = False,
) -> Answer:
    """The largest overcurrent device for a conductor, and how the device found compares.

    Rule:
        general load: the ampacity, or the next standard size up where it is no standard size, up to 800 A, and not for
        branch circuits of several receptacles (240.4(B)); never more than the small-conductor limit (240.4(D)).
        air conditioner: device <= MOCP and ampacity >= MCA on its plate (240.4(G), 440): the small-conductor limit does
        not count. motor: device <= 250 % (time-delay fuse 175 %) of its current, next size up; ampacity >= 125 %.
        welder: 200 % of the ampacity. whole dwelling, 100 to 400 A: ampacity >= 83 % of the rating (310.12).
        Known trap: a 30 A breaker on 12 AWG copper is over-fused for receptacles, and may be right for an air
        conditioner.

    >>> from witnessmark.units import parse_quantity as q
    >>> conductor_protection("14", "copper", "NM cable", q("20A"), 2020).value
    Decimal('15')
    """
    name = read_size(size)
    warm = 30.0 if ambient is None else float(ambient.value)
    got = usable(
        name, material, wiring, edition, insulation=insulation, terminals=terminals, ambient=warm, conductors=conductors,
        device=device.value,
    )  # fmt: skip
    allowed = allowed_device(
        name, material, edition, got.amperes, serves, several_receptacles=several_receptacles, fuse=fuse,
        needed=_value(minimum_circuit_ampacity), largest=_value(maximum_device), motor_current=_value(motor_current),
    )  # fmt: skip
    plain = allowed_device(name, material, edition, got.amperes, several_receptacles=several_receptacles)
    verdict = _verdict(device.value, allowed, got.amperes, serves)
    wire = f"{printed_size(name)} {material} as {wiring}"
    cautions = [*got.assumed]
    if verdict.outcome == "within" and plain.device is not None and device.value > plain.device:
        cautions.append(
            f"For a general load the same conductor would have at most {plain.device} A: the rule for "
            f"{serves} is what allows more."
        )
    if serves == "whole dwelling":
        cautions.append(
            "Only where this conductor carries the entire load of one dwelling; never for other sub-panels."
        )
    return Answer(
        value=None if allowed.device is None else Decimal(allowed.device),
        words=f"{wire} has an ampacity of {float(got.amperes):.4g} A by NEC {edition}. {verdict.words}",
        verdict=verdict,
        sources=(_SOURCES[serves], nec(edition, "Table 310.16", "seen in a copy")),
        cautions=tuple(cautions),
        also=(
            Also("ampacity", "ampacity of the conductor", rounded(float(got.amperes)), "A"),
            Also("column", "temperature column that ends it", Decimal(got.column), "Cel"),
            Also("rule", "what ends the size of the device", allowed.rule),
            *_capped(name, material),
        ),
        steps=(
            Step(f"table value, {got.insulation} °C", Decimal(got.before_factors), "A"),
            Step(f"ampacity after factors and the {got.column} °C column", rounded(float(got.amperes)), "A"),
            *(() if allowed.device is None else (Step(allowed.rule, Decimal(allowed.device), "A"),)),
        ),
    )


def _value(given: Quantity | None) -> Decimal | None:
    return None if given is None else given.value


def _capped(size: str, material: str) -> tuple[Also, ...]:
    cap = small_conductor_cap(size, material)
    return (
        () if cap is None else (Also("small_conductor_limit", "limit of 240.4(D), general loads", Decimal(cap), "A"),)
    )


def _verdict(device: Decimal, allowed: Allowed, amperes: Decimal, serves: str) -> Verdict:
    source = _SOURCES[serves]
    if allowed.device is None or (serves == "air conditioner" and allowed.needs is None):
        return Verdict(
            "undecided",
            f"Not decided: for this {serves} {_DECIDES[serves]} decides, not the wire table. Read it and ask again.",
            source,
        )
    thin = allowed.needs is not None and amperes < allowed.needs
    if device > allowed.device:
        words = f"The {device:f} A device is larger than {allowed.device} A, {allowed.rule}: over-fused."
        return Verdict("beyond", words, source)
    if thin:
        return Verdict(
            "beyond", f"The conductor is smaller than the {allowed.needs:f} A that the {serves} needs.", source
        )
    return Verdict("within", f"The {device:f} A device is not larger than {allowed.device} A, {allowed.rule}.", source)
