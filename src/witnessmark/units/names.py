"""How units are written and printed by people, beside their UCUM codes."""

from __future__ import annotations

__all__ = ["NAMES", "codes", "printed"]

#: UCUM code: how it is printed, and how else people write it (lower case; compared without regard to case).
NAMES: dict[str, tuple[str, ...]] = {
    "[degF]": ("°F", "f", "degf", "deg f", "degree f", "degrees f", "fahrenheit", "degrees fahrenheit", "ºf"),
    "Cel": ("°C", "c", "degc", "deg c", "degree c", "degrees c", "celsius", "degrees celsius", "ºc", "℃"),
    "[degF]{difference}": ("°F difference", "f difference", "degf difference", "degrees f difference"),
    "Cel{difference}": ("°C difference", "c difference", "degc difference", "degrees c difference"),
    "K{difference}": ("K difference", "kelvin difference"),
    "K": ("K", "kelvin"),
    "mK": ("mK", "millikelvin", "millikelvins"),
    "[in_i]": ("in", '"', "″", "”", "inch", "inches", "ins"),
    "[ft_i]": ("ft", "'", "′", "’", "foot", "feet"),
    "[yd_i]": ("yd", "yard", "yards"),
    "[mi_i]": ("mi", "mile", "miles"),
    "[mil_i]": ("mil", "mils", "thou"),
    "m": ("m", "metre", "metres", "meter", "meters"),
    "cm": ("cm",),
    "mm": ("mm",),
    "um": ("µm", "μm", "micron", "microns"),
    "[sin_i]": ("sq in", "sqin", "in2", "in²", "square inch", "square inches"),
    "[sft_i]": ("sq ft", "sqft", "sf", "ft2", "ft²", "square foot", "square feet"),
    "[syd_i]": ("sq yd", "yd2", "square yards"),
    "m2": ("m²", "m2", "sqm", "sq m", "square metres", "square meters"),
    "cm2": ("cm²", "cm2"),
    "mm2": ("mm²", "mm2"),
    "[cin_i]": ("cu in", "in3", "in³", "cubic inches"),
    "[cft_i]": ("cu ft", "cuft", "ft3", "ft³", "cubic foot", "cubic feet"),
    "m3": ("m³", "m3", "cubic metres", "cubic meters"),
    "[gal_us]": ("gal", "gallon", "gallons", "us gal"),
    "[qt_us]": ("qt", "quart", "quarts"),
    "[pt_us]": ("pt", "pint", "pints"),
    "[foz_us]": ("fl oz", "floz", "fluid ounces"),
    "L": ("L", "l", "litre", "litres", "liter", "liters"),
    "mL": ("mL", "ml", "millilitres", "milliliters"),
    "[gal_us]/min": ("gal/min", "gpm", "gallons per minute", "gallons a minute", "gal / min"),
    "[gal_us]/h": ("gal/h", "gph", "gallons per hour", "gallons an hour"),
    "L/min": ("L/min", "lpm", "l/min", "litres per minute", "liters per minute"),
    "L/s": ("L/s",),
    "[cft_i]/min": ("cu ft/min", "cfm", "ft3/min", "ft³/min", "cubic feet per minute"),
    "[cft_i]/h": ("cu ft/h", "cfh", "ft3/h", "cubic feet per hour"),
    "m3/h": ("m³/h", "m3/h"),
    "[ft_i]/min": ("ft/min", "fpm", "feet per minute"),
    "m/s": ("m/s",),
    "[ft_i]/s": ("ft/s", "fps", "feet per second", "feet a second"),
    "GPa": ("GPa",),
    "[mi_i]/h": ("mph", "miles per hour", "mi/h"),
    "[psi]": ("psi", "psig", "pounds per square inch", "lb/in2", "pounds pressure"),
    "Pa": ("Pa", "pascal", "pascals"),
    "kPa": ("kPa", "kilopascals"),
    "bar": ("bar",),
    "mbar": ("mbar",),
    "[in_i'H2O]": ("in w.c.", "inwc", "in wc", "inwg", "in w.g.", "inh2o", "in h2o", "inches of water", "iwc",
                   "inches water column"),
    "[in_i'Hg]": ("in Hg", "inhg", "inches of mercury"),
    "[lbf_av]/[sft_i]": ("psf", "lb/ft2", "lb/sq ft", "pounds per square foot"),
    "[lbf_av]/[ft_i]": ("plf", "lb/ft", "pounds per foot"),
    "[lbf_av]": ("lbf", "pounds force"),
    "N": ("N", "newton", "newtons"),
    "[lb_av]": ("lb", "lbs", "pound", "pounds"),
    "[oz_av]": ("oz", "ounce", "ounces"),
    "kg": ("kg", "kilogram", "kilograms"),
    "g": ("g", "gram", "grams"),
    "%": ("%", "percent", "per cent", "pct", "% mc", "%mc", "% rh", "%rh", "%wme", "% wme"),
    "[ppm]": ("ppm", "parts per million"),
    "[ppb]": ("ppb", "parts per billion"),
    "A": ("A", "amp", "amps", "ampere", "amperes"),
    "mA": ("mA", "milliamp", "milliamps"),
    "V": ("V", "vac", "volt", "volts"),
    "mV": ("mV", "millivolts"),
    "kV": ("kV",),
    "W": ("W", "watt", "watts"),
    "kW": ("kW", "kilowatt", "kilowatts"),
    "V.A": ("VA", "volt amps", "volt amperes"),
    "kV.A": ("kVA",),
    "kW.h": ("kWh", "kilowatt hours"),
    "Ohm": ("Ω", "Ω", "ohm", "ohms"),
    "mOhm": ("mΩ", "milliohm", "milliohms"),
    "kOhm": ("kΩ", "kohm", "kilohm", "kilohms"),
    "MOhm": ("MΩ", "mohm", "megohm", "megohms"),
    "GOhm": ("GΩ", "gohm", "gigohm"),
    "Hz": ("Hz", "hertz"),
    "[Btu_IT]/h": ("Btu/h", "btuh", "btu/hr", "btu per hour", "btu", "btus"),
    "12000.[Btu_IT]/h": ("ton of cooling", "ton", "tons", "tons of cooling"),
    "[HP]": ("hp", "horsepower"),
    "s": ("s", "sec", "secs", "second", "seconds"),
    "ms": ("ms", "millisecond", "milliseconds"),
    "min": ("min", "mins", "minute", "minutes"),
    "h": ("h", "hr", "hrs", "hour", "hours"),
    "d": ("d", "day", "days"),
    "wk": ("wk", "week", "weeks"),
    "mo": ("mo", "month", "months"),
    "a": ("yr", "yrs", "year", "years"),
    "mrad": ("mrad", "milliradian", "milliradians"),
    "deg": ("°", "deg", "degree of slope", "degrees of slope"),
    "[in_i]/[ft_i]": ("in 12", "in/ft", ":12", "inches per foot", "in twelve", "inches in twelve"),
    "mm/m": ("mm/m",),
    "pCi/L": ("pCi/L", "pci/l", "picocuries per litre", "picocuries per liter"),
    "Bq/m3": ("Bq/m³", "bq/m3", "becquerels per cubic metre", "becquerels per cubic meter"),
    "/h": ("/h", "ach", "air changes per hour", "1/h"),
    "dB": ("dB", "decibel", "decibels", "dba"),
    "lx": ("lx", "lux"),
    "mg/L": ("mg/L", "mg/l"),
    "[gr]/[gal_us]": ("gr/gal", "gpg", "grains per gallon"),
    "[sft_i].[degF].h/[Btu_IT]": ("ft²·°F·h/Btu", "sq ft degf h/btu", "r-value"),
    "m2.K/W": ("m²·K/W", "m2k/w"),
    "W/(m2.K)": ("W/(m²·K)", "w/m2k"),
    "[Btu_IT]/(h.[sft_i].[degF])": ("Btu/(h·ft²·°F)", "btu/hft2f"),
    "[Btu_IT]/[lb_av]": ("Btu/lb", "btu per pound"),
    "[Btu_IT]/[cft_i]": ("Btu/ft³", "btu/ft3", "btu per cubic foot"),
    "[gr]/[lb_av]": ("gr/lb", "grains per pound"),
    "g/kg": ("g/kg",),
    "mg/m3": ("mg/m³", "mg/m3"),
    "[in_i]/a": ("in/yr", "inches per year", "inches a year"),
    "1": ("each", "ea"),
}  # fmt: skip


def _index() -> tuple[dict[str, str], dict[str, str]]:
    as_written: dict[str, str] = {}
    any_case: dict[str, str] = {}
    for code, names in NAMES.items():
        for name in names:
            as_written.setdefault(name, code)
            any_case.setdefault(name.lower(), code)
    return as_written, any_case


_AS_WRITTEN, _ANY_CASE = _index()


def codes(text: str) -> str | None:
    """The UCUM code for a unit as people write it, or None.

    The exact spelling goes before the spelling without regard to case, so that ``mA`` and ``MΩ`` stay apart from
    what they would be in another case.

    >>> codes("psi")
    '[psi]'
    """
    return _AS_WRITTEN.get(text) or _ANY_CASE.get(text.lower())


def printed(code: str) -> str:
    """How a unit is printed; the code itself where it has no print form.

    >>> printed("[degF]")
    '°F'
    """
    names = NAMES.get(code)
    return names[0] if names else code
