"""Drawings: well formed, told in words, to scale, and inert whatever a user wrote."""

from __future__ import annotations

import xml.etree.ElementTree as ET
from dataclasses import replace
from pathlib import Path

import pytest

from record_builder import Visit, after
from report.small_visit import JOB, given, letter_of
from witnessmark import packs as packs_
from witnessmark.journal.acts import Arrived, Left, Listed, Placed, Ran, Read, Stopped
from witnessmark.journal.job import Job
from witnessmark.judging import standing
from witnessmark.packs.model import Packs
from witnessmark.report import Letter, compose, write_html, write_pdf
from witnessmark.report.drawings.bands import outlook_drawing
from witnessmark.report.drawings.levels import level_drawings
from witnessmark.report.drawings.moisture import moisture_drawings
from witnessmark.report.drawings.strip import strip_drawing
from witnessmark.report.drawings.visit import visit_drawing
from witnessmark.report.letter import Drawing, Outlook
from witnessmark.report.naming import names_of
from witnessmark.report.tongue import ENGLISH

SVG = "{http://www.w3.org/2000/svg}"


@pytest.fixture(scope="module")
def shipped() -> Packs:
    return packs_.read()


def parsed(drawing: Drawing | None) -> ET.Element:
    assert drawing is not None
    root = ET.fromstring(drawing.svg)  # noqa: S314 - our own drawing
    assert drawing.says
    wide, high = float(root.get("width", "")), float(root.get("height", ""))
    for element in root.iter():
        for name, most in (("x", wide), ("cx", wide), ("y", high), ("cy", high)):
            if element.get(name) is not None:
                assert -0.5 <= float(element.get(name, "")) <= most + 0.5, f"{element.tag} stands outside"
    return root


def words(root: ET.Element) -> list[str]:
    return [element.text or "" for element in root.iter(f"{SVG}text")]


def running_visit() -> Visit:
    made = Visit()
    made.add(Arrived(), 0)
    made.add(Placed("kitchen", "kitchen"), 1, place="kitchen")
    made.add(Listed("range", "range"), 2, place="kitchen", component="range")
    oven = made.add(Ran("oven on", left="on"), 10, component="range")
    made.add(Stopped(of=oven), 40, component="range")
    made.add(Ran("fan <b>on</b>", left="on", kind="exhaust-fan"), 20)
    made.add(Left(), 60)
    return made


def test_the_visit_is_drawn_to_scale(shipped: Packs) -> None:
    record = running_visit().record()
    root = parsed(visit_drawing(record, names_of(record, shipped)))
    bars = [(float(r.get("x", "")), float(r.get("width", ""))) for r in root.iter(f"{SVG}rect")]
    assert len(bars) == 2
    (x1, w1), (x2, w2) = bars
    assert w2 / w1 == pytest.approx(40 / 30, rel=0.01), "30 minutes, and 40 until the inspector left"
    assert (x2 - x1) / w1 == pytest.approx(10 / 30, rel=0.02)


def test_without_anything_left_running_there_is_no_drawing(shipped: Packs) -> None:
    record = Visit().record()
    assert visit_drawing(record, names_of(record, shipped)) is None
    assert outlook_drawing((), ENGLISH) is None


def test_words_of_users_cannot_become_markup(shipped: Packs) -> None:
    made = Visit()
    made.add(Listed("range", '<script>alert("1")</script>&'), 1, component="range")
    made.add(Ran("on", left="on"), 10, component="range")
    record = made.record()
    root = parsed(visit_drawing(record, names_of(record, shipped)))
    assert not list(root.iter(f"{SVG}script"))
    assert any("<script>" in said for said in words(root))


@pytest.mark.parametrize("age", [0, 12, 70])
def test_the_outlook_is_drawn_to_scale_and_open_ends_stay_open(age: int) -> None:
    rows = [
        Outlook("Boiler", "cellar", age, 15, 30, "", "A", ()),
        Outlook("Boiler", "cellar", age, 50, None, "", "B", ()),
        Outlook("Boiler", "cellar", age, 20, 20, "", "C", ()),
    ]
    drawing = outlook_drawing(rows, ENGLISH)
    root = parsed(drawing)
    closed, open_ = list(root.iter(f"{SVG}rect"))
    assert closed.get("fill") != "none"
    assert open_.get("fill") == "none"
    left = float(closed.get("x", ""))
    ring = float(next(iter(root.iter(f"{SVG}circle"))).get("cx", ""))
    scale = float(closed.get("width", "")) / 15
    assert (ring - left) / scale == pytest.approx(age - 15, abs=0.2)
    assert drawing is not None
    assert "50 years and more" in drawing.says


def readings(shipped: Packs, measure: str, value: str, unit: str, kind: str) -> list[Drawing]:
    made = Visit()
    made.add(Read(measure, value, unit, kind=kind), 5)
    record = made.record()
    stands = standing(record, shipped, Job(id="", date="2026-02-03", year_built=2010), after(60))
    strips = [strip_drawing(value, unit, row, ENGLISH) for row in stands.readings]
    return [strip for strip in strips if strip is not None]


def test_a_reading_stands_on_the_right_side_of_its_limit_in_any_unit(shipped: Packs) -> None:
    for value, unit in (("88", "[psi]"), ("607", "kPa")):
        strip = next(s for s in readings(shipped, "water-pressure", value, unit, "hose-bib") if "beyond" in s.says)
        root = parsed(strip)
        dot = float(next(iter(root.iter(f"{SVG}circle"))).get("cx", ""))
        band = next(iter(root.iter(f"{SVG}rect")))
        assert dot > float(band.get("x", "")) + float(band.get("width", "")), "80 psi is the most"
        assert "80 psi" in words(root)
    inside = [s for s in readings(shipped, "water-pressure", "60", "[psi]", "hose-bib") if "within" in s.says]
    for strip in inside:
        root = parsed(strip)
        dot = float(next(iter(root.iter(f"{SVG}circle"))).get("cx", ""))
        band = next(iter(root.iter(f"{SVG}rect")))
        assert float(band.get("x", "")) <= dot <= float(band.get("x", "")) + float(band.get("width", ""))
    assert inside


def test_what_cannot_stand_on_one_scale_has_no_strip(shipped: Packs) -> None:
    assert readings(shipped, "water-pressure", "60", "[degF]", "hose-bib") == []
    assert readings(shipped, "water-pressure", "many", "[psi]", "hose-bib") == []


def floor_of(*spots: tuple[str, str]) -> Visit:
    made = Visit()
    made.add(Placed("cellar", "basement"), 1, place="cellar")
    for spot, value in spots:
        made.add(Read("level", value, "[in_i]", spot=spot), place="cellar")
    return made


def test_levels_are_drawn_where_they_were_read(shipped: Packs) -> None:
    record = floor_of(("0 ft, 0 ft", "0"), ("12 ft, 0 ft", "1"), ("0 ft, 8 ft", "0"), ("12 ft, 8 ft", "1")).record()
    (drawing,) = level_drawings(record, names_of(record, shipped))
    root = parsed(drawing)
    dots = {(round(float(c.get("cx", ""))), round(float(c.get("cy", "")))) for c in root.iter(f"{SVG}circle")}
    assert len(dots) == 4
    xs, ys = sorted({x for x, _ in dots}), sorted({y for _, y in dots})
    assert (xs[1] - xs[0]) / (ys[1] - ys[0]) == pytest.approx(12 / 8, rel=0.01)
    lines = [p.get("d", "") for p in root.iter(f"{SVG}path")]
    assert lines, "a floor that falls one inch has lines"
    assert "from 0 to 1 in" in drawing.says


@pytest.mark.parametrize(
    "spots",
    [
        [("0 ft, 0 ft", "0"), ("1 ft, 0 ft", "0"), ("2 ft, 0 ft", "0"), ("3 ft, 0 ft", "0")],
        [("by the door", "0"), ("in the middle", "1"), ("hearth", "0"), ("x, y", "0")],
        [("0 ft, 0 ft", "0"), ("1 ft, 1 ft", "1")],
    ],
)
def test_readings_without_a_plan_give_no_lines(shipped: Packs, spots: list[tuple[str, str]]) -> None:
    record = floor_of(*spots).record()
    assert level_drawings(record, names_of(record, shipped)) == ()


def test_moisture_stands_where_it_was_read_and_nowhere_else(shipped: Packs) -> None:
    made = Visit()
    made.add(Placed("cellar", "basement"), 1, place="cellar")
    for spot, value in (("0 ft, 0 ft", "12"), ("6 ft, 1 ft", "24"), ("10 ft, 4 ft", "14"), ("by the door", "40")):
        made.add(Read("wood-moisture", value, "%", spot=spot), place="cellar")
    record = made.record()
    (drawn,) = moisture_drawings(record, names_of(record, shipped))
    root = parsed(drawn)
    dots = [(float(c.get("cx", "")), float(c.get("r", ""))) for c in root.iter(f"{SVG}circle")]
    assert len(dots) == 3, "one for each reading that says where"
    (x1, r1), (x2, r2), (x3, r3) = dots
    assert (x2 - x1) / (x3 - x1) == pytest.approx(6 / 10, rel=0.02)
    assert r2 > r3 > r1, "the damper, the larger"
    assert not list(root.iter(f"{SVG}path")), "nothing is drawn between"
    assert "from 12 to 24" in drawn.says
    assert moisture_drawings(Visit().record(), names_of(Visit().record(), shipped)) == ()


def whole(shipped: Packs) -> Letter:
    made = running_visit()
    made.add(Read("water-pressure", "88", "[psi]", kind="hose-bib"), 30)
    for spot, value in (("0 ft, 0 ft", "0"), ("12 ft, 0 ft", "1"), ("0 ft, 8 ft", "0"), ("12 ft, 8 ft", "1")):
        made.add(Read("level", value, "[in_i]", spot=spot), 31, place="kitchen")
    job = Job("0199e000-0000-7000-8000-000000000001", date=JOB.date, rulebook="us.wa.308-408c")
    record = made.record()
    stands = standing(record, shipped, job, after(120))
    return compose(job, record, shipped, stands, media=lambda _: None, issued=after(600))


def test_drawings_stand_in_page_and_pdf_and_not_in_the_data(shipped: Packs, tmp_path: Path) -> None:
    letter = whole(shipped)
    assert {row.part for row in letter.drawings} >= {"started", "readings"}
    write_html(letter, tmp_path)
    page = (tmp_path / "index.html").read_text(encoding="utf-8")
    assert page.count("<svg") == len(letter.drawings)
    assert page.count('role="img"') == len(letter.drawings)
    assert write_pdf(letter, tmp_path / "report.pdf") == ()
    assert "<svg" not in (tmp_path / "report.json").read_text(encoding="utf-8")


def test_a_letter_without_drawings_is_a_letter(tmp_path: Path) -> None:
    letter = replace(letter_of(given(tmp_path / "media")), drawings=())
    write_html(letter, tmp_path)
    assert "<svg" not in (tmp_path / "index.html").read_text(encoding="utf-8")
