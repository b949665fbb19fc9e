"""What every gauge owes: unit, range, source, error, what it must never claim, an example that works, a docstring."""

import math
from decimal import Decimal

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from gauge_inputs import inputs_for
from witnessmark.gauges import FAMILIES, Answer, Gauge, evaluate, gauges
from witnessmark.gauges.gauge import row_inputs
from witnessmark.gauges.typed import is_row
from witnessmark.problems import Refusal
from witnessmark.units import Quantity, dimension

GAUGES = list(gauges().values())
NAMES = [one.name for one in GAUGES]
#: Words that would promise what no measurement can.
PROMISES = ("is safe", "are safe", "complies", "compliant", "guarantee", "passes inspection", "up to code")


@pytest.mark.parametrize("one", GAUGES, ids=NAMES)
def test_a_gauge_says_all_that_must_be_known(one: Gauge) -> None:
    assert one.family in FAMILIES
    assert one.sources
    assert all(source.document for source in one.sources)
    assert len(one.never.split()) >= 4
    assert one.error
    assert one.gives
    doc = one.function.__doc__ or ""
    assert ">>>" in doc
    assert "Formula:" in doc or "Rule:" in doc, "the docstring shows neither the formula nor the rule"
    inputs = [*one.inputs]
    for each in one.inputs:
        if is_row(each.type):
            inputs += row_inputs(each.type)
    for each in inputs:
        assert each.asked.what, each.name
        if each.type is Quantity:
            assert dimension(each.asked.unit), each.name
            assert each.asked.example or each.many, f"{each.name} shows no example"
            assert each.asked.lowest is not None or each.asked.highest is not None or each.asked.least is not None, (
                f"{each.name} states no range"
            )


@pytest.mark.parametrize("one", GAUGES, ids=NAMES)
def test_the_example_answers_inside_the_range(one: Gauge) -> None:
    answer = evaluate(one.name, one.example)
    assert answer.words
    assert answer.sources
    assert answer.outside_range == ()
    sound(answer)


def sound(answer: Answer) -> None:
    numbers = [answer.value, *(also.value for also in answer.also), *(step.value for step in answer.steps)]
    numbers += [cell for row in (answer.table.rows if answer.table else ()) for cell in row]
    for number in numbers:
        if isinstance(number, Decimal):
            assert number.is_finite()
        assert not isinstance(number, float)
    for text in (answer.words, *answer.cautions):
        assert not any(promise in text.lower() for promise in PROMISES), text
        assert "nan" not in text.lower().split()
    if answer.value is not None:
        assert answer.unit
        assert dimension(answer.unit)
        assert not math.isnan(answer.value)


@pytest.mark.parametrize("one", GAUGES, ids=NAMES)
def test_no_surprise_over_the_whole_stated_range(one: Gauge) -> None:
    answered = []

    def look(data: st.DataObject) -> None:
        values = data.draw(inputs_for(one))
        try:
            answer = one.function(**values)
        except Refusal as refusal:
            assert refusal.problems[0].number.startswith("WM")  # noqa: PT017 - which refusal is the gauge's own affair
            return
        answered.append(answer)
        sound(answer)

    # Inputs that contradict each other are refused; a few gauges refuse most of what is drawn.
    for examples in (40, 400):
        kept = settings(max_examples=examples, deadline=None, suppress_health_check=list(HealthCheck), database=None,
                        derandomize=True)  # fmt: skip

        @kept
        @given(st.data())
        def drawn(data: st.DataObject) -> None:
            look(data)

        drawn()
        if answered:
            break
    assert answered, "every drawn input was refused"


@pytest.mark.parametrize("one", GAUGES, ids=NAMES)
def test_garbage_is_refused_with_a_number_and_nothing_else(one: Gauge) -> None:
    for rubbish in ("", "70", "one hundred", "118 furlongs", "-1e999F", "nan", "∞ psi", "5 5 5", "\x00", "a,b;c\n1,,2"):
        for each in one.inputs:
            try:
                evaluate(one.name, {**one.example, each.name: rubbish})
            except Refusal as refusal:
                assert refusal.problems[0].number  # noqa: PT017 - any numbered refusal will do
