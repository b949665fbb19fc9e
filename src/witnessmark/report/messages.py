"""What writing a report can say."""

from __future__ import annotations

from witnessmark.problems import Message

__all__ = [
    "CANNOT_SIGN", "CANNOT_WRITE", "CERTIFICATE_UNFIT", "FILE_MISSING", "KEY_AND_CERTIFICATE_DIFFER", "KEY_UNFIT",
    "KEY_UNREADABLE", "NOT_DISPLAYABLE", "NO_PDF", "NO_PREVIEW", "NO_RULEBOOK", "NO_SUCH_ENTRY", "PICTURE_UNREADABLE",
    "SIGNS_REMOVED", "SIGNS_REPLACED", "STAMP_UNFIT", "STAMP_UNREACHABLE", "WRONG_PASSWORD",
]  # fmt: skip

FILE_MISSING = Message(
    "WM801",
    "the journal names a file that is not among the media",
    "The report lists it by name only; whoever reads it cannot look at the evidence.",
    "Put the file back into the job's media folder under its hash, then write the report again.",
)
NOT_DISPLAYABLE = Message(
    "WM802",
    "this file cannot be shown on a page",
    "The report lists it in words; it stays in the record as it is.",
    "Nothing, if words are enough; else add a JPEG, PNG or WebP of it to the record.",
)
PICTURE_UNREADABLE = Message(
    "WM803",
    "this picture could not be read",
    "The report shows its description in place of the picture.",
    "Open the file with an image program; if it is damaged, import the original again.",
)
SIGNS_REPLACED = Message(
    "WM804",
    "the fonts of the PDF do not hold some signs",
    "They are printed as a replacement sign in the PDF; the HTML and report.json keep them.",
    "Write the text in letters that the fonts hold, or give readers the HTML beside the PDF.",
)
SIGNS_REMOVED = Message(
    "WM805",
    "some texts held control signs that cannot be printed",
    "They were left out of the report; they could have hidden or turned round the words beside them.",
    "Nothing, unless the text reads wrong; then amend the entry it comes from.",
)
NO_RULEBOOK = Message(
    "WM806",
    "the rulebook that the job names is not among the packs",
    "The report cannot list the duties of the law.",
    "Correct the rulebook in job.toml, or add the pack that holds it.",
)
NO_SUCH_ENTRY = Message(
    "WM807",
    "the report cites an entry that is not in the record",
    "A statement that points at nothing cannot be defended.",
    "Merge the device that holds the entry, or amend the statement so that it cites what it rests on.",
)
NO_PDF = Message(
    "WM808",
    "the PDF could not be made",
    "The HTML and report.json may be complete all the same; the PDF is not.",
    "Send the detail to the makers of the program; until then, print the HTML.",
)
CANNOT_WRITE = Message(
    "WM809",
    "the report could not be written there",
    "What was there before is as it was, or the file is missing; no half-written file is left under that name.",
    "Choose a folder you may write to, with room on the disk.",
)
CANNOT_SIGN = Message(
    "WM830",
    "the PDF could not be signed",
    "It stands there as it was; nobody can tell from it who vouches for it.",
    "Write the report again and sign that file; if it is refused again, send the detail to the makers of the program.",
)
KEY_UNREADABLE = Message(
    "WM831",
    "this is no key and certificate that can be read",
    "Nothing was signed; the PDF stands there as it was.",
    "Name a PEM file that holds the private key and its certificate, or a PKCS#12 file (.p12, .pfx).",
)
WRONG_PASSWORD = Message(
    "WM832",
    "the signing key does not open with this password",
    "Nothing was signed; the PDF stands there as it was.",
    "Put the password in the first line of a file that only you can read, or in WITNESSMARK_PASSWORD, and try again.",
)
KEY_AND_CERTIFICATE_DIFFER = Message(
    "WM833",
    "the certificate belongs to another key",
    "A signature would not match the certificate beside it, and every reader would reject it.",
    "Name the certificate that was issued for this key.",
)
CERTIFICATE_UNFIT = Message(
    "WM834",
    "this certificate is not one to sign a report with today",
    "Readers would show the signature as not valid.",
    "Have the certificate renewed, or one issued for signing documents; one that this program made can be moved away, \
and a new one is then made.",
)
KEY_UNFIT = Message(
    "WM835",
    "this kind of key is not used for signing here",
    "Readers would reject the signature, or it could be forged.",
    "Use an RSA key of at least 2048 bits, an elliptic-curve key (P-256, P-384, P-521), or Ed25519.",
)
STAMP_UNREACHABLE = Message(
    "WM836",
    "the time-stamp service could not be reached",
    "Nothing was stamped; the PDF stands there as it was.",
    "Check the address and the network, and try again later, or sign without a time stamp and stamp the file afterwards.",
)
STAMP_UNFIT = Message(
    "WM837",
    "what the time-stamp service answered is not a time stamp of this file",
    "It would prove nothing; the PDF stands there as it was.",
    "Check that the address is that of an RFC 3161 service, or name another service.",
)
NO_PREVIEW = Message(
    "WM838",
    "the preview stopped in the middle of its work",
    "What it was to show is not there; the record is as it was.",
    "Try again; if it stops again, write the whole report instead.",
)
