"""What is it: make, model, serial, year, and the descriptions the packs ask for?"""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from witnessmark.listening.drafts import Draft
from witnessmark.listening.numerals import short_year
from witnessmark.listening.statement import Statement
from witnessmark.listening.terms import cues, members

__all__ = ["described", "identified", "short_year_told"]

_COPULAS = frozenset({"is", "are", "was", "'s", "looks", "were"})


def _name(st: Statement, index: int, end: int) -> str:
    return " ".join(t.case for t in st.tokens[index:end]).capitalize()


def _unknown(st: Statement, index: int) -> bool:
    """Whether the word can be a maker's name: no word of the packs or of ours, no number."""
    word = st.norms[index]
    return (
        word.isalpha()
        and len(word) > 2  # noqa: PLR2004 - articles and letters
        and index not in st.masked
        and not any(v.start <= index < v.end for v in st.values)
        and not any(q.start <= index < q.end for q in st.quantities)
        and not any(start <= index < end for start, end, _ in st.scene.lexicon.measures.find(st.stems))
        and word not in members("identities", "not_makes")
        and word not in _closed()
    )


def _closed() -> frozenset[str]:
    names = ("auxiliaries", "verbs", "determiners", "prepositions", "adverbs", "adjectives", "subjects", "conjunctions",
             "subordinators", "quantifiers", "sides")  # fmt: skip
    found: frozenset[str] = frozenset()
    for name in names:
        found |= members("clauses", name)
    return found | members("conditions", "adverse") | members("conditions", "sound")


def _make(st: Statement) -> tuple[int, int] | None:
    """Where a maker's name stands: after "made by", before "model", or alone after "is a"."""
    by = cues("identities", "make").first(st.norms)
    if by and by[1] < len(st.norms) and _unknown(st, by[1]):
        return by[1], by[1] + 1
    for plate in st.plates:
        if plate.attribute == "model" and plate.start and _unknown(st, plate.start - 1):
            return plate.start - 1, plate.start
    row = st.scene.lexicon.kind(st.thing.kind if st.thing else None)
    if row is None or not ({"make", "model", "made"} & set(row.describe) or row.operated):
        return None
    for at in range(1, len(st.norms) - 1):
        if st.norms[at] not in {"a", "an"} or st.norms[at - 1] not in _COPULAS:
            continue
        at = next((q.end - 1 for q in st.quantities if q.start in {at, at + 1} and q.form == "quantity"), at)  # noqa: PLW2901 - "a three ton Blythe"
        if at + 1 < len(st.norms) and _unknown(st, at + 1):
            end = at + 2
            rest = st.norms[end:]
            year = any(q.start == end for q in st.quantities)
            known = any(n.start == end for n, _ in st.mentions)
            if not rest or year or known or rest[0] in {"unit", "brand", "model", "and", "from", "made", "so", "panel"}:
                return at + 1, end
            if rest[0] in members("identities", "not_makes"):
                return at + 1, end
    for quantity in st.quantities:
        at = quantity.end
        if quantity.form == "quantity" and at < len(st.norms) and _unknown(st, at) and st.stems[at] not in st.scene.lexicon.known and (
            st.norms[at + 1 : at + 2] in ([], ["made"], ["from"], ["model"], ["built"]) and "make" in row.describe
        ):  # fmt: skip
            return at, at + 1  # "fifty two gallon Rheinhart made in"
    said = st.begins("clauses", "instruments")
    if said and said[0] + 1 < len(st.norms) and st.norms[said[0]] in {"says", "reads"} and _unknown(st, said[0] + 1):
        return said[0] + 1, said[0] + 2
    return None


def identified(st: Statement) -> list[Draft]:
    """Drafts for make, model, serial number and year."""
    drafts: list[Draft] = []
    if st.thing is None:
        return drafts
    focus = st.scene.focus
    if st.thing.part and focus is not None and focus.kind != st.thing.kind and "date" in st.norms and "it" in st.norms:
        st.thing, st.named = focus, False  # "date on it": of what is spoken of, not of an alarm
    make = _make(st)
    if make:
        name = _name(st, *make)
        drafts.append(st.draft("identified", f"make {name}", "make", attribute="make", value=name))
    for plate in st.plates:
        draft = st.draft(
            "identified",
            f"{plate.attribute} {plate.text}",
            f"{plate.attribute} spelled out",
            attribute=plate.attribute,
            value=plate.text,
        )
        drafts.append(replace(draft, **st.at(plate.start, plate.end)))
    row = st.scene.lexicon.kind(st.thing.kind)
    years = [] if any(p.attribute == "made" for p in st.plates) else _years(st, make)
    drafts += [
        st.draft("identified", f"made {year}", "year", attribute="made", value=Decimal(year), unit="a")
        for year in years[:1]
    ]
    for quantity in st.quantities:
        if quantity.unit == "a" and row is not None and quantity.form == "quantity":
            drafts.append(
                st.draft(
                    "identified", f"age {quantity.value} years", "age", attribute="age", value=quantity.value, unit="a"
                )
            )
            break
    return drafts


#: Words between "made" and a year that is said short: "made in about", "built around", "date code is".
_TO_YEAR = frozenset(
    {
        "in",
        "about",
        "around",
        "is",
        "was",
        "of",
        "code",
        "like",
        "back",
        "on",
        "it",
        "sometime",
        "early",
        "late",
        "what",
    }
)
#: Words before a date on a label, and how far before it they stand.
_DATES, _DATE_WITHIN = frozenset({"date", "dated", "manufactured", "manufacture", "mfg", "mfd"}), 8


#: Words before a year that stands on a thing: "it says two thousand nine on the back".
_MARKED = frozenset({"says", "reads", "said", "stamped", "marked", "printed", "dated", "stamp", "year"})


def _years(st: Statement, make: tuple[int, int] | None) -> list[int]:
    """The year in which it was made: after "made in" and the like, after a date, beside the make, or alone."""
    row = st.scene.lexicon.kind(st.thing.kind if st.thing else None)
    told = cues("identities", "made").find(st.norms)
    ends = {end for _, end, _ in told}
    found: list[int] = []
    for quantity in (q for q in st.quantities if q.form == "year"):
        dated = bool(_DATES & set(st.norms[max(0, quantity.start - _DATE_WITHIN) : quantity.start]))
        ages = row is not None and {"made", "age"} & set(row.describe)
        marked = ages and bool(_MARKED & set(st.norms[max(0, quantity.start - 3) : quantity.start]))
        alone = ages and len(st.norms) <= quantity.end - quantity.start + 4
        coded = any(
            p.attribute == "serial" and p.end <= quantity.start for p in st.plates
        )  # "serial … so two thousand seventeen"
        if (
            coded
            or quantity.start in ends
            or st.instruments
            or dated
            or (make and make[1] == quantity.start)
            or alone
            or marked
        ):
            found.append(int(quantity.value))
    if found:
        return found
    short = short_year_told(st)
    return [] if short is None else [short]


#: Words before a year of the last century that is said short.
_ABOUT_YEAR = frozenset({"around", "about", "circa"})
_LAST_CENTURY = range(1940, 2000)


def short_year_told(st: Statement) -> int | None:
    """The year that is told by its last two digits: "made in oh nine", "built what seventy four", "around ninety four"."""
    for start, end, words in cues("identities", "made").find(st.norms):
        at = end
        while at < len(st.norms) and st.norms[at] in _TO_YEAR:
            at += 1
        short = short_year(st.norms, at) if words != "from" else None
        unit = short is not None and any(q.start <= at < q.end and (q.unit or q.form != "bare") for q in st.quantities)
        if short is not None and not unit and (start == 0 or st.norms[start - 1] != "not"):
            return short[1]
    for at, word in enumerate(st.norms[:-1]):
        ended = short_year(st.norms, at + 1) if word in _ABOUT_YEAR else None
        if (
            ended is not None
            and ended[1] in _LAST_CENTURY
            and ended[0] == len(st.norms)
            and "built" in {*st.norms, *_addition(st)}
        ):
            return ended[1]
    return None


def _addition(st: Statement) -> set[str]:
    """That something was built, said in other words."""
    return (
        {"built"}
        if {"addition", "added", "remodel", "remodeled", "renovated", "redone", "new", "original"} & set(st.norms)
        else set()
    )


def _inner_values(st: Statement) -> list[tuple[int, int, tuple[tuple[str, str], ...]]]:
    found = [(v.start, v.end, v.meanings) for v in st.values]
    for named, _ in st.mentions:
        found += list(st.scene.lexicon.values.find(st.stems, named.start, named.end))
    return sorted(found, key=lambda row: row[0])


def described(st: Statement) -> list[Draft]:
    """Drafts for the attributes that the packs ask to describe of this kind, one for each attribute named.

    The value stands after "is", or the statement is "it's a …", "this is …", "there is …", or has no verb at all.
    """
    thing = st.thing
    row = st.scene.lexicon.kind(thing.kind) if thing else None
    by_place = None if st.named else st.scene.of_place(st.scene.place)
    own = set(row.describe) if row else set()
    if by_place is not None and st.values and not any(a in own for v in st.values for a, _ in v.meanings):
        of_place = st.scene.lexicon.packs.kinds[by_place.kind or ""]
        if any(a in of_place.describe for v in st.values for a, _ in v.meanings):
            thing, row = by_place, of_place  # "walked it": how the roof was looked at
    if row is None or not row.describe:
        return []
    verbs = [
        i for i, w in enumerate(st.norms) if w in members("clauses", "auxiliaries") or w in members("clauses", "verbs")
    ]
    copula = next((i for i in verbs if st.norms[i] in _COPULAS), None)
    if verbs and copula is None and not ({"has", "have", "got"} & {st.norms[i] for i in verbs}):
        return []
    found: list[tuple[tuple[str, str], ...]] = []
    used: set[int] = set()
    for start, end, meanings in _inner_values(st):
        if start in used or (start and st.norms[start - 1] in {"no", "not", "without"}):
            continue
        in_place = start and st.norms[start - 1] in {"on", "in", "at", "under", "behind", "by", "to", "near", "from", "the"} and (
            not any(v.start == start for v in st.values) or st.norms[start - 1] != "the"
        )  # fmt: skip
        if in_place:
            continue
        if copula is not None and end <= copula and st.norms[copula - 1] not in {"it", "this", "that", "there", "they"}:
            continue
        asked = tuple((a, v) for a, v in meanings if a in row.describe and a not in {"condition-word", "presence"})
        if asked:
            used.update(range(start, end))
        whole = any((m.start, m.end) == (start, end) for m, _ in st.mentions)
        if whole and not (copula is not None and start > copula) and len(st.norms) > end - start:
            continue  # "fan pulls fine": that it is a fan is no description of its kind
        named = any(m.start <= start < m.end for m, _ in st.mentions)
        if named and any(v.lower() in row.name.lower() for _, v in asked):
            continue  # "it's a gas boiler": that it is a boiler is no description of it
        found.append(asked)
    drafts = [
        st.draft("identified", f"{_attribute_name(st, a)}: {', '.join(v)}", f"value of {a}", thing, attribute=a, value=", ".join(v))
        for a, v in _by_attribute(row.describe, found).items()
    ]  # fmt: skip
    return drafts or _sized(st, row.describe) or _located(st, row.describe, copula)


def _by_attribute(describe: tuple[str, ...], found: list[tuple[tuple[str, str], ...]]) -> dict[str, list[str]]:
    """The values by attribute: values named together go to the attribute that takes most of them."""
    made: dict[str, list[str]] = {}
    rest = [row for row in found if row]
    while rest:
        attribute = max(describe, key=lambda a: sum(any(a == b for b, _ in row) for row in rest))
        taken = [next((v for a, v in row if a == attribute), None) for row in rest]
        if not any(taken):
            break
        made[attribute] = list(dict.fromkeys(v for v in taken if v is not None))
        rest = [row for row, value in zip(rest, taken, strict=True) if value is None]
    return made


def _attribute_name(st: Statement, attribute: str) -> str:
    row = st.scene.lexicon.packs.attributes.get(attribute)
    return row.name if row else attribute


def _sized(st: Statement, describe: tuple[str, ...]) -> list[Draft]:
    pair = next((q for q in st.quantities if q.form == "pair"), None)
    told = "size" in describe or any(w in _COPULAS for w in st.norms)
    if pair is None or not told or "size" not in st.scene.lexicon.packs.attributes or not st.named:
        return []
    value = f"{pair.value} x {pair.second}"
    for quantity in st.quantities:
        if quantity.unit == "[in_i]" and quantity is not pair:
            value += f", {quantity.value} in on center"
    return [st.draft("identified", f"size: {value}", "size", attribute="size", value=value, unit=pair.unit)]


_PLACE_WORDS = frozenset(
    {"in", "on", "at", "by", "under", "behind", "near", "here", "outside", "inside", "next", "above"}
)


def _located(st: Statement, describe: tuple[str, ...], copula: int | None) -> list[Draft]:
    if "location" not in describe or copula is None or not st.named or copula + 1 >= len(st.norms):
        return []
    at = copula + 1
    while at < len(st.norms) and st.norms[at] in {"right", "over", "down", "up", "back", "just", "located", "out"}:
        at += 1
    if at >= len(st.norms) or st.norms[at] not in _PLACE_WORDS or (st.subject and st.subject.start > copula):
        return []
    if at + 1 >= len(st.norms):
        return []
    words = " ".join(st.norms[copula + 1 :])
    return [st.draft("identified", f"location: {words}", "location", attribute="location", value=words)]
