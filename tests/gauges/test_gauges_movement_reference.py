"""Plane fit, triangles and contours held against NumPy and SciPy over random surveys."""

from __future__ import annotations

import math
import random
from fractions import Fraction

import numpy as np
import pytest
from scipy.interpolate import LinearNDInterpolator
from scipy.spatial import Delaunay

from witnessmark.gauges.movement import Point, contours, fit, left_over, triangulate

_SURVEYS = 60


def made(seed: int, *, grid: bool = False) -> tuple[Point, ...]:
    draw = random.Random(seed)  # noqa: S311 - drawn to be the same at each run, not secret
    spots: set[tuple[int, int]] = set()
    step = 4 if grid else 1
    while len(spots) < draw.randint(5, 40):
        spots.add((draw.randrange(0, 60, step), draw.randrange(0, 44, step)))
    return tuple(Point(Fraction(x), Fraction(y), Fraction(draw.randint(-300, 300), 100)) for x, y in sorted(spots))


@pytest.mark.parametrize("seed", range(_SURVEYS))
def test_the_plane_is_that_of_numpy(seed: int) -> None:
    """numpy.linalg.lstsq; the tolerance is what its own double precision leaves at these sizes."""
    points = made(seed)
    table = np.array([(float(p.x), float(p.y), 1.0) for p in points])
    heights = np.array([float(p.height) for p in points])
    want, *_ = np.linalg.lstsq(table, heights, rcond=None)
    plane = fit(points)
    assert [float(plane.a), float(plane.b), float(plane.c)] == pytest.approx(want, abs=1e-10)
    rest = heights - table @ want
    assert [float(one) for one in left_over(points, plane)] == pytest.approx(rest, abs=1e-10)


@pytest.mark.parametrize("seed", range(20))
def test_places_in_one_line_get_the_solution_of_least_length_of_numpy(seed: int) -> None:
    draw = random.Random(seed)  # noqa: S311 - drawn to be the same at each run, not secret
    dx, dy = draw.randint(1, 9), draw.randint(-9, 9)
    points = tuple(
        Point(Fraction(dx * k), Fraction(dy * k), Fraction(draw.randint(-200, 200), 100)) for k in range(-4, 5)
    )
    table = np.array([(float(p.x), float(p.y), 1.0) for p in points])
    want, *_ = np.linalg.lstsq(table, np.array([float(p.height) for p in points]), rcond=None)
    plane = fit(points)
    assert plane.in_line
    assert [float(plane.a), float(plane.b)] == pytest.approx(want[:2], abs=1e-10)


@pytest.mark.parametrize("seed", range(30))
def test_the_slope_error_is_that_of_the_covariance_of_numpy(seed: int) -> None:
    points = made(seed)
    table = np.array([(float(p.x), float(p.y), 1.0) for p in points])
    plane = fit(points)
    covariance = np.linalg.inv(table.T @ table)[:2, :2]
    down = np.array([float(plane.a), float(plane.b)])
    down /= math.hypot(*down)
    want = 0.1 * math.sqrt(down @ covariance @ down) / 12
    assert plane.slope_error(0.1) == pytest.approx(want, rel=1e-8)


@pytest.mark.parametrize("seed", range(_SURVEYS))
def test_the_triangles_are_those_of_scipy_where_no_four_places_share_a_circle(seed: int) -> None:
    """scipy.spatial.Delaunay (Qhull); slanted a little so that no four places stand on one circle."""
    points = [(p.x + p.y * p.y / Fraction(977), p.y + p.x * p.x / Fraction(1291)) for p in made(seed)]
    want = {frozenset(int(k) for k in face) for face in Delaunay([(float(x), float(y)) for x, y in points]).simplices}
    assert {frozenset(face) for face in triangulate(points)} == want


@pytest.mark.parametrize("seed", range(_SURVEYS))
def test_triangles_cover_the_outline_once_also_on_a_grid(seed: int) -> None:
    points = made(seed, grid=True)
    faces = triangulate([(p.x, p.y) for p in points])

    def area(face: tuple[int, int, int]) -> Fraction:
        a, b, c = (points[k] for k in face)
        return ((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)) / 2

    assert all(area(face) > 0 for face in faces)
    hull = Delaunay([(float(p.x), float(p.y)) for p in points]).convex_hull
    middle = [sum(float(getattr(points[k], axis)) for edge in hull for k in edge) / (2 * len(hull)) for axis in "xy"]
    whole = sum(
        abs(
            (float(points[i].x) - middle[0]) * (float(points[j].y) - middle[1])
            - (float(points[j].x) - middle[0]) * (float(points[i].y) - middle[1])
        )
        / 2
        for i, j in hull
    )
    assert float(sum(area(face) for face in faces)) == pytest.approx(whole, rel=1e-9)
    assert {k for face in faces for k in face} == set(range(len(points)))


@pytest.mark.parametrize("seed", range(20))
def test_every_corner_of_a_contour_lies_at_its_height_on_the_surface_of_scipy(seed: int) -> None:
    """scipy.interpolate.LinearNDInterpolator over the same triangles."""
    slanted = [Point(p.x + p.y * p.y / Fraction(977), p.y + p.x * p.x / Fraction(1291), p.height) for p in made(seed)]
    points = tuple(slanted)
    surface = LinearNDInterpolator(
        Delaunay([(float(p.x), float(p.y)) for p in points]), [float(p.height) for p in points]
    )
    lines = contours(points, tuple(p.height for p in points), Fraction(1, 2))
    assert lines
    looked = 0
    for line in lines:
        for (ax, ay), (bx, by) in zip(line.corners, line.corners[1:], strict=False):
            # the middle of a step lies inside a triangle, where no rounding can put it outside the outline
            have = float(surface((float(ax + bx) / 2, float(ay + by) / 2)))
            if not math.isnan(have):
                looked += 1
                assert have == pytest.approx(float(line.level), abs=1e-7)
    assert looked > 10


def test_contours_keep_the_higher_floor_to_their_right() -> None:
    square = tuple(Point(Fraction(x), Fraction(y), Fraction(x)) for x in (0, 2) for y in (0, 2))
    (line, *_) = contours(square, tuple(p.height for p in square), Fraction(1))
    assert line.corners[0][1] < line.corners[-1][1], "going north, the higher side (east) is on the right"


def test_a_hill_has_closed_contours() -> None:
    hill = tuple(
        Point(Fraction(x), Fraction(y), Fraction(8 - x * x - y * y)) for x in range(-2, 3) for y in range(-2, 3)
    )
    lines = contours(hill, tuple(p.height for p in hill), Fraction(7, 2))
    closed = [line for line in lines if line.level == 7]
    assert [line.closed for line in closed] == [True]
    assert closed[0].corners[0] == closed[0].corners[-1]
