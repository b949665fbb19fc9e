"""How much current a conductor may carry: the lowest of its column, its terminals and its factors."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Step, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.electrical.calculating.ampacity_tables import (
    COLUMNS,
    Material,
    ambient_factor,
    bundling_factor,
    table_ampacity,
)
from witnessmark.gauges.electrical.calculating.cautions import WORK_ON_IT
from witnessmark.gauges.electrical.calculating.sizes import CIRCULAR_MILS, SIZES, printed_size, read_size
from witnessmark.gauges.electrical.editions import EDITIONS, nec
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity

__all__ = [
    "AMBIENT",
    "CONDUCTORS",
    "INSULATION",
    "SIZE",
    "TERMINALS",
    "Usable",
    "Wiring",
    "conductor_ampacity",
    "usable",
]

Wiring = Literal["NM cable", "UF cable", "SE cable", "wires in a raceway"]
SIZE = Asked(
    "size of the conductor, as printed on cable or insulation",
    how="read the print on the sheath; a wire judged by eye is a guess. 12 AWG is not 12 kcmil",
    example="12 AWG",
    choices=SIZES,
)
INSULATION = Asked(
    "temperature rating of the insulation in °C: TW and UF 60, THW and THWN 75, THHN, XHHW-2 and NM-B 90",
    how="from the letters printed on the insulation; leave out when they cannot be read",
    example="90",
    choices=COLUMNS,
)
TERMINALS = Asked(
    "temperature marking in °C of the terminals at both ends, the lower of the two",
    how="from the label of the panel and the device; leave out when not marked",
    example="75",
    choices=COLUMNS,
)
AMBIENT = Asked(
    "temperature of the air around the conductor when it is hottest",
    "Cel",
    lowest="-40",
    highest="70",
    least="-100",
    most="200",
    how="the design temperature of the place, such as an attic in summer; not the air on the day",
    example="30Cel",
)
CONDUCTORS = Asked(
    "number of current-carrying conductors together in the raceway or bundle",
    lowest="1",
    highest="60",
    least="1",
    how="a neutral that carries only the difference, and grounding conductors, do not count",
    example="3",
)
_UNMARKED_TO = "1"


@dataclass(frozen=True, slots=True)
class Usable:
    """What came out for one conductor: ampacity in A, the column that ends it, and how the factors went."""

    amperes: Decimal
    column: int
    in_column: int
    insulation: int
    before_factors: int
    ambient: Decimal
    bundling: Decimal
    assumed: tuple[str, ...]


def usable(
    size: str,
    material: str,
    wiring: str,
    edition: int,
    *,
    insulation: int | None = None,
    terminals: int | None = None,
    ambient: float = 30.0,
    conductors: int = 3,
    device: Decimal | None = None,
) -> Usable:
    """Ampacity of a conductor: the lower of (table x factors) in its insulation's column and its final column.

    The final column is the lowest of insulation, cable (NM and UF 60 °C) and terminals (unmarked: 60 °C up to 1 AWG
    or 100 A, 75 °C beyond). *ambient* in °C, *device* in A. Refuses what the table leaves out (WM057).
    Source: NEC 310.16, 310.15, 334.80, 340.80, 110.14(C).

    >>> usable("12", "copper", "NM cable", 2020).amperes
    Decimal('20')
    """
    assumed: list[str] = []
    if insulation is None:
        insulation = 90 if wiring == "NM cable" else 60
        told = "NM-B, 90 °C inside" if wiring == "NM cable" else "60 °C, the lowest there is"
        assumed.append(f"The insulation was not read: taken as {told}.")
    if terminals is None:
        names = list(CIRCULAR_MILS)
        small = names.index(size) <= names.index(_UNMARKED_TO) if device is None else device <= 100  # noqa: PLR2004 - A
        terminals = 60 if small else 75
        assumed.append(f"The terminals were not read: taken as {terminals} °C (110.14(C)).")
    limits = [insulation, terminals, *([60] if wiring in {"NM cable", "UF cable"} else [])]
    column = min(limits)
    start = min(insulation, 60) if wiring == "UF cable" else insulation
    base = table_ampacity(size, material, start, edition)
    warm, crowded = ambient_factor(ambient, start, edition), bundling_factor(conductors)
    ceiling = table_ampacity(size, material, column, edition)
    amperes = min(base * warm * crowded, Decimal(ceiling))
    return Usable(amperes, column, ceiling, start, base, warm, crowded, tuple(assumed))


@gauge(
    name="conductor-ampacity",
    family="electrical",
    title="Current that a conductor may carry",
    unit="A",
    gives="ampacity of the conductor after its column, terminals, ambient temperature and bundling",
    sources=(
        nec("2011 to 2023", "Table 310.16 (in 2011 to 2017 Table 310.15(B)(16)) and 310.15", "seen in a copy"),
        nec("1984 to 2008", "Table 310.16", "seen in a copy"),
        nec("1984 to 2023", "110.14(C), 334.80 (NM), 340.80 (UF)", "memory"),
    ),
    error="none in the table; size, insulation and terminals are only as sure as what was read",
    never="that a circuit is rightly wired, or which device may protect it (see conductor-protection)",
    cautions=(WORK_ON_IT,),
    example={"size": "12 AWG", "material": "copper", "wiring": "NM cable", "edition": "2020"},
)
def conductor_ampacity(
    size: Annotated[str, SIZE],
    material: Annotated[
        Material, Asked("metal of the conductor", how="by its colour at a terminal or by the print (AL)")
    ],
    wiring: Annotated[Wiring, Asked("kind of wiring", how="from the print on the sheath")],
    edition: Annotated[int, Asked("edition of the code", example="2020", choices=EDITIONS)],
    *,
    insulation: Annotated[int | None, INSULATION] = None,
    terminals: Annotated[int | None, TERMINALS] = None,
    ambient: Annotated[Quantity | None, AMBIENT] = None,
    conductors: Annotated[int, CONDUCTORS] = 3,
) -> Answer:
    """Ampacity of a conductor by the table of one edition.

    Rule:
        ampacity = min(table[insulation column] * ambient factor * bundling factor, table[final column]);
        final column = lowest of insulation, cable type (NM and UF 60 °C) and terminals.
        The 90 °C column only begins the derating; it is never the final answer at ordinary terminals.
        The tables up to 2008 and from 2011 differ and are never mixed.

    >>> conductor_ampacity("12 AWG", "copper", "NM cable", 2020).value
    Decimal('20')
    """
    name = read_size(size)
    warm = 30.0 if ambient is None else float(ambient.value)
    got = usable(
        name, material, wiring, edition, insulation=insulation, terminals=terminals, ambient=warm, conductors=conductors
    )
    old = ("Bundling factors of editions before 1993 counted groups of ten and more otherwise.",)
    return Answer(
        value=rounded(float(got.amperes)),
        words=f"{printed_size(name)} {material} as {wiring} may carry {float(got.amperes):.4g} A by the {edition} table "
        f"({got.column} °C column).",
        cautions=(*got.assumed, *(old if edition < 1993 and conductors > 9 else ())),  # noqa: PLR2004 - edition, count
        also=(
            Also("column", "column that ends it, °C", Decimal(got.column), "Cel"),
            Also("column_value", "table value in that column", Decimal(got.in_column), "A"),
            Also("derated", "table value of the insulation after the factors", _derated(got), "A"),
        ),
        steps=_steps(got),
    )


def _derated(got: Usable) -> Decimal:
    return rounded(float(got.before_factors * got.ambient * got.bundling))


def _steps(got: Usable) -> tuple[Step, ...]:
    return (
        Step(f"table, {got.insulation} °C column of the insulation", Decimal(got.before_factors), "A"),
        Step("factor for the ambient temperature", got.ambient, "1"),
        Step("factor for conductors together", got.bundling, "1"),
        Step("table value after the factors", _derated(got), "A"),
        Step(f"limit of the {got.column} °C column", Decimal(got.in_column), "A"),
        Step("ampacity, the lower of the two", rounded(float(got.amperes)), "A"),
    )
