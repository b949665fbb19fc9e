"""How many were looked at: the representative number of the law, and what a sample can and cannot find."""

from witnessmark.gauges.sampling.chance import (
    bound_among_many,
    bound_among_so_many,
    chance_among_many,
    chance_of_none,
    smallest_among_many,
    smallest_number,
)
from witnessmark.gauges.sampling.finding import chance_of_finding, chance_of_finding_in_many, number_to_test
from witnessmark.gauges.sampling.none_found import none_found, none_found_in_many
from witnessmark.gauges.sampling.representative import Place, needed_at, representative_number, still_to_test

__all__ = [
    "Place", "bound_among_many", "bound_among_so_many", "chance_among_many", "chance_of_finding",
    "chance_of_finding_in_many", "chance_of_none", "needed_at", "none_found", "none_found_in_many", "number_to_test",
    "representative_number", "smallest_among_many", "smallest_number", "still_to_test",
]  # fmt: skip
