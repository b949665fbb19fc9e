"""A surface through scattered places: triangles that hold no other place in the circle through their corners."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from math import lcm

__all__ = ["triangulate"]

_XY = tuple[int, int]


def _turn(a: _XY, b: _XY, c: _XY) -> int:
    """More than 0 when a, b, c turn left, 0 in one line."""
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def _inside(a: _XY, b: _XY, c: _XY, d: _XY) -> bool:
    """Whether *d* lies inside the circle through a, b, c, which turn left."""
    rows = [(p[0] - d[0], p[1] - d[1]) for p in (a, b, c)]
    (ax, ay), (bx, by), (cx, cy) = rows
    aa, bb, cc = (x * x + y * y for x, y in rows)
    return ax * (by * cc - bb * cy) - ay * (bx * cc - bb * cx) + aa * (bx * cy - by * cx) > 0


def _sweep(order: list[int], at: list[_XY]) -> list[tuple[int, int, int]]:
    """Any triangulation: places from left to right, each joined to the edges of the outline that it sees."""
    first = next((k for k in range(2, len(order)) if _turn(at[order[0]], at[order[1]], at[order[k]])), None)
    if first is None:
        return []
    line, apex = order[:first], order[first]
    if _turn(at[line[0]], at[line[1]], at[apex]) < 0:
        line = line[::-1]
    made = [(line[k], line[k + 1], apex) for k in range(len(line) - 1)]
    outline = [*line, apex]
    for new in order[first + 1 :]:
        size = len(outline)
        seen = [_turn(at[outline[k]], at[outline[(k + 1) % size]], at[new]) < 0 for k in range(size)]
        start = next(k for k in range(size) if seen[k] and not seen[k - 1])
        end = start
        while seen[end % size]:
            made.append((outline[(end + 1) % size], outline[end % size], new))
            end += 1
        kept = [outline[k % size] for k in range(end, start + size + 1)]
        outline = [*kept, new]
    return made


def triangulate(places: Sequence[tuple[Fraction, Fraction]]) -> tuple[tuple[int, int, int], ...]:
    """The Delaunay triangulation of *places* (all different) as triples of their numbers, counterclockwise, sorted.

    Exact in whole numbers, and the same for any order of the places up to their numbers; of four places on one circle
    the diagonal is chosen by where they stand. Empty when all stand in one line.

    >>> triangulate([(Fraction(0), Fraction(0)), (Fraction(2), Fraction(0)), (Fraction(0), Fraction(1))])
    ((0, 1, 2),)
    """
    scale = lcm(1, *(one.denominator for place in places for one in place))
    at = [(int(x * scale), int(y * scale)) for x, y in places]
    faces = set(_sweep(sorted(range(len(at)), key=lambda k: at[k]), at))
    across = {edge: face for face in faces for edge in zip(face, (*face[1:], face[0]), strict=True)}
    waiting = sorted(across, key=lambda edge: (at[edge[0]], at[edge[1]]))
    while waiting:
        a, b = waiting.pop()
        here, there = across.get((a, b)), across.get((b, a))
        if here is None or there is None:
            continue
        c = next(k for k in here if k not in {a, b})
        d = next(k for k in there if k not in {a, b})
        if not _inside(at[a], at[b], at[c], at[d]):
            continue
        faces -= {here, there}
        for edge in ((a, b), (b, a)):
            del across[edge]
        for face in ((a, d, c), (d, b, c)):
            faces.add(face)
            for edge in zip(face, (*face[1:], face[0]), strict=True):
                across[edge] = face
        waiting += [(a, d), (d, b), (b, c), (c, a)]
    return tuple(sorted(_from_least(face) for face in faces))


def _from_least(face: tuple[int, int, int]) -> tuple[int, int, int]:
    k = face.index(min(face))
    return (face[k], face[(k + 1) % 3], face[(k + 2) % 3])
