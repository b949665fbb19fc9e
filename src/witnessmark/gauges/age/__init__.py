"""Age of parts: how old something is, what sources say of its life, and the chance of failing in the years ahead."""

from witnessmark.gauges.age.calendar_age import months_between, years_between
from witnessmark.gauges.age.failure_chance import failure_chance, failure_chance_by_range
from witnessmark.gauges.age.house_outlook import Part, house_outlook
from witnessmark.gauges.age.life_fit import life_fit
from witnessmark.gauges.age.life_range import life_range
from witnessmark.gauges.age.part_age import part_age
from witnessmark.gauges.age.remaining_life import remaining_life
from witnessmark.gauges.age.weibull import Law, fitted, scale_for_mean

__all__ = [
    "Law", "Part", "failure_chance", "failure_chance_by_range", "fitted", "house_outlook", "life_fit", "life_range",
    "months_between", "part_age", "remaining_life", "scale_for_mean", "years_between",
]  # fmt: skip
