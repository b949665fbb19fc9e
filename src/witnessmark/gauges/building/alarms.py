"""Which smoke alarms were asked for when a house was built, and which are recommended today."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Source, Table
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.building.editions import BUILT, irc
from witnessmark.gauges.gauge import gauge

__all__ = ["FEATURES", "Feature", "smoke_alarms"]

#: From this year the IRC brings alterations that need a permit up to what new dwellings have.
_ALTERATIONS = 2000


@dataclass(frozen=True, slots=True)
class Feature:
    """One thing asked of smoke alarms: since when by the first model document, by when all of them had it, and which."""

    name: str
    what: str
    first: int
    settled: int
    by: str


FEATURES = (
    Feature("outside_bedrooms", "an alarm outside the bedrooms", 1973, 1976, "UBC 1973; NFPA 101-1976"),
    Feature("hard_wired", "power from the house wiring", 1979, 1979, "UBC 1979"),
    Feature("every_level", "an alarm on every level, the basement too", 1988, 1989, "NFPA 74-1989 (UBC 1988)"),
    Feature("interconnected", "alarms that sound together", 1988, 1989, "NFPA 74-1989 (UBC 1988)"),
    Feature("battery_backup", "a battery besides the house wiring", 1991, 1996, "UBC 1991; NFPA 72-1996"),
    Feature("in_bedrooms", "an alarm in every bedroom", 1993, 1993, "NFPA 72-1993; IRC 2000"),
    Feature("temporal_three", "the three-pulse evacuation signal", 1996, 1996, "NFPA 72-1996"),
    Feature("ten_years", "replacement ten years from the date marked", 1999, 1999, "NFPA 72-1999, UL 217"),
)  # fmt: skip


@gauge(
    name="smoke-alarms",
    family="building",
    title="Smoke alarms asked for by the year built",
    gives="which alarms the model documents of that year asked for, and which are recommended today",
    sources=(
        Source("NFPA 72, NFPA 74, NFPA 101", "1976 to 1999", "history of household alarms", "seen in a copy"),
        Source("Uniform Building Code", "1973 to 1991", "section 1210", "memory"),
        irc("R314 (R317 in 2000)", "seen in a copy"),
    ),
    error="adoption lags a model document by up to ten years; states and cities went before it and after it",
    never="that the alarms sound, or that they would wake anyone",
    cautions=(
        "State and local law decides, often for existing houses and at sale: look it up.",
        "Alarms in every bedroom, outside them and on every level are recommended in any house today.",
    ),
    example={"built": "1990"},
)
def smoke_alarms(
    built: Annotated[int, BUILT],
    altered: Annotated[
        int | None,
        Asked(
            "year of the last alteration or added bedroom that needed a permit",
            lowest="1900",
            highest="2100",
            least="1600",
            most="2100",
            how="from the permit record",
            example="2012",
        ),
    ] = None,
) -> Answer:
    """Which smoke alarms model codes and standards asked of a new dwelling in the year built (or altered).

    Rule:
        1973-76 outside the bedrooms; 1979 wired; 1988-89 every level, interconnected; 1991 (UBC) or 1996 (NFPA 72) with
        battery; 1993 in every bedroom; 1996 three-pulse signal; 1999 replace at ten years; IRC 2000 and later all of it.
        From IRC 2000 on, alterations with a permit bring the alarms up to date.

    >>> smoke_alarms(1990)["in_bedrooms_required"], smoke_alarms(1995)["in_bedrooms_required"]
    (False, True)
    """
    year = altered if altered is not None and altered >= max(_ALTERATIONS, built) else built
    asked = [one for one in FEATURES if year >= one.first]
    later = [one for one in FEATURES if year < one.first]
    rows = tuple((one.what, _state(one, year), one.by) for one in FEATURES)
    begin = f"{'Altered' if year != built else 'Built'} {year}"
    have = (
        f"where adopted, required: {', '.join(one.what for one in asked)}"
        if asked
        else "no smoke alarm was required yet"
    )
    lack = f" Not yet required then, recommended today: {', '.join(one.what for one in later)}." if later else ""
    cautions: tuple[str, ...] = ()
    if altered is not None and altered < _ALTERATIONS:
        cautions = ("Some codes before 2000 asked alarms at alterations too: judged here by the year built.",)
    if altered is not None and altered < built:
        cautions = (*cautions, f"The alteration ({altered}) lies before the year built ({built}): look at both again.")
    return Answer(
        words=f"{begin}: {have}.{lack}",
        cautions=cautions,
        also=(
            *(Also(f"{one.name}_required", f"{one.what}: {_state(one, year)}", year >= one.first) for one in FEATURES),
            Also("judged_by", "year judged by", str(year)),
            Also("required_when", "in every bedroom required when", "NFPA 72-1993 and later; IRC 2000 and later"),
            Also("required_today", "all of these asked of a new dwelling today", value=True),
        ),
        table=Table((("what", ""), ("then", ""), ("by", "")), rows),
    )


def _state(one: Feature, year: int) -> str:
    if year < one.first:
        return "not yet required; recommended today"
    if year < one.settled:
        return "required by some documents, where adopted"
    return "required where adopted"
