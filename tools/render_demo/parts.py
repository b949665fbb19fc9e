"""Parts of houses that several scenes need: siding, shingles, brickwork, plants, tapes, receptacles, framing."""

from __future__ import annotations

from collections.abc import Sequence

from render_demo.drawings import tape
from render_demo.engine import INCH, np
from render_demo.solids import box, card, cylinder, many
from render_demo.studio import Vec
from render_demo.surfaces import paint, picture, tinted
from render_demo.untyped import Untyped

__all__ = [
    "BALL",
    "BLADE",
    "LEAF",
    "blades",
    "boards",
    "bricks",
    "clumps",
    "conifer",
    "fibres",
    "receptacle",
    "shingles",
    "siding",
    "steel_tape",
    "window",
]  # fmt: skip

#: A blade of grass or a needle: a bent strip of unit height.
BLADE = (
    np.array([(-0.5, 0, 0), (0.5, 0, 0), (0.32, 0.25, 0.6), (-0.32, 0.25, 0.6), (0.03, 0.8, 1), (-0.03, 0.8, 1)]),
    [(0, 1, 2, 3), (3, 2, 4, 5)],
)
#: A folded leaf.
LEAF = (np.array([(0, 0, 0), (0.5, 0.5, 0.12), (0, 1, 0.05), (-0.5, 0.5, 0.12)]), [(0, 1, 2, 3)])
_RINGS = [(np.cos(a), np.sin(a)) for a in np.linspace(-np.pi / 2, np.pi / 2, 6)]
#: A coarse ball of unit diameter.
BALL = (
    np.array(
        [
            (0.5 * r * np.cos(t), 0.5 * r * np.sin(t), 0.5 * z)
            for r, z in _RINGS
            for t in np.linspace(0, 2 * np.pi, 8, endpoint=False)
        ]
    ),
    [(r * 8 + c, r * 8 + (c + 1) % 8, (r + 1) * 8 + (c + 1) % 8, (r + 1) * 8 + c) for r in range(5) for c in range(8)],
)


def siding(
    wide: float, high: float, at: Vec, look: Untyped, *, lap: float = 8 * INCH, turn: float = 0.0, seed: int = 1
) -> Untyped:
    """Lapped boards on a wall facing −y; *at* is the middle of its lower edge."""
    count = int(np.ceil(high / lap))
    places = [(0, 0, (i + 0.5) * lap) for i in range(count)]
    return many(
        places,
        (wide, 0.011, lap + 0.025),
        look,
        turns=(-0.055, 0, 0),
        seed=seed,
        bevel=0.0015,
        at=at,
        turn=(0, 0, turn),
    )


def shingles(
    wide: float,
    long: float,
    look: Untyped,
    *,
    at: Vec,
    turn: Vec,
    tab: float = 0.3,
    course: float = 0.14,
    seed: int = 2,
) -> Untyped:
    """Courses of tabs on a slope lying in x and y (y upward along the slope), its lower middle edge at *at*."""
    rng = np.random.default_rng(seed)
    rows, cols = int(long / course), int(wide / tab) + 1
    r, c = np.meshgrid(np.arange(rows), np.arange(cols), indexing="ij")
    x = (c - cols / 2 + 0.5 * (r % 2) + rng.normal(0, 0.02, r.shape) + 0.17 * ((r * 7) % 3)) * tab
    y = (r + 0.7 + rng.normal(0, 0.012, r.shape)) * course
    z = 0.006 + rng.normal(0, 0.0012, r.shape)
    places = np.stack([x, y, z], -1).reshape(-1, 3)
    sizes = np.stack(
        [tab - rng.uniform(0.004, 0.009, r.shape), np.full(r.shape, course * 1.5), np.full(r.shape, 0.006)], -1
    )
    turns = np.stack([np.full(r.shape, -0.035), rng.normal(0, 0.004, r.shape), rng.normal(0, 0.006, r.shape)], -1)
    return many(
        places, sizes.reshape(-1, 3), look, turns=turns.reshape(-1, 3), seed=seed, bevel=0.0015, at=at, turn=turn
    )


def bricks(wide: float, high: float, look: Untyped, mortar: Untyped, *, at: Vec, turn: Vec = (0, 0, 0), deep: float = 0.09, joint: float = 0.01,
           brick: tuple[float, float] = (0.203, 0.062), seed: int = 3, skip: Untyped = None) -> None:  # fmt: skip
    """Running bond facing −y with its lower middle at *at*; *skip*(x, z) leaves bricks out."""
    rng = np.random.default_rng(seed)
    rows, cols = int(high / (brick[1] + joint)), int(wide / (brick[0] + joint)) + 2
    r, c = np.meshgrid(np.arange(rows), np.arange(cols), indexing="ij")
    x = ((c - cols / 2 + 0.5 + 0.5 * (r % 2)) * (brick[0] + joint)).ravel() + rng.normal(0, 0.0015, rows * cols)
    z = ((r + 0.5) * (brick[1] + joint)).ravel()
    left, right = np.maximum(x - brick[0] / 2, -wide / 2), np.minimum(x + brick[0] / 2, wide / 2)
    keep = right - left > 0.03
    if skip is not None:
        keep &= ~np.array([skip(a, b) for a, b in zip(x, z, strict=True)])
    x, z, span = ((left + right) / 2)[keep], z[keep], (right - left)[keep]
    places = np.stack([x, rng.normal(0, 0.0015, len(x)), z], -1)
    turns = rng.normal(0, 0.006, (len(x), 3))
    many(
        places,
        np.stack([span, np.full(len(x), deep), np.full(len(x), brick[1])], -1),
        look,
        turns=turns,
        bevel=0.003,
        at=at,
        turn=turn,
        seed=seed,
    )
    if mortar is not None:
        from render_demo.solids import mesh

        w, h = wide / 2 - 0.004, high
        mesh(
            [(-w, 0, 0), (w, 0, 0), (w, 0, h), (-w, 0, h)],
            [(0, 1, 2, 3)],
            mortar,
            at=_shift(at, turn, -deep / 2 + 0.006),
            turn=turn,
        )


def _shift(at: Vec, turn: Vec, back: float) -> Vec:
    angle = np.radians(turn[2])
    return (float(at[0] - np.sin(angle) * back), float(at[1] + np.cos(angle) * back), at[2])


def blades(
    places: Untyped, look: Untyped, *, high: float, wide: float, seed: int = 4, lean: float = 0.35, vary: float = 0.4
) -> Untyped:
    """Grass at *places*: bent blades about *high* by *wide* metres."""
    rng = np.random.default_rng(seed)
    count = len(places)
    size = high * (1 + vary * rng.normal(0, 1, count)).clip(0.2)
    sizes = np.stack([np.full(count, wide), size * 0.5, size], -1)
    turns = np.stack([rng.normal(0, lean, count), rng.normal(0, lean, count), rng.uniform(0, 6.3, count)], -1)
    return many(places, sizes, look, turns=turns, base=BLADE, seed=seed)


def clumps(
    places: Untyped, look: Untyped, *, size: float, seed: int = 5, flat: float = 0.6, vary: float = 0.5
) -> Untyped:
    """Small rounded lumps at *places*: moss, clods, crumbs, popcorn texture."""
    rng = np.random.default_rng(seed)
    count = len(places)
    big = size * np.exp(rng.normal(0, vary, count))
    sizes = np.stack([big * rng.uniform(0.7, 1.3, count), big * rng.uniform(0.7, 1.3, count), big * flat], -1)
    turns = rng.uniform(-0.5, 0.5, (count, 3)) * np.array([1, 1, 6])
    return many(places, sizes, look, turns=turns, base=BALL, seed=seed, smooth=True)


def fibres(places: Untyped, look: Untyped, *, long: float, thick: float, seed: int = 6, flat: float = 1.2) -> Untyped:
    """Needles, straws, lint or glass fibres lying about *places* in all directions (*flat* is the spread of their tilt)."""
    rng = np.random.default_rng(seed)
    count = len(places)
    sizes = np.stack(
        [np.full(count, thick), long * rng.uniform(0.1, 0.5, count), long * rng.uniform(0.5, 1.3, count)], -1
    )
    turns = np.stack(
        [np.pi / 2 + rng.normal(0, flat, count), rng.normal(0, 0.4, count), rng.uniform(0, 6.3, count)], -1
    )
    return many(places, sizes, look, turns=turns, base=BLADE, seed=seed)


def conifer(at: Vec, high: float, *, seed: int, look: Untyped = None) -> None:
    """A fir of drooping sprays."""
    look = look or tinted((0, (0.012, 0.028, 0.016)), (1, (0.045, 0.085, 0.04)), roughness=0.9)
    rng = np.random.default_rng(seed)
    count = 9000
    up = 1 - np.sqrt(rng.random(count)) * 0.95
    reach = (1 - up) * high * 0.24 * rng.uniform(0.25, 1.05, count) * (1 + 0.25 * np.sin(up * 60))
    angle = rng.uniform(0, 6.283, count)
    places = np.stack(
        [at[0] + reach * np.cos(angle), at[1] + reach * np.sin(angle), at[2] + up * high - reach * 0.25], -1
    )
    size = high * 0.032 * (1.2 - up)
    sizes = np.stack([size, size * 2.4, size], -1)
    turns = np.stack(
        [np.full(count, -0.5) + rng.normal(0, 0.25, count), rng.normal(0, 0.3, count), angle - np.pi / 2], -1
    )
    many(places, sizes, look, turns=turns, base=LEAF, seed=seed)


def steel_tape(
    inches: float, at: Vec, *, turn: Vec = (0, 0, 0), start: float = 0.0, upright: bool = False, wide: float = 1.0
) -> None:
    """A length of steel tape with its zero end at *at*, running along +x before *turn*, facing −y."""
    long = inches * INCH
    blade = picture(tape(inches, start=start, upright=upright), 0.3)
    import math

    card_turn = turn
    rx, ry, rz = (math.radians(t) for t in turn)
    x, y, z = long / 2, 0.0, 0.0
    # The rotation that Blender applies (x, then y, then z), for the way from the end to the middle of the blade.
    y, z = y * math.cos(rx) - z * math.sin(rx), y * math.sin(rx) + z * math.cos(rx)
    x, z = x * math.cos(ry) + z * math.sin(ry), -x * math.sin(ry) + z * math.cos(ry)
    x, y = x * math.cos(rz) - y * math.sin(rz), x * math.sin(rz) + y * math.cos(rz)
    card(long, wide * INCH, blade, (at[0] + x, at[1] + y, at[2] + z), card_turn)


def receptacle(at: Vec, *, plate: Untyped = None, body: Untyped = None) -> None:
    """A duplex receptacle with its cover, facing −y; *at* is the middle of the cover on the wall."""
    plate = plate or paint((0.80, 0.79, 0.74), 0.35)
    body = body or paint((0.78, 0.77, 0.72), 0.3)
    dark = paint((0.015, 0.015, 0.015), 0.7)
    x, y, z = at
    box((0.070, 0.006, 0.114), (x, y - 0.003, z), plate, bevel=0.004)
    for up in (0.0195, -0.0195):
        cylinder(0.0172, 0.006, (x, y - 0.0055, z + up), body, turn=(90, 0, 0), edge=0.002)
        box((0.030, 0.006, 0.022), (x, y - 0.0053, z + up), body, bevel=0.002)
        box((0.0022, 0.004, 0.0085), (x - 0.0063, y - 0.0078, z + up + 0.003), dark, bevel=0)
        box((0.0022, 0.004, 0.0070), (x + 0.0063, y - 0.0078, z + up + 0.003), dark, bevel=0)
        cylinder(0.0026, 0.004, (x, y - 0.0078, z + up - 0.0075), dark, turn=(90, 0, 0))
    cylinder(0.0032, 0.002, (x, y - 0.0068, z), paint((0.7, 0.7, 0.66), 0.3), turn=(90, 0, 0))


def window(
    wide: float,
    high: float,
    at: Vec,
    *,
    frame: Untyped,
    glass: Untyped,
    bars: Sequence[float] = (0.0,),
    deep: float = 0.06,
) -> None:
    """A window in a wall facing −y: outer trim, sash, upright *bars* at shares of the width, dark glass behind."""
    x, y, z = at
    t = 0.07
    for dx, dz, w, h in (
        (0, high / 2, wide + 2 * t, t),
        (0, -high / 2, wide + 2 * t, t),
        (-wide / 2, 0, t, high),
        (wide / 2, 0, t, high),
    ):
        box((w, deep, h), (x + dx, y - deep / 3, z + dz), frame, bevel=0.004)
    for share in bars:
        box((0.05, deep * 0.8, high), (x + share * wide, y - deep / 4, z), frame, bevel=0.003)
    box((wide, 0.01, high), (x, y, z), glass, bevel=0)


def boards(wide: float, deep: float, at: Vec, look: Untyped, *, board: float = 0.14, along: str = "y") -> None:
    """Floor, deck or roof boards close together, each its own board."""
    across = wide if along == "y" else deep
    for i in range(int(across / board)):
        off = (i + 0.5) * board - across / 2
        size = (board - 0.005, deep, 0.022) if along == "y" else (wide, board - 0.005, 0.022)
        box(size, (at[0] + off, at[1], at[2]) if along == "y" else (at[0], at[1] + off, at[2]), look, bevel=0.002)
