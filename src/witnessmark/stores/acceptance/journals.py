"""What every journal store must do."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace
from typing import Final

from witnessmark.journal import messages as journal_messages
from witnessmark.journal.acts import Accepted, Amended, Placed, Saw, Settled
from witnessmark.journal.chain import check_chains
from witnessmark.journal.codec import to_line, with_hash
from witnessmark.journal.entry import NO_PREVIOUS, Entry, Source, Unread
from witnessmark.journal.ports import JournalStore
from witnessmark.stores import messages
from witnessmark.stores.acceptance.samples import OTHER_JOB, expect, gives, refused, sample_entries, sample_pen
from witnessmark.stores.lines import LONGEST_LINE
from witnessmark.stores.recording import record

__all__ = ["JOURNAL_CHECKS", "JournalOpener"]

JournalOpener = Callable[[], JournalStore]


def _same(store: JournalStore, entries: Sequence[Entry]) -> None:
    kept, problems = store.read()
    expect(not problems, f"expected no problems, got {[str(problem) for problem in problems]}")
    expect(kept == list(entries), f"expected {len(entries)} entries as appended, got {len(kept)} or others")


def empty_at_first(opener: JournalOpener) -> None:
    """A new place holds nothing, and looking does not change that."""
    for _ in range(2):
        expect(opener().read() == ([], []), "expected no entries and no problems")
        expect(opener().head("phone") == (0, NO_PREVIOUS), "expected no head")
    gives(opener().append([]), 0)
    expect(opener().read() == ([], []), "expected an empty batch to leave the store empty")


def keeps_what_was_appended(opener: JournalOpener) -> None:
    """Entries come back equal and in the order of arrival, from the same object and after opening again."""
    entries = sample_entries(sample_pen(), 7)
    store = opener()
    gives(store.append(entries[:1]), 1)
    gives(store.append(entries[1:]), 6)
    _same(store, entries)
    _same(opener(), entries)
    expect(opener().head("phone") == (7, entries[-1].hash), "expected the head to be the last entry")


def keeps_every_sort_of_content(opener: JournalOpener) -> None:
    """Text in any script, control characters, nested bodies, drafts, sources and media come back as they were."""
    pen = sample_pen()
    odd = pen.write(
        Saw(what='Straße, 漏水, \U0001f525, "quoted", \\ , tab\t, line\nend, \u2028, \x00, \x7f', state="unclear"),
        place="küche",
        component="range-1",
        media=("ab" * 32, "cd" * 32),
        source=Source("speech", "walk.wav", "12.5", "14", "is that scorched", "unsure-1"),
        draft=True,
    )
    accepted = pen.write(Accepted(of=(odd.id,)))
    amended = pen.write(Amended(of=odd.id, why="looked again", act="saw", body=Saw(what="soot", state="adverse")))
    settled = pen.write(
        Settled(of=(odd.id, amended.id), how="wiped off", with_whom="seller"), at="2026-03-14T02:00:01-07:00"
    )
    entries = [odd, accepted, amended, settled]
    opener().append(entries)
    _same(opener(), entries)


def keeps_acts_of_newer_releases(opener: JournalOpener) -> None:
    """An act that this release does not know is kept to the byte and told as WM207."""
    pen = sample_pen()
    known = sample_entries(pen, 1)[0]
    unknown = with_hash(
        replace(known, id="019ceb66-0000-7000-8000-000000000001", n=2, prev=known.hash, act="hovered", v=9,
                body=Unread('{"height":12.5,"über":[1,null]}'), hash="")
    )  # fmt: skip
    opener().append([known, unknown])
    kept, problems = opener().read()
    expect(kept == [known, unknown], "expected the unknown act among the entries")
    expect([p.number for p in problems] == [journal_messages.UNREAD.number], "expected one WM207")
    expect(problems[0].entries == (unknown.id,), "expected WM207 to name the entry")


def passes_over_what_is_kept(opener: JournalOpener) -> None:
    """The same entries again, in part, or twice in one batch, are kept once."""
    entries = sample_entries(sample_pen(), 5)
    store = opener()
    gives(store.append([*entries[:3], *entries[:3]]), 3)
    gives(store.append(entries[1:3]), 0)
    gives(opener().append(entries), 2)
    _same(store, entries)


def takes_all_or_none(opener: JournalOpener) -> None:
    """One entry that cannot be taken keeps out the whole batch, wherever it stands in it."""
    entries = sample_entries(sample_pen(), 6)
    changed = with_hash(replace(entries[0], by="somebody else", hash=""))
    store = opener()
    store.append(entries[:2])
    for batch in ([changed, *entries[2:]], [*entries[2:4], changed, *entries[4:]], [*entries[2:], changed]):
        problems = refused(lambda batch=batch: store.append(batch), messages.ID_TAKEN)  # type: ignore[misc] # mypy infers no lambda defaults
        expect(problems[0].entries == (changed.id,), "expected the refusal to name the entry")
        _same(store, entries[:2])
        _same(opener(), entries[:2])
    twice = [entries[2], with_hash(replace(entries[2], by="somebody else", hash=""))]
    refused(lambda: store.append(twice), messages.ID_TAKEN)
    _same(opener(), entries[:2])
    gives(store.append(entries), 4)
    _same(opener(), entries)


def refuses_what_could_not_be_relied_on(opener: JournalOpener) -> None:
    """No hash, a wrong hash, another job, more than a line holds: each is refused with its number."""
    entries = sample_entries(sample_pen(), 2)
    store = opener()
    refused(lambda: store.append([replace(entries[0], hash="")]), messages.NO_HASH)
    refused(lambda: store.append([replace(entries[0], by="other")]), journal_messages.HASH_DIFFERS)
    refused(
        lambda: store.append([entries[0], *sample_entries(sample_pen("desk", job=OTHER_JOB), 1)]), messages.OTHER_JOB
    )
    long = with_hash(replace(entries[0], body=Placed(name="x" * LONGEST_LINE), hash=""))
    refused(lambda: store.append([long]), messages.ENTRY_TOO_LONG)
    _same(opener(), [])
    store.append(entries)
    refused(lambda: store.append(sample_entries(sample_pen("desk", job=OTHER_JOB), 1)), messages.OTHER_JOB)
    _same(opener(), entries)


def keeps_the_longest_line(opener: JournalOpener) -> None:
    """An entry just as long as allowed comes back; one byte more is refused."""
    entry = sample_entries(sample_pen(), 1)[0]
    bare = len(to_line(with_hash(replace(entry, body=Placed(name="x"), hash=""))))
    longest = with_hash(replace(entry, body=Placed(name="x" * (LONGEST_LINE - bare + 1)), hash=""))
    longer = with_hash(replace(entry, body=Placed(name="x" * (LONGEST_LINE - bare + 2)), hash=""))
    refused(lambda: opener().append([longer]), messages.ENTRY_TOO_LONG)
    gives(opener().append([longest]), 1)
    gives(opener().append(sample_entries(sample_pen("desk"), 1)), 1)
    expect(opener().read()[0][0] == longest, "expected the long entry back")
    expect(not opener().read()[1], "expected no problems")


def no_writer_forks_a_chain(opener: JournalOpener) -> None:
    """A place in a chain that is taken is refused to a writer, and the place in one batch twice too."""
    first, second = sample_entries(sample_pen(), 1), sample_entries(sample_pen(), 1)
    store = opener()
    store.append(first)
    problems = refused(lambda: store.append(second), messages.POSITION_TAKEN)
    expect(problems[0].entries == (second[0].id, first[0].id), "expected the refusal to name both entries")
    pair = [sample_entries(sample_pen("desk"), 1)[0], sample_entries(sample_pen("desk"), 1)[0]]
    refused(lambda: store.append(pair), messages.POSITION_TAKEN)
    _same(opener(), first)


def a_merge_brings_in_forks(opener: JournalOpener) -> None:
    """With forks allowed both branches are kept and the chain check names the fork; the head is the longer branch."""
    first = sample_entries(sample_pen(), 3)
    branch = sample_entries(sample_pen("phone", 1, first[0].hash), 4)
    opener().append(first)
    gives(opener().append(branch, forks=True), 4)
    _same(opener(), first + branch)
    numbers = {problem.number for problem in check_chains(opener().read()[0])}
    expect(numbers == {journal_messages.CHAIN_FORK.number}, f"expected the fork to be reported, got {numbers}")
    expect(opener().head("phone") == (5, branch[-1].hash), "expected the head to be the last of the longer branch")


def takes_entries_in_any_order(opener: JournalOpener) -> None:
    """Gaps are taken, for what is missing may come later; the set of entries is what counts."""
    phone, desk = sample_entries(sample_pen("phone"), 4), sample_entries(sample_pen("desk"), 2)
    arrival = [phone[3], desk[1], phone[0], phone[2], desk[0], phone[1]]
    for entry in arrival:
        opener().append([entry])
    _same(opener(), arrival)
    expect(opener().head("phone") == (4, phone[3].hash), "expected the head of the phone")
    expect(opener().head("desk") == (2, desk[1].hash), "expected the head of the desk")
    expect(opener().head("tablet") == (0, NO_PREVIOUS), "expected no head for a device without entries")
    expect(not check_chains(opener().read()[0]), "expected whole chains")


def two_at_once_see_each_other(opener: JournalOpener) -> None:
    """What one object keeps the other sees, and neither writes on from an old head."""
    one, other = opener(), opener()
    a = sample_entries(sample_pen(), 2)
    one.append(a)
    expect(other.head("phone") == (2, a[-1].hash), "expected the other object to see the new head")
    b = sample_entries(sample_pen("phone", 2, a[-1].hash), 1)
    other.append(b)
    stale = sample_entries(sample_pen("phone", 2, a[-1].hash), 1)
    refused(lambda: one.append(stale), messages.POSITION_TAKEN)
    _same(one, a + b)


def many_writers_interleave_whole_batches(opener: JournalOpener) -> None:
    """Threads that write for one device at once: every batch stays together and the chain stays whole."""

    def write(worker: int) -> None:
        store = opener()
        for batch in range(4):
            component = f"{worker}-{batch}"

            def make(n: int, prev: str, component: str = component) -> Sequence[Entry]:
                pen = sample_pen("phone", n, prev)
                return [pen.write(Saw(what=str(i)), component=component) for i in range(3)]

            record(store, "phone", make)

    with ThreadPoolExecutor(4) as pool:
        list(pool.map(write, range(4)))
    kept, problems = opener().read()
    expect(not problems, f"expected no problems, got {[str(problem) for problem in problems]}")
    expect(len(kept) == 48, f"expected 48 entries, got {len(kept)}")  # noqa: PLR2004 - 4 writers, 4 batches of 3
    expect(not check_chains(kept), "expected one whole chain")
    for start in range(0, 48, 3):
        batch = {entry.component for entry in kept[start : start + 3]}
        expect(len(batch) == 1, f"expected entries of one batch side by side, got {batch}")


#: What a journal store must do.
JOURNAL_CHECKS: Final[tuple[Callable[[JournalOpener], None], ...]] = (
    empty_at_first,
    keeps_what_was_appended,
    keeps_every_sort_of_content,
    keeps_acts_of_newer_releases,
    passes_over_what_is_kept,
    takes_all_or_none,
    refuses_what_could_not_be_relied_on,
    keeps_the_longest_line,
    no_writer_forks_a_chain,
    a_merge_brings_in_forks,
    takes_entries_in_any_order,
    two_at_once_see_each_other,
    many_writers_interleave_whole_batches,
)
