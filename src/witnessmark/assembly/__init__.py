"""Assembly: the one place that wires stores and services; what the doors call."""

from witnessmark.assembly.facts import job_from_facts, when
from witnessmark.assembly.findings import write_findings
from witnessmark.assembly.gauging import limit_from_pack
from witnessmark.assembly.hearing import hear, hear_into
from witnessmark.assembly.issuing import LANGUAGES, Made, issue_report, write_report
from witnessmark.assembly.jobs import OpenJob, new_job, open_job
from witnessmark.assembly.keys import FileSigner, default_key_path
from witnessmark.assembly.law import law_as_json, law_in_words
from witnessmark.assembly.messages import AUDIO_TIMES
from witnessmark.assembly.noting import ENTRY_FIELDS, fields_of, read_note
from witnessmark.assembly.overlay import start_overlay
from witnessmark.assembly.packs import check_packs, count_packs, overlay_folders, read_packs
from witnessmark.assembly.previewing import Previewed, preview_report
from witnessmark.assembly.seeing import look_at, look_into
from witnessmark.assembly.signing import SignedPdf, sign_report
from witnessmark.assembly.situations import run_situations
from witnessmark.assembly.talk import ENGINES, SETTING, Speech, Talk, read_talk, write_transcript
from witnessmark.assembly.telling import standing_as_json, standing_in_words, under_as_json, under_in_words
from witnessmark.assembly.verifying import Checked, verify_job
from witnessmark.assembly.writing import note_entry, note_readings
from witnessmark.suggesting import at_address

__all__ = [
    "AUDIO_TIMES",
    "ENGINES",
    "ENTRY_FIELDS",
    "LANGUAGES",
    "SETTING",
    "Checked",
    "FileSigner",
    "Made",
    "OpenJob",
    "Previewed",
    "SignedPdf",
    "Speech",
    "Talk",
    "at_address",
    "check_packs",
    "count_packs",
    "default_key_path",
    "fields_of",
    "hear",
    "hear_into",
    "issue_report",
    "job_from_facts",
    "law_as_json",
    "law_in_words",
    "limit_from_pack",
    "look_at",
    "look_into",
    "new_job",
    "note_entry",
    "note_readings",
    "open_job",
    "overlay_folders",
    "preview_report",
    "read_note",
    "read_packs",
    "read_talk",
    "run_situations",
    "sign_report",
    "standing_as_json",
    "standing_in_words",
    "start_overlay",
    "under_as_json",
    "under_in_words",
    "verify_job",
    "when",
    "write_findings",
    "write_report",
    "write_transcript",
]
