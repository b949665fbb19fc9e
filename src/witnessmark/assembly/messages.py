"""Numbered messages of the assembly: jobs, notes, keys, imports and issuing."""

from typing import Final

from witnessmark.problems import Message

__all__ = [
    "AUDIO_TIMES",
    "BAD_KEY",
    "BAD_SITUATION",
    "BAD_TABLE",
    "BLOCKED",
    "NOTHING_TO_SEAL",
    "NOT_AN_ACT",
    "NOT_AS_EXPECTED",
    "NOT_A_FIELD",
    "NOT_A_VALUE",
    "NO_CLOCK",
    "NO_SUCH_ENTRY",
    "NO_SUCH_PACK_ID",
    "OVERLAY_THERE",
    "UNSURE_ENTRY",
    "WHY_AGAIN",
    "WRONG_JOB_FACT",
]  # fmt: skip

NOT_AN_ACT: Final = Message(
    "WM902",
    "no such act",
    "an entry records one of a fixed set of acts, so that it can still be read in twenty years",
    "use one of the acts listed here; `witnessmark note --help` says what each is for",
)
NOT_A_FIELD: Final = Message(
    "WM903",
    "the act has no such field",
    "what is said in a field nobody reads would be lost",
    "use one of the fields listed here; `witnessmark note --fields ACT` explains them",
)
NOT_A_VALUE: Final = Message(
    "WM904",
    "the value does not fit the field",
    "an entry is kept for ever; it has to mean what was meant",
    "write it in the form shown here and note it again; nothing was recorded",
)
NO_SUCH_ENTRY: Final = Message(
    "WM905",
    "no entry of this job has that id",
    "an entry that refers to nothing could never be understood later",
    "look the id up with `witnessmark standing JOB --json`; its last eight characters are enough",
)
UNSURE_ENTRY: Final = Message(
    "WM906",
    "more than one entry matches that id",
    "the note would refer to an entry nobody chose",
    "write more characters of the id",
)
BAD_TABLE: Final = Message(
    "WM907",
    "the table of readings cannot be taken over",
    "a reading under the wrong heading is worse than none",
    "correct the line named here; none of the table was recorded",
)
BLOCKED: Final = Message(
    "WM908",
    "the report cannot be issued while these ends are loose",
    "something is still on, in doubt, not written up, or a duty of the law is neither met nor excused",
    "close each of them (`witnessmark standing JOB` says how); without --issue the report is written as a draft",
)
NOTHING_TO_SEAL: Final = Message(
    "WM909",
    "the job has no entries yet",
    "an empty record can prove nothing",
    "record the visit first, for example with `witnessmark note JOB arrived`",
)
BAD_KEY: Final = Message(
    "WM910",
    "the signing key cannot be used",
    "without it a report can be written but not sealed",
    "name an Ed25519 private key in PEM form with --key, or let one be made by naming a file that does not exist",
)
AUDIO_TIMES: Final = Message(
    "WM911",
    "when did the recording begin?",
    "a narration counts seconds from its start; the journal needs the time of day of every entry",
    "say when it began with --began, for example --began 2026-10-14T09:04:00-07:00",
)
WRONG_JOB_FACT: Final = Message(
    "WM912",
    "this fact of the job cannot be used",
    "the law in force and the deadlines are worked out from the facts of the job",
    "write it in the form shown here",
)
NO_SUCH_PACK_ID: Final = Message(
    "WM913",
    "the packs know no such thing",
    "what no pack knows cannot be judged or explained",
    "use one of the ids shown here, or add your own in an overlay folder; `witnessmark packs` lists what there is",
)
WHY_AGAIN: Final = Message(
    "WM914",
    "the report was issued before, and this does not say why it is issued again",
    "whoever holds the earlier edition must be able to see what changed and why",
    "add --why with the reason",
)
NO_CLOCK: Final = Message(
    "WM915",
    "when was the picture taken?",
    "the journal needs the time of day of every entry, and the picture does not say",
    "say with --offset how far the camera's clock is from UTC (-07:00), or note it by hand with `note JOB took`",
)

BAD_SITUATION: Final = Message(
    "WM916",
    "this situation cannot be read",
    "a situation that is not tried shows nothing",
    "write title, rulebook, date, [house], [[act]] and [expect] as docs/packs/README.md shows",
)
NOT_AS_EXPECTED: Final = Message(
    "WM917",
    "what came of the situation is not what it expects",
    "either the packs judge it wrongly, or the expectation is wrong; both mislead whoever relies on them",
    "look up the law or the practice the situation names as its source, and correct the one that is wrong",
)

OVERLAY_THERE: Final = Message(
    "WM918",
    "this folder already holds packs",
    "what stands there would be overwritten",
    "name a folder that is new or empty",
)

TRANSCRIPT_NOT_KEPT: Final = Message(
    "WM919",
    "the transcript could not be written there",
    "what was recognised would have to be recognised again, which takes as long as it took",
    "name a file in a folder that can be written to; the drafts are printed all the same without --transcript",
)

NO_SIGNER: Final = Message(
    "WM930",
    "what signs a PDF is not installed here",
    "the report stays without a signature; its record can be sealed and checked all the same",
    "install it: pip install 'witnessmark[sign]'",
)
NO_PDF_YET: Final = Message(
    "WM931",
    "there is no PDF to sign",
    "a signature is added to a report that is finished",
    "write the report first: witnessmark report JOB --issue",
)
