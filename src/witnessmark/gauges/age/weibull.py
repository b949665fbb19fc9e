"""The Weibull law of lives: survival, the chance of failing in the next years, mean and scale, two ages fitted."""

from __future__ import annotations

import math
from dataclasses import dataclass

from witnessmark.gauges.age.messages import CANNOT_FIT, WEARS_IN_NO_TIME
from witnessmark.problems import Refusal

__all__ = ["Law", "fitted", "scale_for_mean"]


#: Logarithm of the greatest hazard that is told apart, and that hazard.
_TOO_FAR = 700.0
_TOO_GREAT = math.exp(_TOO_FAR)
_LEAST_SHAPE = 0.05
_MOST_SHAPE = 200.0


@dataclass(frozen=True, slots=True)
class Law:
    """A Weibull law: *shape* K without unit, *scale* and *delay* in years (before the delay nothing fails)."""

    shape: float
    scale: float
    delay: float = 0.0

    def hazard(self, age: float) -> float:
        """Cumulative hazard at an *age* in years: ((age - delay) / scale)^K, 0 before the delay.

        >>> Law(2, 10).hazard(20)
        4.0
        """
        passed = max(age - self.delay, 0.0) / self.scale
        if passed == 0:
            return 0.0
        power = self.shape * math.log(passed)
        return math.exp(min(power, _TOO_FAR))

    def survival(self, age: float) -> float:
        """Share still alive at an *age* in years: S(y) = exp(-((y - delay) / scale)^K).

        >>> round(Law(2, 16.88).survival(10), 3)
        0.704
        """
        return math.exp(-self.hazard(age))

    def next_years(self, age: float, ahead: float) -> float:
        """Chance that one alive at *age* fails within *ahead* years: 1 - S(age + ahead) / S(age).

        Of hazards, not of survivals, so that it holds where both survivals have run out of digits.

        >>> round(Law(1, 10).next_years(3, 5), 4) == round(Law(1, 10).next_years(30, 5), 4)
        True
        """
        reached = self.hazard(age + ahead)
        if reached >= _TOO_GREAT:
            return 1.0 if ahead > 0 else 0.0
        return -math.expm1(self.hazard(age) - reached)

    def mean(self) -> float:
        """Mean life in years of a new part: delay + scale * Gamma(1 + 1/K).

        >>> round(Law(2, 16.88).mean(), 2)
        14.96
        """
        return self.delay + self.scale * math.gamma(1 + 1 / self.shape)

    def median(self) -> float:
        """Age in years by which half have failed: delay + scale * (ln 2)^(1/K).

        >>> round(Law(2, 16.88).median(), 2)
        14.05
        """
        return self.quantile(0.5)

    def quantile(self, share: float) -> float:
        """Age in years by which a *share* (0 to below 1) has failed.

        >>> round(Law(1, 10).quantile(0.5), 2)
        6.93
        """
        return self.delay + self.scale * math.pow(-math.log1p(-share), 1 / self.shape)

    def life_from(self, age: float, chance: float) -> float:
        """Years still to come for one alive at *age*, for a *chance* in (0, 1] drawn evenly.

        >>> round(Law(1, 10).life_from(25, math.exp(-0.5)), 6)
        5.0
        """
        reached = self.hazard(age) - math.log(chance)
        return max(self.delay + self.scale * math.pow(reached, 1 / self.shape) - age, 0.0)


def scale_for_mean(mean: float, shape: float, delay: float = 0.0) -> float:
    """The scale in years of a law whose *mean* life is given; the mean itself is not the scale.

    Refuses a mean that is not after the delay (WM064).

    >>> round(scale_for_mean(14.96, 2), 2)
    16.88
    """
    if mean <= delay:
        raise Refusal(CANNOT_FIT.at("mean_life", f"mean {mean:g} is not after the delay of {delay:g} years"))
    return (mean - delay) / math.gamma(1 + 1 / shape)


def fitted(low: float, high: float, low_share: float = 0.2, high_share: float = 0.8) -> Law:
    """The law by which *low_share* have failed at age *low* and *high_share* at age *high* (years, shares in 0 to 1).

    K = ln(ln(1 - high_share) / ln(1 - low_share)) / ln(high / low), scale = low / (-ln(1 - low_share))^(1/K).
    Refuses ages or shares in the wrong order (WM064) and laws that pass what can be computed (WM065).

    >>> law = fitted(20, 30)
    >>> round(law.shape, 3), round(law.scale, 2), round(law.mean(), 1)
    (4.873, 27.21, 24.9)
    """
    if not 0 < low < high or not 0 < low_share < high_share < 1:
        told = f"{low:g} to {high:g} years, {low_share * 100:g} to {high_share * 100:g} %"
        raise Refusal(CANNOT_FIT.at("life range", told))
    shape = math.log(math.log1p(-high_share) / math.log1p(-low_share)) / math.log(high / low)
    if not _LEAST_SHAPE <= shape <= _MOST_SHAPE:
        raise Refusal(WEARS_IN_NO_TIME.at("life range", f"{low:g} to {high:g} years give a shape of {shape:.3g}"))
    return Law(shape, low / (-math.log1p(-low_share)) ** (1 / shape))
