"""The ways in which a receptacle can be wired, as voltages at its three slots, and what a three-lamp tester sees."""

from __future__ import annotations

from dataclasses import dataclass

__all__ = ["PRINTED", "STATES", "Pattern", "WiringState", "pattern_of", "states_for"]

#: Lamps in the order neutral to ground, hot to neutral, hot to ground; lit or not.
Pattern = tuple[bool, bool, bool]

#: A lamp lights above a voltage between these two, which differs from tester to tester.
DARK_BELOW, LIT_ABOVE = 40.0, 90.0
#: Volts by which a measured voltage may differ from a wiring state that it still fits.
NEAR = 60.0


@dataclass(frozen=True, slots=True)
class WiringState:
    """One way of wiring: voltages at the hot, neutral and ground slot against earth; None where a slot floats.

    Opposite legs of a 120/240 V service have opposite signs. ``real_ground`` tells whether the ground slot has its
    own path to the service.
    """

    words: str
    hot: float | None
    neutral: float | None
    ground: float | None
    real_ground: bool
    energised: str = ""

    def fits(self, neutral_ground: float | None, hot_neutral: float | None, hot_ground: float | None) -> bool:
        """Whether measured voltages (None: not measured) lie within 60 V of these, wherever neither slot floats."""
        pairs = (
            (self.neutral, self.ground, neutral_ground),
            (self.hot, self.neutral, hot_neutral),
            (self.hot, self.ground, hot_ground),
        )
        return all(
            one is None or other is None or measured is None or abs(abs(one - other) - measured) <= NEAR
            for one, other, measured in pairs
        )


STATES: tuple[WiringState, ...] = (
    WiringState("wired as it should be", 120, 0, 0, real_ground=True),
    WiringState("ground slot jumpered to neutral (a false ground)", 120, 0, 0, real_ground=False),
    WiringState("neutral and ground wires swapped", 120, 0, 0, real_ground=False),
    WiringState("hot and neutral reversed, and the ground slot jumpered to the neutral slot", 0, 120, 120,
                real_ground=False, energised="the ground slot, and every metal case plugged in, is at line voltage"),
    WiringState("ground open", 120, 0, None, real_ground=False),
    WiringState("hot and neutral reversed, and ground open", 0, 120, None, real_ground=False,
                energised="the neutral slot is hot"),
    WiringState("neutral open, nothing else on the circuit switched on", 120, None, 0, real_ground=True),
    WiringState("neutral open, with a load on further along", 120, 120, 0, real_ground=True,
                energised="the neutral slot is brought to line voltage through the load"),
    WiringState("hot open, or no power", None, 0, 0, real_ground=True),
    WiringState("circuit off", 0, 0, 0, real_ground=True),
    WiringState("neutral and ground both open", 120, None, None, real_ground=False,
                energised="the hot slot is at line voltage though no lamp is lit"),
    WiringState("neutral and ground both open, with a load on further along", 120, 120, None, real_ground=False,
                energised="both slots are at line voltage though no lamp is lit"),
    WiringState("hot and neutral reversed", 0, 120, 0, real_ground=True, energised="the neutral slot is hot"),
    WiringState("ground open further up, and brought to line voltage by an appliance on the circuit", 120, 0, 120,
                real_ground=False, energised="the ground slot, and every metal case plugged in, is at line voltage"),
    WiringState("hot and ground reversed", 0, 0, 120, real_ground=False,
                energised="the ground slot, and every metal case plugged in, is at line voltage"),
    WiringState("hot open, and the neutral slot wired to hot", None, 120, 0, real_ground=True,
                energised="the neutral slot is hot"),
    WiringState("both slots on opposite hot legs, 240 V between them", 120, -120, 0, real_ground=True,
                energised="the neutral slot is hot"),
    WiringState("neutral of a multiwire circuit lost, loads pulling it towards the other leg", 120, -100, 0,
                real_ground=True, energised="the neutral slot is far from earth, and appliances see too high a voltage"),
)  # fmt: skip

#: What testers print for each pattern; the last two are on few charts or none.
PRINTED: dict[Pattern, str] = {
    (False, True, True): "correct",
    (False, True, False): "open ground",
    (False, False, True): "open neutral",
    (False, False, False): "open hot or no power",
    (True, True, False): "hot and neutral reversed",
    (True, False, True): "hot and ground reversed",
    (True, False, False): "hot on neutral with hot open",
    (True, True, True): "not a listed pattern",
}


def _lit(one: float | None, other: float | None, threshold: float) -> bool:
    return one is not None and other is not None and abs(one - other) > threshold


def pattern_of(state: WiringState, threshold: float = 65.0) -> Pattern:
    """The lamps that this wiring lights, each lit above *threshold* volts (40 to 90) between its two slots.

    >>> pattern_of(STATES[0])
    (False, True, True)
    """
    return (
        _lit(state.neutral, state.ground, threshold),
        _lit(state.hot, state.neutral, threshold),
        _lit(state.hot, state.ground, threshold),
    )


def states_for(pattern: Pattern) -> tuple[WiringState, ...]:
    """Every wiring state that lights exactly these lamps.

    >>> [state.words for state in states_for((True, False, False))]
    ['hot open, and the neutral slot wired to hot']
    """
    return tuple(state for state in STATES if pattern_of(state) == pattern)
