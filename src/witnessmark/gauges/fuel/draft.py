"""How much draft a natural-draft vent should show at an outdoor temperature."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Limit, Step, Uncertainty, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.fuel.cautions import LICENSED, MONOXIDE, RELIGHT
from witnessmark.gauges.fuel.sources import FIELD_BANDS, TRADE_SCALE
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity, convert

__all__ = ["draft_floor", "vent_draft"]

_COLD, _WARM = Decimal(10), Decimal(90)
_TYPICAL = (Decimal(-5), Decimal("-2.5"))


def draft_floor(outdoors: Decimal) -> Decimal:
    """Weakest acceptable draft in Pa (negative) at *outdoors* °F, by ANSI/BPI-1200 (recalled).

    >>> draft_floor(Decimal(50))
    Decimal('-1.50')
    """
    return min(max(outdoors, _COLD), _WARM) / 40 - Decimal("2.75")


@gauge(
    name="vent-draft",
    family="fuel",
    title="Draft that a natural-draft vent should show",
    unit="Pa",
    gives="weakest acceptable draft, as a negative pressure in the vent against the room",
    sources=(FIELD_BANDS, TRADE_SCALE),
    error="a manometer is within about 0.2 Pa on a still day; gusts move draft by more than the whole limit",
    never="that an appliance does not spill: spillage is looked for at the draft hood itself",
    cautions=(
        MONOXIDE, RELIGHT, LICENSED,
        "After five minutes of burning, with the house as it draws worst: doors shut, exhaust fans and dryer on.",
        "Any spilling that lasts: shut it off by its normal control, leave the room, tell the occupants.",
    ),
    example={"outdoors": "50F", "draft": "-2Pa"},
)  # fmt: skip
def vent_draft(
    outdoors: Annotated[
        Quantity,
        Asked(
            "temperature outdoors", "[degF]", lowest="-40", highest="120", least="-100", most="150",
            how="in the shade", example="50F",
        ),
    ],
    draft: Annotated[
        Quantity | None,
        Asked(
            "pressure in the vent against the room", "Pa", lowest="-30", highest="30", least="-500", most="500",
            how="one to two feet past the draft hood; draft is negative, a positive figure is back-draft",
            example="-2Pa",
        ),
    ] = None,
) -> Answer:  # fmt: skip
    """Weakest acceptable draft of a natural-draft appliance by the temperature outdoors.

    Formula:
        below 10 °F: -2.5 Pa;  10 to 90 °F: T/40 - 2.75 Pa;  above 90 °F: -0.5 Pa   (T in °F)

    A vent of a running atmospheric appliance commonly shows -2.5 to -5 Pa (0.01 to 0.02 in w.c.).

    >>> from witnessmark.units import parse_quantity as q
    >>> vent_draft(q("20F")).value
    Decimal('-2.25')
    """  # fmt: skip
    floor = draft_floor(outdoors.value)
    floor = rounded(float(floor))
    water = rounded(float(convert(Quantity(floor, "Pa"), "[in_i'H2O]").value))
    words = f"At {outdoors.value:.0f} °F outdoors the draft should be at least {-floor:.2f} Pa ({-water:.4f} in w.c.)."
    also = [Also("water_column", "the same in inches of water", water, "[in_i'H2O]")]
    steps = (Step("limit by the temperature outdoors", floor, "Pa"),)
    sure = Uncertainty("a manometer is within about 0.2 Pa; wind moves draft by more", Decimal("0.2"))
    if draft is None:
        return Answer(value=floor, unit="Pa", words=words, also=tuple(also), steps=steps, uncertainty=sure)
    held = Answer(value=draft.value, unit="Pa", uncertainty=sure).against(
        Limit(FIELD_BANDS, highest=Quantity(floor, "Pa"), words="Draft against the weakest acceptable")
    )
    kind = (
        "usual" if _TYPICAL[0] <= draft.value <= _TYPICAL[1] else "weaker" if draft.value > _TYPICAL[1] else "stronger"
    )
    if draft.value >= 0:
        words += f" The vent shows {draft.value} Pa: no draft at all; flue gas comes into the room."
    else:
        told = "" if kind == "usual" else f", this is {kind}"
        words += f" The vent shows {-draft.value} Pa of draft; 2.5 to 5 Pa is usual{told}."
    also += [
        Also("margin", "draft beyond the weakest acceptable (negative: too weak)", floor - draft.value, "Pa"),
        Also("typical", "against 2.5 to 5 Pa", kind),
    ]
    return Answer(value=floor, unit="Pa", words=words, also=tuple(also), steps=steps, uncertainty=sure,
                  verdict=held.verdict)  # fmt: skip
