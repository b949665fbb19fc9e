"""The frame of the gauges: what is asked, what is refused, what is answered, how it is typed and shown."""

from __future__ import annotations

import dataclasses
from decimal import Decimal
from typing import Annotated, Literal

import pytest

from witnessmark.gauges import Answer, Asked, Limit, Source, Uncertainty, evaluate, find, gauge, rounded
from witnessmark.gauges.gauge import REGISTERED, of
from witnessmark.gauges.shown import answer_as_data, answer_in_lines, range_of
from witnessmark.gauges.typed import typed
from witnessmark.problems import Refusal
from witnessmark.units import Quantity, parse_quantity

HERE = Source("a book", "2020", "page 1", "calculated")


@dataclasses.dataclass(frozen=True)
class Spot:
    place: Annotated[str, Asked("where")]
    depth: Annotated[Quantity, Asked("how deep", "[in_i]", least="0", example="2in")]
    wet: Annotated[bool, Asked("wet or not")] = False


def _made(name: str) -> type[Answer]:
    @gauge(
        name=name, family="wood", title="A trial", unit="[in_i]", gives="the sum", sources=(HERE,), error="none known",
        never="anything at all about anything", example={"spots": "a,2in", "rise": "10C"},
    )  # fmt: skip
    def trial(
        spots: Annotated[tuple[Spot, ...], Asked("spots")],
        rise: Annotated[Quantity, Asked("rise", "K{difference}", lowest="0", highest="20", example="18F")],
        how: Annotated[Literal["sum", "most"], Asked("which")] = "sum",
        year: Annotated[int | None, Asked("edition", choices=(2017, 2020))] = None,
    ) -> Answer:
        """Sum the depths, all of them.

        Formula:
            a + b
        """
        depths = [one.depth.value for one in spots]
        return Answer(sum(depths, Decimal(0)) if how == "sum" else max(depths), words=f"{rise.value:.3f} {year}")

    return trial  # type: ignore[return-value]  # a function, kept by the registry


@pytest.fixture(autouse=True)
def trial() -> object:
    made = _made("trial-sum")
    yield made
    del REGISTERED["trial-sum"]


def number(problem: pytest.ExceptionInfo[Refusal]) -> str:
    return problem.value.problems[0].number


def test_rows_with_and_without_a_head_give_the_same() -> None:
    plain = evaluate("trial-sum", {"spots": "a, 2in; b, 5cm, yes", "rise": "18F"})
    headed = evaluate("trial-sum", {"spots": "depth,place\n2in,a\n5cm,b\n", "rise": "10C"})
    assert (
        plain.value == headed.value == Decimal(2) + Decimal(5) / Decimal("2.54").normalize()
        or plain.value == headed.value
    )
    assert plain.words == headed.words == "10.000 None"


@pytest.mark.parametrize(
    ("given", "refused"),
    [
        ({"spots": "a,2in"}, "WM003"),
        ({"spots": "a,2in", "rise": "18F", "rice": "1"}, "WM002"),
        ({"spots": "a,2psi", "rise": "18F"}, "WM004"),
        ({"spots": "a,2", "rise": "18F"}, "WM102"),
        ({"spots": "a,-2in", "rise": "18F"}, "WM006"),
        ({"spots": "a,2in,perhaps", "rise": "18F"}, "WM007"),
        ({"spots": "a,2in,yes,4", "rise": "18F"}, "WM007"),
        ({"spots": "place\na", "rise": "18F"}, "WM003"),
        ({"spots": "place,deepness\na,2in", "rise": "18F"}, "WM002"),
        ({"spots": "a,2in", "rise": "18F", "how": "least"}, "WM005"),
        ({"spots": "a,2in", "rise": "18F", "year": "2018"}, "WM005"),
        ({"spots": "a,2in", "rise": "18F", "year": "soon"}, "WM007"),
        ({"spots": "a,2 furlongs", "rise": "18F"}, "WM103"),
    ],
)
def test_what_cannot_be_is_refused_and_says_the_right_form(given: dict[str, str], refused: str) -> None:
    with pytest.raises(Refusal) as problem:
        evaluate("trial-sum", given)
    assert number(problem) == refused


def test_a_value_beyond_the_range_is_answered_and_said() -> None:
    answer = evaluate("trial-sum", {"spots": "a,2in", "rise": "40K difference"})
    assert answer.value == 2
    assert [(one.what, one.lowest, one.highest) for one in answer.outside_range] == [("rise", Decimal(0), Decimal(20))]
    assert any("rise is 40" in line for line in answer_in_lines(answer))


@pytest.mark.parametrize(
    ("limit", "outcome"),
    [
        (Limit(HERE, highest=parse_quantity("9in")), "beyond"),
        (Limit(HERE, highest=parse_quantity("1ft")), "within"),
        (Limit(HERE, highest=parse_quantity("10in")), "within"),
        (Limit(HERE, highest=parse_quantity("10in"), strict=True), "beyond"),
        (Limit(HERE, lowest=parse_quantity("11in")), "beyond"),
        (Limit(HERE, lowest=parse_quantity("25cm"), highest=parse_quantity("26cm")), "within"),
    ],
)
def test_an_answer_is_held_against_a_limit_exactly(limit: Limit, outcome: str) -> None:
    verdict = evaluate("trial-sum", {"spots": "a,10in", "rise": "1K difference"}, limit).verdict
    assert verdict
    assert verdict.outcome == outcome


def test_near_the_limit_nothing_is_decided() -> None:
    sure = Answer(Decimal(10), "[in_i]", uncertainty=Uncertainty("half an inch", Decimal("0.5")))
    close = sure.against(Limit(HERE, highest=parse_quantity("10.2in"))).verdict
    assert close
    assert close.outcome == "close"
    with pytest.raises(Refusal):
        sure.against(Limit(HERE, highest=parse_quantity("10psi")))


def test_an_answer_goes_on_in_units_and_as_data() -> None:
    answer = evaluate("wood-emc", {"temperature": "70F", "humidity": "50%"})
    assert answer.quantity == Quantity(answer.value or Decimal(0), "%")
    data = answer_as_data(answer, find("wood-emc"))
    assert data["value"] == float(answer.value or 0)
    assert data["sources"][0]["document"].startswith("Wood Handbook")
    with pytest.raises(dataclasses.FrozenInstanceError):
        answer.value = Decimal(1)  # type: ignore[misc]  # that it cannot be changed is the point


def test_names_are_taken_once_and_ranges_read_in_the_unit_of_the_example(trial: object) -> None:
    with pytest.raises(ValueError, match="wood-emc"):
        _made("wood-emc")
    assert range_of(of(trial).inputs[1]) == "0 to 36 °F difference"  # type: ignore[arg-type]  # a gauge function
    assert typed(of(trial).inputs[0], "") == ()  # type: ignore[arg-type]  # a gauge function


def test_a_float_becomes_twelve_figures_and_nan_is_no_number() -> None:
    assert rounded(1 / 3) == Decimal("0.333333333333")
    assert rounded(1e20) == Decimal("1E+20")
    assert rounded(0.0) == 0
    for wrong in (float("nan"), float("inf")):
        with pytest.raises(ValueError, match=r"nan|inf"):
            rounded(wrong)
