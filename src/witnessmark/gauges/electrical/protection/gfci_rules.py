"""Where dwellings need ground-fault protection, edition by edition: the rules as data, one line each."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from witnessmark.gauges.electrical.protection.requirement import Asks, Found, Lacks, Lifted, Rule, picked

__all__ = ["RULES", "Near", "Outlet", "Place", "Serves", "gfci_found"]

Place = Literal[
    "bathroom", "garage", "accessory building", "outdoors", "crawl space", "basement", "kitchen", "wet bar",
    "laundry area", "boathouse", "damp or wet indoors", "pool", "storable pool", "spa or hot tub",
    "construction site", "other room",
]  # fmt: skip
Serves = Literal[
    "general use", "counter", "dishwasher", "refrigerator or freezer", "range", "oven", "cooktop", "clothes dryer",
    "microwave oven", "waste disposer", "sump pump", "laundry appliance", "garage door opener", "fire or burglar alarm",
    "snow melting or deicing", "air conditioner or heat pump", "underwater luminaire", "hydromassage tub motor",
]  # fmt: skip
Near = Literal[
    "nothing", "kitchen sink", "wet bar sink", "laundry or utility sink", "other sink", "tub or shower", "pool"
]

SIX_FEET = Decimal(72)
#: From here on an edition has no exceptions for what is out of reach or stands for one appliance.
NO_MORE_EXCEPTIONS = 2008
#: Edition by which every list has spas and hot tubs.
SPAS_CERTAIN = 1987


@dataclass(frozen=True, slots=True)
class Outlet:
    """One outlet as found. ``distance`` in inches by the shortest cord path to what ``near`` names."""

    place: Place
    serves: Serves = "general use"
    outlet: Literal["receptacle", "hard-wired", "lighting outlet"] = "receptacle"
    near: Near | None = None
    distance: Decimal | None = None
    finished: bool | None = None
    volts: Decimal = Decimal(120)
    amperes: Decimal = Decimal(20)
    accessible: bool = True
    dedicated: bool = False
    grade_access: bool = True

    @property
    def small(self) -> bool:
        """A receptacle of 125 V, 15 or 20 A."""
        return self.outlet == "receptacle" and self.volts <= 130 and self.amperes <= 20  # noqa: PLR2004 - 125 V, 20 A

    @property
    def up_to_250(self) -> bool:
        """A receptacle of 125 to 250 V on a circuit of at most 150 V to ground, as a dwelling has."""
        return self.outlet == "receptacle" and self.volts <= 250  # noqa: PLR2004 - the rule's own figure


def _within(o: Outlet, feet: int, *near: str) -> Asks:
    if o.near is None or o.near not in near:
        return False
    if o.distance is None:
        return Lacks(f"the distance to the {o.near} by the shortest cord path")
    return o.distance <= feet * 12


def _spared(o: Outlet, edition: int) -> Asks:
    """A garage, accessory building or basement receptacle, with the exceptions that stood until 2005."""
    if edition < NO_MORE_EXCEPTIONS and not o.accessible:
        return Lifted("through the 2005 edition a receptacle that is not readily accessible was excepted")
    if edition < NO_MORE_EXCEPTIONS and o.dedicated:
        return Lifted("through the 2005 edition a receptacle for an appliance in its dedicated space was excepted")
    return True


def _counter(o: Outlet, sink: str) -> Asks:
    """A counter receptacle within 6 ft of the sink of its own counter."""
    if o.serves != "counter" or not o.small:
        return False
    if o.near is None or (o.near == sink and o.distance is None):
        return Lacks(f"the distance to the {sink} by the shortest cord path")
    return o.near == sink and o.distance is not None and o.distance <= SIX_FEET


def _basement(o: Outlet, edition: int) -> Asks:
    if not o.small or o.place != "basement":
        return False
    if o.finished is None:
        return Lacks("whether this part of the basement is finished as habitable room")
    if o.finished:
        return False
    if o.serves == "fire or burglar alarm":
        return Lifted("a receptacle for a permanently installed fire or burglar alarm only is excepted")
    return _spared(o, edition)


def _outdoor_outlet(o: Outlet, edition: int, year: int | None) -> Asks:
    most = 50 if edition < 2026 else 60  # noqa: PLR2004 - raised in the 2026 edition
    if o.place != "outdoors" or o.outlet == "lighting outlet" or o.volts > 250 or o.amperes > most:  # noqa: PLR2004 - 150 V to ground
        return False
    if o.serves == "snow melting or deicing":
        return Lifted("outlets for snow melting and deicing have rules of their own")
    if o.serves == "air conditioner or heat pump" and year is None:
        return Lacks(
            "the year of the work: for heating and cooling equipment the rule was put off until 1 September 2026"
        )
    if o.serves == "air conditioner or heat pump" and year is not None and year <= 2026:  # noqa: PLR2004 - the date put off to
        if edition == 2020 and year >= 2023:  # noqa: PLR2004 - the first date in the 2020 edition, moved later
            return Lacks("whether the place had taken over the amendment that moved 1 January 2023 to 1 September 2026")
        if year == 2026:  # noqa: PLR2004 - as above
            return Lacks("whether the work was done before 1 September 2026")
        return Lifted("for listed heating and cooling equipment the rule was put off until 1 September 2026")
    return True


def _outdoors(o: Outlet, edition: int) -> Asks:
    if o.place != "outdoors" or not o.small:
        return False
    if 1978 <= edition < 1996 and not o.grade_access:  # noqa: PLR2004 - editions
        return Lifted("from the 1978 to the 1993 edition only receptacles with direct access from grade were covered")
    if edition >= 1996 and o.serves == "snow melting or deicing" and not o.accessible:  # noqa: PLR2004 - edition
        return Lifted("an outlet out of ready reach on its own circuit for snow melting or deicing is excepted")
    return True


def _crawl(o: Outlet, edition: int) -> Asks:
    if o.place != "crawl space" or not o.small:
        return False
    if edition < 1999 and o.dedicated:  # noqa: PLR2004 - edition
        return Lifted("through the 1996 edition a receptacle for one appliance in its dedicated space was excepted")
    return True


def _spa(o: Outlet, edition: int) -> Asks:
    if o.serves == "hydromassage tub motor":
        return True
    if o.place != "spa or hot tub":
        return False
    if edition < SPAS_CERTAIN:
        return Lacks("which list is right: they give 1978, 1981 and 1987 for spas and hot tubs")
    return True


_APPLIANCES_2023 = ("dishwasher", "range", "oven", "cooktop", "clothes dryer", "microwave oven", "sump pump")
_DAMP_2020 = ("bathroom", "garage", "accessory building", "outdoors", "crawl space", "basement", "boathouse",
              "laundry area", "damp or wet indoors")  # fmt: skip
_SINKS = ("kitchen sink", "wet bar sink", "laundry or utility sink", "other sink")


def _widened(o: Outlet, edition: int) -> Asks:
    """The 2020 widening to 250 V: the places of the list, counters, sinks and tubs."""
    if not o.up_to_250 or o.small:
        return False
    if o.place == "outdoors" and o.serves == "snow melting or deicing" and not o.accessible:
        return Lifted("an outlet out of ready reach on its own circuit for snow melting or deicing is excepted")
    if o.place in _DAMP_2020 or (o.place == "kitchen" and (o.serves == "counter" or edition >= 2023)):  # noqa: PLR2004 - edition
        return True
    return _within(o, 6, *_SINKS, "tub or shower")


Applies = Callable[[Outlet, int, int | None], Asks]
_COPY: Literal["seen in a copy"] = "seen in a copy"

#: Each rule with the outlets it covers, given the outlet, the edition and the year of the work.
RULES: tuple[tuple[Rule, Applies], ...] = (
    (Rule(1968, "680", "luminaires under water in pools", _COPY,
          disputed="lists date underwater pool luminaires to 1968; one account says that edition only permitted it, "
                   "beside other methods, and required it from 1971"),
     lambda o, _e, _y: o.serves == "underwater luminaire"),
    (Rule(1971, "680", "receptacles near pools: 15 ft", _COPY, last=1981), lambda o, _e, _y: o.small and _within(o, 15, "pool")),
    (Rule(1984, "680", "receptacles near pools: 20 ft", _COPY), lambda o, _e, _y: o.small and _within(o, 20, "pool")),
    (Rule(1971, "680", "equipment of storable pools", _COPY), lambda o, _e, _y: o.place == "storable pool"),
    (Rule(1971, "210-7; 305", "receptacles at construction sites", _COPY, binds_from=1974),
     lambda o, _e, _y: o.small and o.place == "construction site"),
    (Rule(1971, "210-22(d)", "outdoor receptacles of dwellings", _COPY, binds_from=1973,
          disputed="lists print 1973, which is the date inside the 1971 edition"),
     lambda o, e, _y: _outdoors(o, e)),
    (Rule(1975, "210-8(a)", "receptacles in bathrooms", _COPY), lambda o, _e, _y: o.small and o.place == "bathroom"),
    (Rule(1978, "210-8(a)", "receptacles in garages", _COPY),
     lambda o, e, _y: o.small and o.place == "garage" and _spared(o, e)),
    (Rule(1981, "680", "spas, hot tubs and hydromassage tubs", _COPY), lambda o, e, _y: _spa(o, e)),
    (Rule(1987, "210-8(a)", "kitchen counter receptacles within 6 ft of the sink", _COPY, last=1993),
     lambda o, _e, _y: o.place == "kitchen" and _counter(o, "kitchen sink")),
    (Rule(1987, "210-8(a)", "at least one receptacle in an unfinished basement", _COPY, last=1987),
     lambda o, e, _y: Lacks("whether another receptacle of the basement is protected: the 1987 edition asked for one")
     if _basement(o, e) is True else _basement(o, e)),
    (Rule(1990, "210-8(a)", "all receptacles in unfinished basements", _COPY, last=2017),
     lambda o, e, _y: _basement(o, e)),
    (Rule(1987, "210-8(a)", "receptacles in boathouses", _COPY), lambda o, _e, _y: o.small and o.place == "boathouse"),
    (Rule(1990, "210-8(a)", "receptacles in crawl spaces at or below grade", _COPY), lambda o, e, _y: _crawl(o, e)),
    (Rule(1993, "210-8(a)", "counter receptacles within 6 ft of a wet bar sink", _COPY, last=2002,
          disputed="lists date the wet bar sink to 1993; one account to 2002"),
     lambda o, _e, _y: o.place == "wet bar" and _counter(o, "wet bar sink")),
    (Rule(1996, "210-8(a)", "all receptacles that serve kitchen counters", _COPY),
     lambda o, _e, _y: o.small and o.place == "kitchen" and o.serves == "counter"),
    (Rule(1996, "210-8(a)", "unfinished accessory buildings at or below grade", _COPY,
          disputed="lists date unfinished accessory buildings between 1993 and 1999"),
     lambda o, e, _y: o.small and o.place == "accessory building" and _spared(o, e)),
    (Rule(2005, "210.8(A)(7)", "receptacles within 6 ft of a laundry, utility or wet bar sink", _COPY),
     lambda o, _e, _y: o.small and _within(o, 6, "laundry or utility sink", "wet bar sink")),
    (Rule(2011, "210.8(A)(7)", "receptacles within 6 ft of any sink outside the kitchen"),
     lambda o, _e, _y: o.small and _within(o, 6, "laundry or utility sink", "wet bar sink", "other sink")),
    (Rule(2014, "210.8(A)(7)", "receptacles within 6 ft of any sink", _COPY),
     lambda o, _e, _y: o.small and _within(o, 6, *_SINKS)),
    (Rule(2014, "210.8(A)(9)", "receptacles within 6 ft of a bathtub or shower stall", _COPY),
     lambda o, _e, _y: o.small and _within(o, 6, "tub or shower")),
    (Rule(2014, "210.8(A)(10)", "receptacles in laundry areas", _COPY),
     lambda o, _e, _y: o.small and o.place == "laundry area"),
    (Rule(2014, "210.8(D)", "dishwasher outlets, hard-wired too", _COPY), lambda o, _e, _y: o.serves == "dishwasher"),
    (Rule(2017, "210.8(E)", "lighting outlets of at most 120 V in crawl spaces"),
     lambda o, _e, _y: o.place == "crawl space" and o.outlet == "lighting outlet" and o.volts <= 130),  # noqa: PLR2004 - 120 V nominal
    (Rule(2020, "210.8(A)", "receptacles of 125 to 250 V in the listed places", _COPY), lambda o, e, _y: _widened(o, e)),
    (Rule(2020, "210.8(A)(5)", "all receptacles in basements, finished too"),
     lambda o, _e, _y: (Lifted("a receptacle for a permanently installed fire or burglar alarm only is excepted")
                       if o.serves == "fire or burglar alarm" else True) if o.small and o.place == "basement" else False),
    (Rule(2020, "210.8(A)(11)", "receptacles in damp and wet places indoors", _COPY),
     lambda o, _e, _y: o.small and o.place == "damp or wet indoors"),
    (Rule(2020, "210.8(F)", "outdoor outlets", _COPY), _outdoor_outlet),
    (Rule(2020, "422.5(A)", "sump pumps", _COPY), lambda o, _e, _y: o.serves == "sump pump"),
    (Rule(2023, "210.8(A)(6)", "every kitchen receptacle, counter or not", _COPY),
     lambda o, _e, _y: o.small and o.place == "kitchen"),
    (Rule(2023, "210.8(A)(7)", "areas with a sink made for preparing food or drinks", _COPY),
     lambda o, _e, _y: o.up_to_250 and o.place == "wet bar"),
    (Rule(2023, "210.8(D)", "named appliances, hard-wired too", _COPY),
     lambda o, _e, _y: o.serves in _APPLIANCES_2023 and o.amperes <= 60 and o.volts <= 250),  # noqa: PLR2004 - the rule's own figures
)  # fmt: skip


def gfci_found(outlet: Outlet, edition: int, year: int | None, *, replaced: bool = False) -> Found:
    """What one edition says of one outlet; *year* of the work (None: not known), *replaced* for a receptacle renewed.

    >>> gfci_found(Outlet("bathroom"), 1971, None).required, gfci_found(Outlet("bathroom"), 1975, None).required
    (False, True)
    """
    said = []
    for rule, applies in RULES:
        if rule.holds(edition):
            asks = applies(outlet, edition, year)
            said.append((rule, rule.dated(edition, year) if asks is True else asks))
    found = picked(said)
    if replaced and edition < REPLACED.first and found.required is not False:
        return Found(required=False, why="replacing a receptacle did not call for it before the 1993 edition")
    if replaced and found.required:
        return Found(required=True, rule=REPLACED)
    return found


REPLACED = Rule(1993, "210-7(d)", "a receptacle replaced where the code then in force asks for it", _COPY)
