"""The report in Spanish: every sentence of ours has its translation with the same gaps, and the packs' own texts are used."""

from __future__ import annotations

import ast
import re
import string
from pathlib import Path

import pytest

from record_builder import START, Visit, after
from report.small_visit import given
from witnessmark import packs as packs_
from witnessmark.journal.acts import Arrived, Found, Left, Listed, Placed, Saw, Skipped
from witnessmark.journal.job import Job
from witnessmark.judging import standing
from witnessmark.packs import SYSTEMS
from witnessmark.packs.model import STAKES, URGENCIES, Packs
from witnessmark.report import (
    Letter,
    closing,
    compose,
    duties,
    findings,
    naming,
    opening,
    showing,
    tongue,
    write_html,
    write_pdf,
)
from witnessmark.report.contents import SECTIONS
from witnessmark.report.tongue import LANGUAGES, Tongue, words_of
from witnessmark.views import ANSWERS
from witnessmark.views.deliveries import DELIVERED

REPORT = Path(tongue.__file__).parent
OTHERS = sorted(set(LANGUAGES) - {"en"})


def literals() -> set[str]:
    """Every sentence that the code and the templates say."""
    found: set[str] = set()
    for file in REPORT.rglob("*.py"):
        for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
            if not isinstance(node, ast.Call) or not node.args:
                continue
            name = node.func.attr if isinstance(node.func, ast.Attribute) else getattr(node.func, "id", "")
            first = node.args[0]
            if name == "say" and isinstance(first, ast.Constant) and isinstance(first.value, str):
                found.add(first.value)
    html = (REPORT / "templates" / "letter.html").read_text(encoding="utf-8")
    found |= {words.replace("\\'", "'") for words in re.findall(r"\bt\('((?:[^'\\]|\\.)*)'", html)}
    typ = (REPORT / "templates" / "letter.typ").read_text(encoding="utf-8")
    return found | set(re.findall(r'\bt\("((?:[^"\\]|\\.)*)"', typ))


def by_name() -> set[str]:
    """Sentences that are said by a variable: kept in tables of the modules."""
    found = {heading for _, heading in SECTIONS} | set(SYSTEMS.values()) | {*STAKES, *URGENCIES, *ANSWERS}
    found |= {*tongue._SMALL, *tongue._DAYS, *tongue._MONTHS}
    found |= {*findings._HEADINGS.values(), *findings._AT_STAKE.values(), *findings._HOW_SOON.values()}
    found |= {*findings._COUNTED.values(), findings._UNSAID, findings._OTHER, naming.WHOLE_HOUSE}
    found |= {*duties._HOW.values(), *duties._SAYS, *duties._SAYS.values(), *showing._SORTS.values()}
    found |= {f"Edition {{edition}} was {state} {{when}}{{whom}}{{how}}." for state in DELIVERED}
    found |= {closing._LOOK, closing._NO_CLAIM, closing._TRADES, closing._AS_RECORDED, opening.INVENTED}
    return found


def gaps(text: str) -> set[str]:
    return {name for _, name, _, _ in string.Formatter().parse(text) if name}


@pytest.mark.parametrize("language", OTHERS)
def test_every_sentence_has_its_translation(language: str) -> None:
    missing = sorted((literals() | by_name()) - set(words_of(language)))
    assert missing == []


@pytest.mark.parametrize("language", OTHERS)
def test_gaps_are_the_same_in_both(language: str) -> None:
    for english, says in words_of(language).items():
        assert gaps(english) == gaps(says), english
        assert says.strip()


def test_dates_numbers_and_rows() -> None:
    es = Tongue("es", {})
    assert es.long_date(START.date()) == "martes, 3 de febrero de 2026"
    assert (es.number(3), es.number(0), es.number(14)) == ("tres", "0", "14")
    assert es.join(["agua", "luz", "gas"]) == "agua, luz y gas"
    assert Tongue.of("xx", Packs()).language == "en"


@pytest.fixture(scope="module")
def letter() -> Letter:
    shipped = packs_.read()
    condition = next(c for c in shipped.conditions.values() if "range" in c.kinds)
    made = Visit()
    made.add(Arrived(weather="dry"), 0)
    made.add(Placed("cocina", "kitchen"), 1, place="kitchen")
    made.add(Listed("range"), 2, place="kitchen", component="range")
    made.add(Saw("it tips", "adverse", condition=condition.id), 3, component="range")
    made.add(
        Found(condition.name, f"{condition.observation} It tips.", condition.implication, "Written by hand.", condition.do,
              condition.by, condition.direct, condition.stake, condition.urgency, condition=condition.id, rests_on=("e004",)),
        4, component="range",
    )  # fmt: skip
    made.add(Skipped(reason="stored-items", what="oven drawer"), 5, component="range")
    made.add(Left(), 60)
    job = Job(
        "0199e000-0000-7000-8000-000000000001",
        date=START.date().isoformat(),
        rulebook="us.wa.308-408c",
        client="Ñ. Núñez",
    )
    record = made.record()
    stands = standing(record, shipped, job, after(90))
    return compose(job, record, shipped, stands, media=lambda _: None, issued=after(600), language="es")


def test_what_the_packs_say_is_said_in_spanish_and_what_people_wrote_stays(letter: Letter) -> None:
    shipped = packs_.read()
    condition = next(c for c in shipped.conditions.values() if "range" in c.kinds)
    row = next(t for t in shipped.translations.values() if t.table == "condition" and t.of == condition.id)
    (finding,) = letter.findings
    assert finding.title.lower() == row.name.lower()
    assert row.observation.rstrip(".").lower()[1:] in finding.seen.lower()
    assert finding.seen.endswith("It tips.")
    assert finding.why.rstrip(".").lower() == row.implication.rstrip(".").lower()
    assert finding.if_left == "Written by hand."
    assert finding.do.rstrip(".").lower() == row.do.rstrip(".").lower()
    assert "; " in finding.sentence
    assert any("porque" in row.text for row in letter.not_inspected)


def test_page_and_pdf_say_their_language(letter: Letter, tmp_path: Path) -> None:
    write_html(letter, tmp_path)
    page = (tmp_path / "index.html").read_text(encoding="utf-8")
    assert '<html lang="es">' in page
    assert "Lo más importante" in page
    assert "traducción" in page
    for english in ("What was seen", "What matters most", "Rests on", "In this letter", "Show all"):
        assert english not in page, english
    assert write_pdf(letter, tmp_path / "report.pdf") == ()


def test_the_same_visit_gives_both(tmp_path: Path) -> None:
    some = given(tmp_path)
    both = {
        language: compose(some.job, some.record, some.packs, some.standing, media=some.files.get, issued=after(600),
                          pictures=some.pictures, language=language)
        for language in LANGUAGES
    }  # fmt: skip
    assert {len(letter.findings) for letter in both.values()} == {len(both["en"].findings)}
    assert {tuple(row.entry for row in letter.evidence) for letter in both.values()} == {
        tuple(row.entry for row in both["en"].evidence)
    }
