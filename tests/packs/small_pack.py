"""A small pack that uses every table, for the tests of the reader."""

HEAD = """pack = "{pack}"
version = "2026.11"
source = "common practice, no source"
tag = "common practice, no source"
in_force = "2026-01-01"
"""

WORDS = """
[[sort]]
id = "kitchen"
name = "kitchen"
spoken = ["Kitchenette"]
habitable = true
[[attribute]]
id = "fuel"
name = "fuel"
values = [{ id = "natural gas", spoken = ["gas"] }, { id = "electricity" }]
[[measure]]
id = "oven-temperature"
name = "oven temperature"
unit = "[degF]"
units = ["Cel"]
low = "32"
high = "900"
[[reason]]
id = "locked"
words = "it was locked"
spoken = ["locked"]
[[caution]]
id = "hot"
words = "It is hot."
[[trade]]
id = "electrician"
words = "a licensed electrician"
"""

THINGS = """
[[kind]]
id = "range"
system = "appliances"
name = "range"
spoken = ["stove", "oven"]
sorts = ["kitchen"]
describe = ["fuel"]
measures = ["oven-temperature"]
cautions = ["hot"]
parts = [{ id = "bracket", name = "anti-tip bracket", spoken = ["bracket"], expected = true }]
[[kind]]
id = "wall-oven"
system = "appliances"
name = "wall oven"
plural = "wall ovens"
spoken = ["oven"]
[[kind.parts]]
id = "door"
name = "door"
[[procedure]]
id = "range-bake"
kind = "range"
name = "bake"
how = "Set it to 350."
leaves = "on"
said = ["turn the oven on"]
put_back = "turn it off"
at_most = 60
look_again = { words = "the oven", why = "to read its temperature", earliest = 10, latest = 40, kinds = ["range"], here = false }
[[condition]]
id = "range-tips"
kinds = ["range"]
part = "bracket"
name = "no anti-tip bracket"
spoken = ["tips"]
observation = "It is not held."
implication = "It can tip."
if_left = "A child can be scalded."
do = "Fit the bracket."
by = "electrician"
direct = "repair"
stake = "people"
urgency = "before use"
absence = true
cautions = ["hot"]
[[criterion]]
id = "oven-at-350"
measure = "oven-temperature"
op = "between"
value = "325"
high = "375"
unit = "[degF]"
words = "Off by at most 25 at 350."
document = "Texas Administrative Code"
edition = "2022"
section = "535.232"
force = "guide"
kinds = ["range"]
jurisdiction = "us.tx"
condition = "range-tips"
in_force = "2022-02-01"
[[era]]
id = "old-range"
name = "old range"
words = "Look behind it."
kinds = ["range"]
built_to = 1990
[[life]]
id = "range.a-table"
kinds = ["range"]
name = "electric range"
low = "13"
high = "15"
document = "A table of lives"
edition = "2007"
place = "p. 3"
[[frame]]
id = "en.not-inspected"
use = "not-inspected"
language = "en"
text = "The {what} was not inspected: {reason}."
[[translation]]
id = "es.kind.range"
language = "es"
table = "kind"
of = "range"
name = "estufa"
"""

LAW = """
[rulebook]
id = "us.xx"
name = "A standard of practice"
jurisdiction = "us.xx"
citation = "XX 1-1"
effective_from = "2020-01-01"
verified = "not at all"
reasons = ["locked"]
[[definition]]
term = "enter"
words = "go in"
section = "1"
tag = "memory"
[[duty]]
id = "XX-001"
section = "2"
system = "appliances"
verb = "describe"
modality = "shall"
words = "state the fuel of the range"
tracked = true
reasons = ["locked"]
refer_to = "electrician"
subjects = [{ words = "the fuel", kinds = ["range"], part = "bracket", attributes = ["fuel"], measures = ["oven-temperature"], sorts = ["kitchen"], optional = true }]
numeric = [{ quantity = "temperature", op = "<=", value = "25", unit = "[degF]" }]
"""


def pack(name: str, *tables: str) -> bytes:
    """A pack file of that name with those tables."""
    return (HEAD.format(pack=name) + "".join(tables)).encode()


def small() -> dict[str, bytes]:
    """The whole small pack, by path."""
    return {
        "words.toml": pack("words", WORDS),
        "things.toml": pack("things", THINGS),
        "law.toml": pack("law", LAW),
    }
