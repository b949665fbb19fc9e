"""Report: what the client receives and a court would read, from the judged record to page, PDF and data.

``compose`` says what the report contains as plain data; the writers only lay it out.
"""

from witnessmark.report.compose import compose
from witnessmark.report.data import report_bytes, report_hash, write_json
from witnessmark.report.html import write_html, write_single
from witnessmark.report.letter import Letter
from witnessmark.report.pdf import begin_pdf, write_pdf
from witnessmark.report.pictures import Prepared, prepare
from witnessmark.report.reminders import write_reminders
from witnessmark.report.tables import write_tables

__all__ = [
    "Letter", "Prepared", "begin_pdf", "compose", "prepare", "report_bytes", "report_hash", "write_html", "write_json", "write_pdf", "write_reminders",
    "write_single", "write_tables",
]  # fmt: skip
