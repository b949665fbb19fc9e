"""How large the conductors of a dwelling's service must be."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Outside, Source, Step, Verdict
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.electrical.calculating.ampacity import SIZE
from witnessmark.gauges.electrical.calculating.ampacity_tables import Material, next_standard, table_ampacity
from witnessmark.gauges.electrical.calculating.cautions import INFORMATIONAL, WORK_ON_IT
from witnessmark.gauges.electrical.calculating.messages import NOT_CARRIED
from witnessmark.gauges.electrical.calculating.sizes import CIRCULAR_MILS, printed_size, read_size
from witnessmark.gauges.electrical.editions import EDITIONS, nec
from witnessmark.gauges.gauge import gauge
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = ["EARLIER", "FULL", "least_size", "service_conductor"]

#: Table 310.15(B)(6) and its forerunners (note 3 to the ampacity tables) up to 2011, recalled.
EARLIER = {
    "copper": {100: "4", 110: "3", 125: "2", 150: "1", 175: "1/0", 200: "2/0", 225: "3/0", 250: "4/0", 300: "250",
               350: "350", 400: "400"},
    "aluminum": {100: "2", 110: "1", 125: "1/0", 150: "2/0", 175: "3/0", 200: "4/0", 225: "250", 250: "300", 300: "350",
                 350: "500", 400: "600"},
}  # fmt: skip
FULL, _PART = Decimal(1), Decimal("0.83")
_FIRST, _BY_PERCENT = 1975, 2014
_CURRENT = nec("2014 to 2023", "310.12 (2014 and 2017: 310.15(B)(7))", "seen in a copy")
_PAST = nec("1975 to 2011", "note 3 to the ampacity tables, later Table 310.15(B)(6) and (B)(7)", "memory")
_FULL_TOLD = (
    "Not eased to 83 %: only conductors that carry the entire load of one dwelling are.",
    "Read at 75 °C terminals; up to 100 A terminals that are not marked count as 60 °C and need a larger size.",
)
_LIMITS = (Decimal(100), Decimal(400))


def least_size(rating: Decimal, material: str, share: Decimal, edition: int = 2023) -> str | None:
    """The smallest size of which the 75 °C ampacity is *share* (0.83 or 1) of a *rating* in A; None beyond the table.

    Source: NEC Table 310.16 of the edition, 75 °C column, before correction factors; 310.12.

    >>> least_size(Decimal(200), "copper", _PART), least_size(Decimal(100), "aluminum", FULL)
    ('2/0', '1')
    """
    sizes = list(CIRCULAR_MILS)[0 if material == "copper" else 1 :]
    return next((s for s in sizes if table_ampacity(s, material, 75, edition) >= rating * share), None)


@gauge(
    name="service-conductor",
    family="electrical",
    title="Conductor size of a dwelling's service",
    gives="smallest conductor for the rating of the service, in words and as a size",
    sources=(_CURRENT, _PAST),
    error="none in the table; conductors in hot or crowded places need more",
    never="that a service is large enough for the house, or a size for a sub-panel that serves part of it",
    cautions=(INFORMATIONAL, WORK_ON_IT),
    example={"rating": "200A", "material": "aluminum", "edition": "2020", "whole_dwelling": "yes"},
)
def service_conductor(
    rating: Annotated[
        Quantity,
        Asked(
            "rating of the service or feeder",
            "A",
            lowest="100",
            highest="400",
            least="15",
            most="800",
            how="the number on the handle of the main breaker",
            example="200A",
        ),
    ],
    material: Annotated[Material, Asked("metal of the conductors", how="by the print on the insulation (AL)")],
    edition: Annotated[int, Asked("edition of the code in force there at that time", example="2020", choices=EDITIONS)],
    whole_dwelling: Annotated[
        bool,
        Asked(
            "whether these conductors carry the entire load of one dwelling",
            how="no for most sub-panels",
            example="yes",
        ),
    ],
    size: Annotated[str | None, SIZE] = None,
) -> Answer:
    """Smallest service or feeder conductor of a dwelling for its rating.

    Rule:
        carrying the whole dwelling load, 100 to 400 A: 75 °C ampacity >= 83 % of the rating (2014 on), before factors;
        1975 to 2011 by a table that gives the same sizes. Any other feeder: the full rating, or next standard size up.
    Known trap: 83 % used for a sub-panel; a 100 A feeder in aluminum then needs 1 AWG, not 2.

    >>> from witnessmark.units import parse_quantity as q
    >>> service_conductor(q("200A"), "aluminum", 2020, True)["size"]
    '4/0 AWG'
    """
    inside = _LIMITS[0] <= rating.value <= _LIMITS[1]
    eased = whole_dwelling and inside
    metal = "copper" if material == "copper" else "aluminum"
    needs: Decimal | None = None
    if eased and edition < _BY_PERCENT:
        if edition < _FIRST:
            raise Refusal(NOT_CARRIED.at(f"edition={edition}", f"this allowance began in {_FIRST}"))
        standard = next(one for one in EARLIER[metal] if one >= rating.value)
        least: str | None = EARLIER[metal][standard]
        rule, source = "the table of that time", _PAST
    else:
        share = _PART if eased else FULL
        needs = rating.value * share
        least_found = least_size(rating.value, metal, share, edition)
        if not eased:
            least_found = _next_up(rating.value, metal, edition) or least_found
        least, source = least_found, _CURRENT
        rule = "83 % of the rating" if eased else "the full rating or the standard size just below it"
    told = "larger than 600 kcmil, or conductors in parallel" if least is None else f"{printed_size(least)} {material}"
    far = Outside("rating", rating, *_LIMITS, "beyond the range of the allowance for dwellings: full rating used")
    return Answer(
        words=f"For {rating.value:f} A by NEC {edition}: {told} at least, by {rule}.",
        outside_range=(far,) if whole_dwelling and not inside else (),
        verdict=None if size is None else _verdict(read_size(size), least, source),
        sources=(source,),
        cautions=() if eased else _FULL_TOLD,
        also=(
            Also("size", "smallest size", "none listed" if least is None else printed_size(least)),
            Also("eased", "whether the allowance for dwellings counts", eased),
            *(() if needs is None else (Also("ampacity_needed", "75 °C ampacity needed", needs.normalize() + 0, "A"),)),
        ),
        steps=(
            Step("rating", rating.value, "A"),
            *(() if needs is None else (Step("ampacity needed in the 75 °C column", needs.normalize() + 0, "A"),)),
        ),
    )


def _next_up(rating: Decimal, metal: str, edition: int) -> str | None:
    """The smallest size whose next standard rating reaches *rating* (240.4(B))."""
    for size in list(CIRCULAR_MILS)[0 if metal == "copper" else 1 :]:
        up = next_standard(Decimal(table_ampacity(size, metal, 75, edition)))
        if up is not None and up >= rating:
            return size
    return None


def _verdict(found: str, least: str | None, source: Source) -> Verdict:
    order = list(CIRCULAR_MILS)
    small = least is None or order.index(found) < order.index(least)
    words = f"{printed_size(found)} is {'smaller than' if small else 'not smaller than'} what that edition lists."
    return Verdict("beyond" if small else "within", words, source)
