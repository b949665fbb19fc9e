"""What a level of carbon monoxide in a room means, source by source."""

from __future__ import annotations

from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Table, Uncertainty, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.fuel.cautions import LEAVE, LICENSED, MONOXIDE, RELIGHT, SILENT
from witnessmark.gauges.fuel.monoxide_scales import SCALES, milligrams_per_cubic_metre
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity, say

__all__ = ["carbon_monoxide_level"]

#: From here the strictest source that we know bids people out; just below, it bids shut off and ventilate.
_OUT, _SHUT, _NOTE = 70, 35, 9


@gauge(
    name="carbon-monoxide-level",
    family="fuel",
    title="What carbon monoxide in a room means, by source",
    gives="the band of each source, side by side and never merged",
    sources=tuple(scale.source for scale in SCALES),
    error="an electrochemical sensor is within about 5 ppm or 5 %, if it was zeroed in fresh air; other gases upset it",
    never="that people may stay, or that a house is free of carbon monoxide: one reading is one moment in one place",
    cautions=(MONOXIDE, RELIGHT, SILENT, LICENSED),
    example={"level": "82ppm"},
)
def carbon_monoxide_level(
    level: Annotated[
        Quantity,
        Asked(
            "carbon monoxide in the air of the room",
            "[ppm]",
            lowest="0",
            highest="2000",
            least="0",
            most="1000000",
            how="with an instrument zeroed outdoors; at breathing height, away from the flue and a stove just lit",
            example="12ppm",
        ),
    ],
) -> Answer:
    """Bands of carbon monoxide in the air of a room, each source for itself.

    Rule:
        outdoor air standard: 9 ppm over 8 h, 35 ppm over 1 h
        alarm standard: 70 ppm 60-240 min, 150 ppm 10-50 min, 400 ppm 4-15 min
        work: 35 ppm (recommended) and 50 ppm (law) over 8 h
        field bands: from 9 inform, from 36 shut off and ventilate, from 70 get out
        scale of the heating trade: from 10 advise, from 36 ventilate, from 100 get out

    The last two differ between 70 and 99 ppm; both are shown, and the caution follows the stricter.

    >>> from witnessmark.units import parse_quantity as q
    >>> answer = carbon_monoxide_level(q("82ppm"))
    >>> answer["field"], answer["trade"]
    ('evacuate', 'ventilate')
    """
    ppm = level.value
    read = [(scale, *scale.band(ppm)) for scale in SCALES]
    words = (
        (f"{LEAVE} " if ppm >= _OUT else "")
        + f"{say(level)}. "
        + " ".join(
            f"{scale.who[0].upper()}{scale.who[1:]}: {told}."
            for scale, _, told in read
            if scale.name in {"field", "trade"}
        )
    )
    field, trade = (next(word for scale, word, _ in read if scale.name == name) for name in ("field", "trade"))
    if field != trade and "evacuate" in {field, trade}:
        words += " These two differ here; the stricter one bids everybody out."
    now: tuple[str, ...] = ()
    if ppm >= _OUT:
        now = (LEAVE,)
    elif ppm > _SHUT:
        now = (("Stop testing, shut off what makes it by its normal control, open doors and windows, tell the occupants "
               "now; anyone with headache or nausea leaves and calls 911."),)  # fmt: skip
    elif ppm >= _NOTE:
        now = ("Tell the occupants now, look for the source, and measure outdoors too.",)
    return Answer(
        words=words,
        uncertainty=Uncertainty("about 5 ppm or 5 %, whichever is more, for a zeroed electrochemical instrument"),
        cautions=now,
        also=(
            *(Also(scale.name, scale.who, word) for scale, word, _ in read),
            Also("mass", "mass at 25 °C", rounded(milligrams_per_cubic_metre(float(ppm))), "mg/m3"),
        ),
        table=Table(
            (("who", ""), ("what it says", ""), ("published in", "")),
            tuple((scale.who, told, str(scale.source)) for scale, _, told in read),
        ),
    )
