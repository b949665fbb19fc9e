"""Hall: the thermostat as found, the smoke alarm's date."""

from __future__ import annotations

from render_demo.drawings import board, write
from render_demo.solids import box, card, cylinder, turned
from render_demo.studio import aim, overcast, panel_light, world
from render_demo.surfaces import Look, paint, picture, rough, wood

__all__ = ["p03", "p21"]


def p03() -> None:
    """Thermostat on the hall wall, set at 66."""
    look = Look("wall")
    skin = look.noise(130.0, detail=3)
    wall = look.done(look.ramp(look.noise(2.0), (0.3, (0.60, 0.56, 0.48)), (0.7, (0.66, 0.62, 0.54))), 0.75,
                     Normal=look.bump(skin, 0.0012))  # fmt: skip
    box((3, 0.1, 3), (0, 0.05, 0), wall)
    white = paint((0.82, 0.82, 0.79), 0.38)
    box((0.128, 0.026, 0.094), (0, -0.013, 0), white, bevel=0.007)
    box((0.132, 0.008, 0.098), (0, -0.004, 0), white, bevel=0.003)
    screen, pen = board(640, 400, (158, 172, 150, 255))
    write(pen, (330, 190), "66", 250, ink=(28, 34, 30), anchor="mm", heavy=4)
    write(pen, (500, 110), "°F", 60, ink=(28, 34, 30), anchor="lm", heavy=1)
    write(pen, (36, 60), "HEAT", 46, ink=(28, 34, 30), heavy=1)
    write(pen, (36, 350), "SET", 46, ink=(28, 34, 30), heavy=1)
    write(pen, (610, 350), "WED 9:08 AM", 42, ink=(28, 34, 30), anchor="rm")
    box((0.074, 0.003, 0.048), (-0.014, -0.0262, 0.010), paint((0.09, 0.09, 0.09), 0.3), bevel=0.001)
    card(0.070, 0.044, picture(screen, 0.25, glow_by=0.25), (-0.014, -0.0281, 0.010))
    button = paint((0.62, 0.64, 0.66), 0.45)
    for z, arrow in ((0.024, "▲"), (-0.003, "▼")):
        box((0.020, 0.006, 0.017), (0.043, -0.027, z), button, bevel=0.003)
        mark, pen = board(100, 100)
        pen.polygon(
            [(50, 25), (80, 75), (20, 75)] if arrow == "▲" else [(50, 75), (80, 25), (20, 25)], fill=(40, 40, 40, 255)
        )
        card(0.013, 0.013, picture(mark), (0.043, -0.0303, z))
    for x, words in ((-0.036, "SYSTEM"), (-0.006, "FAN"), (0.024, "HOLD")):
        box((0.019, 0.005, 0.008), (x, -0.0265, -0.031), button, bevel=0.002)
        mark, pen = board(200, 60)
        write(pen, (100, 30), words, 40, ink=(60, 60, 60), anchor="mm", heavy=1)
        card(0.019, 0.0055, picture(mark), (x, -0.0266, -0.0225))
    world((0.5, 0.5, 0.5), (0.5, 0.48, 0.45), (0.2, 0.18, 0.15), 0.25)
    panel_light((-1.6, -1.3, 1.4), (0, 0, 0), 0.7, 26)
    panel_light((0.9, -2.0, 0.2), (0, 0, 0), 1.0, 10, (0.8, 0.9, 1.0))
    aim((0.06, -0.36, 0.035), (0.004, 0, 0.0), lens=30, roll=-1.2, fstop=4)


def p21() -> None:
    """Back of a smoke alarm taken off its base, with the date label."""
    box((2, 2, 0.04), (0, 0, -0.02), wood((0.46, 0.30, 0.17), (0.27, 0.15, 0.075), roughness=0.35), bevel=0)
    old = paint((0.74, 0.68, 0.50), 0.5)
    rim = [
        (1e-4, 0.0),
        (0.060, 0.0),
        (0.066, 0.004),
        (0.068, 0.012),
        (0.067, 0.028),
        (0.064, 0.032),
        (0.060, 0.033),
        (0.058, 0.030),
    ]
    turned([*rim, (0.057, 0.027), (1e-4, 0.027)], old, (0, 0, 0))
    for angle_x, angle_y in ((0.052, 0.0), (-0.052, 0.0), (0.0, 0.052)):
        box((0.010, 0.006, 0.008), (angle_x, angle_y, 0.029), old, bevel=0.001)
    box((0.040, 0.020, 0.006), (0.0, 0.040, 0.029), paint((0.12, 0.12, 0.12)), bevel=0.002)
    cylinder(0.004, 0.008, (0.035, 0.033, 0.030), paint((0.6, 0.1, 0.08)))
    tag, pen = board(900, 600, (233, 229, 214, 255))
    pen.rectangle((14, 14, 886, 586), outline=(40, 40, 40), width=5)
    write(pen, (450, 66), "SMOKE ALARM   120 V~ 60 Hz  0.04 A", 42, ink=(30, 30, 30), anchor="mm", heavy=1)
    pen.line((14, 112, 886, 112), fill=(40, 40, 40), width=4)
    write(pen, (50, 170), "IONIZATION TYPE    MODEL  ELDER-12", 38, ink=(30, 30, 30))
    write(pen, (50, 262), "DATE OF MANUFACTURE", 40, ink=(30, 30, 30))
    write(pen, (50, 345), "2013 APR 18", 104, ink=(20, 20, 20), heavy=3)
    write(pen, (50, 440), "REPLACE TEN YEARS AFTER THIS DATE", 40, ink=(150, 25, 20), heavy=1)
    write(pen, (50, 520), "TEST WEEKLY.  DO NOT PAINT.", 36, ink=(30, 30, 30))
    for i in range(70):
        if (i * 37) % 5:
            pen.line((640 + i * 3, 150, 640 + i * 3, 330), fill=(25, 25, 25), width=1 + (i * 13) % 3)
    label = Look("label")
    laid = label.image(tag)
    yellowed = label.blend(label.level(label.noise(30.0), 0.4, 0.8), (1, 1, 1), (0.85, 0.74, 0.5))
    paper = label.done(label.blend(1.0, laid.outputs["Color"], yellowed, "MULTIPLY"), 0.5)
    card(0.078, 0.052, paper, (0, -0.008, 0.0274), turn=(-90, 0, 4))
    box((0.3, 0.006, 0.012), (-0.25, 0.16, 0.006), rough((0.5, 0.5, 0.5), (0.4, 0.4, 0.4)), turn=(0, 0, 30))
    overcast(0.15)
    panel_light((-0.8, 0.9, 1.2), (0, 0, 0), 0.9, 16, (0.9, 0.95, 1.0))
    panel_light((0.5, -0.6, 1.5), (0, 0, 0), 0.4, 5)
    aim((0.03, -0.13, 0.205), (0.003, -0.002, 0.02), lens=30, roll=3, fstop=5.6)
