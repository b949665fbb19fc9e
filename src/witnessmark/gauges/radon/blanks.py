"""Whether radon devices that were never opened show more than they can detect, and how many such blanks are due."""

from __future__ import annotations

import math
from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Step
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.radon.messages import NOTHING_DEPLOYED
from witnessmark.gauges.radon.sources import BLANKS
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = ["blanks_due", "radon_blanks"]


def blanks_due(deployed: int) -> int:
    """Blanks due in a month with *deployed* devices: 5 % of them, rounded up, or 25, whichever is less.

    >>> blanks_due(30), blanks_due(1000)
    (2, 25)
    """
    return min(math.ceil(deployed / 20), 25)


@gauge(
    name="radon-blanks",
    family="radon",
    title="What unexposed radon devices show, and how many are due",
    unit="1",
    gives="blanks that show more than the devices can detect",
    sources=(BLANKS,),
    error="one in twenty blanks lies above the limit of detection by chance alone",
    never="that exposed devices were handled well after they were opened",
    cautions=("Where blanks read high again and again, what they read is taken off the other results.",),
    example={"results": "0.1pCi/L,0.2pCi/L", "detects": "0.4pCi/L", "deployed": "30"},
)
def radon_blanks(
    results: Annotated[
        tuple[Quantity, ...],
        Asked(
            "what the blanks gave",
            "pCi/L",
            lowest="0",
            highest="100",
            least="0",
            most="1000000",
            how="from the laboratory's report; blanks are handled and labelled like the others",
        ),
    ],
    detects: Annotated[
        Quantity,
        Asked(
            "lower limit of detection of the devices",
            "pCi/L",
            lowest="0.05",
            highest="2",
            least="0",
            most="100",
            how="from the laboratory's report",
            example="0.4pCi/L",
        ),
    ],
    deployed: Annotated[
        int,
        Asked(
            "devices set out in the month, blanks among them",
            lowest="1",
            highest="10000",
            least="1",
            most="1000000",
            example="30",
        ),
    ],
) -> Answer:
    """Field blanks: how many read above the limit of detection, and whether enough were set aside.

    Rule:
        5 % of the devices set out in a month, or 25, whichever is less (passive devices); a blank above the limit of
        detection is looked into

    >>> from witnessmark.gauges import evaluate
    >>> given = {"results": "0.1pCi/L,0.9pCi/L", "detects": "0.4pCi/L", "deployed": "60"}
    >>> evaluate("radon-blanks", given).value, evaluate("radon-blanks", given)["enough"]
    (Decimal('1'), False)
    """  # fmt: skip
    if len(results) > deployed:
        raise Refusal(NOTHING_DEPLOYED.at("results", f"{len(results)} blanks of {deployed}"))
    above = sum(one.value > detects.value for one in results)
    due = blanks_due(deployed)
    enough = len(results) >= due
    return Answer(
        value=Decimal(above),
        words=f"{above} of {len(results)} blanks read above what the devices can detect"
              f"{'; look into shipping and storage' if above else ''}. {due} blanks are due for {deployed} devices"
              f"{'' if enough else f': {due - len(results)} too few were set aside'}.",
        also=(Also("due", "blanks due", Decimal(due), "1"), Also("enough", "as many blanks as are due", enough)),
        steps=(Step("blanks due: 5 % of the devices, at most 25", Decimal(due), "1"),),
    )  # fmt: skip
