"""What the static water pressure says under each law."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Source, Table, Verdict
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.water.cautions import FRAGILE, LOCAL, RELIEF
from witnessmark.gauges.water.editions import EDITIONS, against_built, checked
from witnessmark.gauges.water.messages import AT_ODDS, PRESSURES_AT_ODDS
from witnessmark.gauges.water.pressure_laws import HIGH, TEXAS_EDITIONS, Asked80, Facts, irc, texas, upc
from witnessmark.gauges.water.sources import TEXAS_2022, code
from witnessmark.problems import Refusal
from witnessmark.units import Quantity, say

__all__ = ["static_pressure"]

Law = Literal["all", "22 TAC 535.231", "Uniform Plumbing Code", "International Residential Code"]
_OUTCOMES = {"within": "within what it asks", "beyond": "to report", "undecided": "undecided", "report": "to report"}


def _rows(pressure: Decimal, facts: Facts, law: Law, edition: int | None) -> tuple[tuple[Asked80, ...], int]:
    if law == "22 TAC 535.231":
        year = checked(law, edition, TEXAS_EDITIONS)
        return texas(pressure, facts, year), year
    if law == "all":
        if edition is not None:
            raise Refusal(AT_ODDS.at(f"edition={edition}", "an edition belongs to one law: give law= too"))
        newest = EDITIONS[-1]
        rows = (texas(pressure, facts, TEXAS_EDITIONS[-1]), upc(pressure, facts, newest), irc(pressure, facts, newest))
        return tuple(row for group in rows for row in group), newest
    year = checked(law, edition)
    rule = upc if law == "Uniform Plumbing Code" else irc
    return rule(pressure, facts, year), year


def _verdict(rows: tuple[Asked80, ...], pressure: Decimal, reading_error: Decimal) -> Verdict:
    beyond = [row for row in rows if row.outcome == "beyond"]
    waiting = [row for row in rows if row.outcome == "undecided"]
    hung = {row.key for row in beyond} <= {"pressure", "regulator"} and abs(pressure - HIGH) < reading_error
    if hung and (beyond or not waiting):
        words = f"nearer to 80 psi than the gauge is sure ({_psi(reading_error)}): read again with another gauge"
        return Verdict("close", words, rows[0].source)
    if beyond:
        return Verdict(
            "beyond", "; ".join(f"{row.asks} ({row.section}): {row.words}" for row in beyond), beyond[0].source
        )
    if waiting:
        told = "; ".join(f"{row.asks} ({row.section}): {row.words}" for row in waiting)
        return Verdict("undecided", told, waiting[0].source)
    return Verdict("within", "within what it asks of what was given", rows[0].source)


def _psi(pressure: Decimal) -> str:
    return say(Quantity(pressure, "[psi]"))


def _words(pressure: Decimal, rows: tuple[Asked80, ...], law: Law) -> str:
    if pressure > HIGH:
        start = f"{_psi(pressure)} at rest lies above 80 psi, the most that the laws held here allow."
    else:
        start = f"{_psi(pressure)} at rest does not lie above 80 psi."
    low = [row for row in rows if row.key in {"low", "residual"} and row.outcome == "beyond"]
    beyond = [row for row in rows if row.outcome == "beyond" and row.key not in {"pressure", "low", "residual"}]
    parts = [start, *(f"It lies below what {row.law} asks: {row.asks}." for row in low)]
    if beyond:
        parts.append("To report: " + "; ".join(dict.fromkeys(row.words for row in beyond)) + ".")
    if any(row.key == "regulator" for row in beyond):
        parts.append("A regulator, once fitted, closes the system and calls for an expansion tank.")
    waiting = [row for row in rows if row.outcome == "undecided" and row.key in {"regulator", "expansion"}]
    if waiting:
        parts.append("Not decided: " + "; ".join(dict.fromkeys(row.words for row in waiting)) + ".")
    if law in {"all", "22 TAC 535.231"}:
        parts.append("Texas asks the inspector to report the figure itself.")
    return " ".join(parts)


@gauge(
    name="static-pressure",
    family="water",
    title="Static water pressure held against what each law asks",
    unit="[psi]",
    gives="the pressure as read, with a row for each question of each law",
    sources=(
        TEXAS_2022,
        code("UPC", "2000 to 2024", "608.1 to 608.3", "seen in a copy"),
        code("IRC", "2000 to 2024", "P2903.3, P2903.4", "memory"),
    ),
    error="pressure gauges sold for hose threads are sure to a few psi; the main's pressure itself swings through the day",
    never="what the pressure is at another hour, or that there will be enough flow",
    cautions=(
        ("Read with no water running anywhere, and again later: pressure rises at night, and after the heater has fired in a "
        "closed system."),
        RELIEF, FRAGILE, LOCAL,
    ),
    example={"pressure": "92psi", "law": "22 TAC 535.231", "regulator": "no", "check_or_backflow": "no"},
)  # fmt: skip
def static_pressure(
    pressure: Annotated[
        Quantity,
        Asked(
            "static pressure: all water off",
            "[psi]",
            lowest="0",
            highest="200",
            least="0",
            most="1000",
            how="with a gauge on an outside hose thread or the laundry tap, all water off; a valve that does not stay shut, "
            "or a running ice maker or sprinkler, spoils it",
            example="92psi",
        ),
    ],
    *,
    law: Annotated[Law, Asked("the law to hold it against; all shows every one")] = "all",
    edition: Annotated[
        int | None, Asked("edition of that law, a year", choices=tuple(sorted({*EDITIONS, *TEXAS_EDITIONS})))
    ] = None,
    regulator: Annotated[bool | None, Asked("whether a pressure regulator is seen on the service")] = None,
    check_or_backflow: Annotated[
        bool | None, Asked("whether a check valve or backflow preventer is seen on the service, or in the meter box")
    ] = None,
    expansion_tank: Annotated[bool | None, Asked("whether an expansion tank is seen on the cold water")] = None,
    storage_heater: Annotated[bool | None, Asked("whether the water heater stores hot water")] = None,
    relief_valve_100: Annotated[
        bool | None, Asked("whether a relief valve of 100 psi or less, apart from the heater's, stands in for the tank")
    ] = None,
    reading_error: Annotated[
        Quantity | None,
        Asked("how far the gauge may be off", "[psi]", lowest="0", highest="20", least="0", example="2psi"),
    ] = None,
    built: Annotated[int | None, Asked("year the service was built or altered", lowest="1800", highest="2100")] = None,
    residual: Annotated[
        Quantity | None,
        Asked(
            "pressure left with fixtures running, where it was read",
            "[psi]",
            lowest="0",
            highest="200",
            least="0",
            how="the same gauge, two fixtures running",
            example="48psi",
        ),
    ] = None,
) -> Answer:
    """What the static pressure of the water says under Texas law, the Uniform Plumbing Code and the IRC.

    Rule:
        above 80 psi: beyond, under all three; a regulator is called for.
        a regulator, check valve or backflow preventer closes the system: an expansion tank (UPC: or an engineered
        relief valve of 100 psi or less; IRC: for a check valve only with a storage heater).
        below 40 psi: IRC to 2012, and Texas in its text of 2009, not that of 2022; UPC asks 15 psi with water running.
        What was not given stays undecided.

    The low limit is the trap: it hangs on the law and its edition. 80.0 psi exactly is not above 80.

    >>> from witnessmark.gauges import evaluate
    >>> evaluate("static-pressure", {"pressure": "92psi", "law": "22 TAC 535.231"}).verdict.outcome
    'beyond'
    """
    running = None if residual is None else residual.value
    if running is not None and running > pressure.value:
        raise Refusal(PRESSURES_AT_ODDS.at("residual", "more pressure with water running than at rest"))
    facts = Facts(regulator, check_or_backflow, expansion_tank, storage_heater, relief_valve_100, running)
    rows, year = _rows(pressure.value, facts, law, edition)
    off = Decimal(0) if reading_error is None else reading_error.value
    prefix = {"22": "texas", "Un": "upc", "In": "irc"}
    era, told = against_built(built, year) if law not in {"all", "22 TAC 535.231"} else ((), ())
    closed = facts.closed
    sources: tuple[Source, ...] = tuple(dict.fromkeys(row.source for row in rows))
    return Answer(
        value=pressure.value,
        words=_words(pressure.value, rows, law),
        verdict=None if law == "all" else _verdict(rows, pressure.value, off),
        sources=sources,
        cautions=told,
        also=(
            Also("above_80", "above 80 psi", pressure.value > HIGH),
            Also("closed_system", "the system is closed", "not known" if closed is None else closed),
            *(Also(f"{prefix[row.law[:2]]}_{row.key}", f"{row.law}: {row.asks}", row.outcome) for row in rows),
            *era,
        ),
        table=Table(
            (("law", ""), ("section", ""), ("asks", ""), ("found", ""), ("outcome", "")),
            tuple((row.law, row.section, row.asks, row.words, _OUTCOMES[row.outcome]) for row in rows),
        ),
    )
