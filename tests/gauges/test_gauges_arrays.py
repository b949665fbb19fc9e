"""Arrays give what the scalar code gives, with NumPy and without, and refuse what cannot be."""

import math
import subprocess
import sys

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from hypothesis.extra import numpy as arrays_of

from witnessmark.gauges import arrays
from witnessmark.gauges.air import dew_point_celsius
from witnessmark.gauges.wood import emc_percent
from witnessmark.problems import Refusal

PAIRS = (
    (arrays.equilibrium_moisture_content, emc_percent, -50, 132.3),
    (arrays.dew_point, dew_point_celsius, -100, 200),
)


@pytest.mark.parametrize(("array", "scalar", "low", "high"), PAIRS, ids=["emc", "dew"])
def test_arrays_equal_the_scalar_code(array, scalar, low, high) -> None:  # type: ignore[no-untyped-def]  # parametrised
    drawn = np.random.default_rng(7)
    t, h = drawn.uniform(low, high, 30_000), drawn.uniform(1e-6, 1, 30_000)
    t[:4], h[:4] = (0.0, 0.01, 0.0100001, -0.01), 1.0
    have = array(t, h)
    want = np.array([scalar(a, b) for a, b in zip(t.tolist(), h.tolist(), strict=True)])
    assert (np.isnan(have) == np.isnan(want)).all()
    assert np.nanmax(np.abs(have - want)) < 1e-9


@settings(max_examples=40, deadline=None)
@given(
    arrays_of.arrays(np.float64, arrays_of.array_shapes(max_dims=3, max_side=5), elements=st.floats(-40, 60)),
    st.floats(0.01, 1),
)
def test_one_humidity_serves_a_whole_series_of_any_shape(t: np.ndarray, h: float) -> None:
    for array, scalar in ((one[0], one[1]) for one in PAIRS):
        have = np.asarray(array(t, h))
        assert have.shape == t.shape
        for where in np.ndindex(t.shape):
            assert have[where] == pytest.approx(scalar(float(t[where]), h), abs=1e-9)


def test_without_numpy_lists_come_back(monkeypatch: pytest.MonkeyPatch) -> None:
    t, h = [20.0, -5.0, math.nan], [0.5, 0.8, 0.5]
    with_numpy = [np.asarray(one[0](t, h)) for one in PAIRS]
    monkeypatch.setattr(arrays, "NUMPY", False)
    for one, expected in zip(PAIRS, with_numpy, strict=True):
        plain = one[0](t, h)
        assert isinstance(plain, list)
        assert plain[:2] == pytest.approx(list(expected[:2]), abs=1e-9)
        assert math.isnan(plain[2])
        assert one[0](20.0, [0.5, 0.6]) == [one[1](20.0, 0.5), one[1](20.0, 0.6)]
        with pytest.raises(Refusal):
            one[0]([20.0], [50.0])
        with pytest.raises(Refusal):
            one[0]([20.0, 21.0], [0.5])


def test_the_package_needs_no_numpy() -> None:
    code = (
        "import sys; sys.modules['numpy'] = None\n"
        "from witnessmark.gauges.arrays import dew_point, equilibrium_moisture_content as emc\n"
        "print(emc([20.0], [0.5]), dew_point([20.0], 0.5))"
    )
    ran = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert ran.stdout.startswith("[9.27")


def test_a_gap_stays_a_gap_and_dry_air_has_no_dew_point() -> None:
    have = np.asarray(arrays.dew_point([20.0, math.nan, 20.0, 20.0], [0.5, 0.5, math.nan, 0.0]))
    assert np.isnan(have).tolist() == [False, True, True, True]
    assert np.asarray(arrays.dew_point([], [])).size == 0


@pytest.mark.parametrize(
    ("t", "h", "where"),
    [
        ([20.0, 21.0], [0.5, 50.0], "humidity[1]"),
        ([20.0], [-0.1], "humidity[0]"),
        ([20.0, 900.0], [0.5, 0.5], "celsius[1]"),
        ([20.0, math.inf], [0.5, 0.5], "celsius[1]"),
        ([20.0, 21.0], [0.5, 0.5, 0.5], "celsius and humidity"),
    ],
)
def test_a_percentage_and_what_cannot_be_are_refused_by_place(t: list[float], h: list[float], where: str) -> None:
    for one in PAIRS:
        with pytest.raises(Refusal) as refused:
            one[0](t, h)
        assert refused.value.problems[0].where == where
        assert refused.value.problems[0].number == "WM006"
