"""Where the limits on tilt, bending and cracks are published, and what every level survey must be read with."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from witnessmark.gauges.answer import Limit, Source, rounded
from witnessmark.units import Quantity

__all__ = [
    "BENDING", "BJERRUM", "BOSCARDIN", "BRE_251", "BRE_475", "BURLAND_1977", "BURLAND_WROTH", "CRITICAL_STRAIN",
    "DISTORTION", "GEOMETRY", "SKEMPTON", "SURVEY_CAUTIONS", "TEXAS", "TEXAS_TILT", "TILT", "Criterion",
]  # fmt: skip

_TEXAS = "Guidelines for the Evaluation and Repair of Residential Foundations, Texas Section ASCE"
TEXAS = Source(_TEXAS, "version 2, 2009", "section on level distortion", "seen in a copy")
TEXAS_TILT = Source(_TEXAS, "version 2, 2009", "section on level distortion, tilt", "memory")
SKEMPTON = Source(
    "Skempton and MacDonald, The allowable settlements of buildings", "1956", "angular distortion", "seen in a copy"
)
BJERRUM = Source(
    "Bjerrum, Discussion, European conference on soil mechanics, Wiesbaden", "1963", "figure of limits",
    "seen in a copy",
)  # fmt: skip
BJERRUM_MORE = Source(BJERRUM.document, "1963", "1/250 and 1/750", "memory")
BURLAND_WROTH = Source(
    "Burland and Wroth, Settlement of buildings and associated damage", "1974", "unreinforced bearing walls",
    "seen in a copy",
)  # fmt: skip
BURLAND_1977 = Source(
    "Burland, Broms and de Mello, Behaviour of foundations and structures", "1977", "damage table", "seen in a copy"
)
CRITICAL_STRAIN = Source(
    "Boone, Assessing construction and settlement-induced building damage", "2001",
    "critical strain of Burland and Wroth", "seen in a copy",
)  # fmt: skip
BOSCARDIN = Source(
    "Boscardin and Cording, Building response to excavation-induced settlement", "1989", "limiting tensile strain",
    "seen in a copy",
)  # fmt: skip
BRE_251 = Source("BRE Digest 251", "revised 1995", "table of damage categories", "seen in a copy")
BRE_475 = Source("BRE Digest 475", "2003", "values for low-rise housing", "memory")
#: Plane, chord and slope are plane geometry; no document is needed for them.
GEOMETRY = Source("plane geometry and least squares", "", "worked out", "calculated")


@dataclass(frozen=True, slots=True)
class Criterion:
    """A limit on a ratio of heights to lengths: the ratio, who says so, and what it means there."""

    ratio: Fraction
    source: Source
    words: str

    def limit(self, unit: str) -> Limit:
        """The criterion as a limit on a value in *unit*, ``1`` or ``%``; rounded as values are, so that equal is equal.

        >>> BENDING["Texas Section 2009"].limit("1").highest.value
        Decimal('0.00277777777778')
        """
        ratio = self.ratio * 100 if unit == "%" else self.ratio
        return Limit(self.source, highest=Quantity(rounded(float(ratio)), unit), words=self.words)


#: Limits on the deflection of a profile over the length of its chord.
BENDING = {
    "Texas Section 2009": Criterion(
        Fraction(1, 360), TEXAS,
        "L/360: below it the source holds it improbable that the foundation is deflected materially unless visible "
        "signs say otherwise; above it with few signs it asks for more data, and names no repair by itself",
    ),
}  # fmt: skip
#: Limits on the tilt of the whole plan. Never for deflection.
TILT = {
    "Texas Section 2009": Criterion(Fraction(1, 100), TEXAS_TILT, "1 % tilt of the whole plan"),
    "BRE 475 design": Criterion(Fraction(1, 400), BRE_475, "1/400, the tilt that design allows for"),
    "BRE 475 noticeable": Criterion(Fraction(1, 250), BRE_475, "1/250, where tilt is noticed and is to be watched"),
    "BRE 475 act": Criterion(Fraction(1, 100), BRE_475, "1/100, where remedial work is to be considered"),
    "BRE 475 danger": Criterion(Fraction(1, 50), BRE_475, "1/50, regarded as dangerous"),
}
#: Limits on angular distortion: difference of height over length, less the rigid tilt.
DISTORTION = {
    "Skempton and MacDonald cracks": Criterion(Fraction(1, 300), SKEMPTON, "1/300, first cracks in walls"),
    "Skempton and MacDonald structure": Criterion(Fraction(1, 150), SKEMPTON, "1/150, structural damage"),
    "Bjerrum no cracks": Criterion(Fraction(1, 500), BJERRUM, "1/500, where cracking is not allowed"),
    "Bjerrum visible tilt": Criterion(Fraction(1, 250), BJERRUM_MORE, "1/250, tilt of a rigid building seen"),
    "Bjerrum machinery": Criterion(Fraction(1, 750), BJERRUM_MORE, "1/750, machinery sensitive to settlement"),
}

SURVEY_CAUTIONS = (
    (
        "One survey shows the shape of the floor on that day. It does not show that the floor moved, or when, or why: "
        "only a second survey of the same places shows a movement."
    ),
    (
        "Floors are built out of level: a slab is often placed to about 3/4 in in 10 ft either way (recalled, check the "
        "specification), and what lies within that may be as built."
    ),
    (
        "Devices that measure levels are specialised equipment which standards of practice need not require (Texas: "
        "22 TAC 535.227); what a foundation's shape means for the structure is for a licensed engineer."
    ),
)
