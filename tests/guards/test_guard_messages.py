"""Every numbered message is complete, unique and in the range of its package."""

import importlib
import pkgutil

import witnessmark
from witnessmark.problems import Message

RANGES = {
    "units": "1", "journal": "2", "stores": "3", "packs": "4", "judging": "5", "views": "5", "listening": "6",
    "speech": "6", "suggesting": "6",
    "gauges": "0", "imaging": "7", "report": "8", "cli": "9", "assembly": "9", "demo": "9",
}  # fmt: skip


def declared() -> list[tuple[str, str, Message]]:
    found: list[tuple[str, str, Message]] = []
    for info in pkgutil.walk_packages(witnessmark.__path__, "witnessmark."):
        if info.name.endswith("__main__"):
            continue
        module = importlib.import_module(info.name)
        if info.name.rsplit(".", 1)[-1] != "messages":
            here = [v for v in vars(module).values() if isinstance(v, Message)]
            home = {id(m) for _, _, m in found}
            assert all(id(m) in home or m.number for m in here)
            continue
        package = info.name.split(".")[1]
        found += [(package, name, value) for name, value in vars(module).items() if isinstance(value, Message)]
    return found


def test_messages_are_declared() -> None:
    assert len(declared()) > 40


def test_numbers_are_unique_and_in_range() -> None:
    seen: dict[str, str] = {}
    for package, name, message in declared():
        assert message.number.startswith("WM" + RANGES[package]), f"{package}.{name} is numbered {message.number}"
        assert len(message.number) == 5
        assert message.number not in seen, f"{message.number} is both {seen[message.number]} and {name}"
        seen[message.number] = name


def test_each_says_what_why_and_what_next() -> None:
    for package, name, message in declared():
        for part in (message.what, message.why, message.next):
            assert len(part.split()) >= 2, f"{package}.{name} leaves something unsaid"
            assert not part.endswith(" "), f"{package}.{name} ends in a space"
