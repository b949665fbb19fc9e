"""What reading pictures and thermal frames can say went wrong."""

from __future__ import annotations

from witnessmark.problems import Message

__all__ = [
    "ANIMATED", "BAD_DESCRIPTION", "BAD_OFFSET", "DAMAGED", "EMPTY", "HEIC", "NOT_A_FILE", "NOT_A_FRAME", "NOT_KELVIN",
    "NO_OFFSET", "NO_TIME", "OTHER_KIND", "OUTSIDE", "TOO_MANY_PIXELS", "UNREADABLE",
]  # fmt: skip

_KINDS = "JPEG, PNG, WebP, 16-bit grey TIFF (thermal), MP4, MOV, WebM and PDF are read"

EMPTY = Message(
    "WM701",
    "the file is empty",
    "Nothing can be shown from it, and nothing proves what it was.",
    "Copy the file again from the camera and check that its size is not zero.",
)
NOT_A_FILE = Message(
    "WM702",
    "this is not a file",
    "Only a file can be kept under its hash.",
    "Name the picture itself; to bring in a folder, name the files in it.",
)
UNREADABLE = Message(
    "WM703",
    "the file cannot be opened",
    "Nothing of it was read, and nothing was changed.",
    "Check that it exists, that it is not on a device that was taken out, and that you may read it.",
)
OTHER_KIND = Message(
    "WM704",
    "this is not a kind of file that is read here",
    "It could not be shown in the report. What counts is the content, not the ending of the name.",
    f"{_KINDS}; save it as one of these and look at it again.",
)
HEIC = Message(
    "WM705",
    "this is a HEIC picture, and what reads those is not installed here",
    "It could not be shown in the report.",
    "Install it (pip install pi-heif), or let the phone export it as JPEG (that keeps its time), or set the phone's camera to the compatible format.",
)
DAMAGED = Message(
    "WM706",
    "the picture is damaged or cut short",
    "A part of it is missing, so it would not show what was seen.",
    "Copy it again from the camera; if it is damaged there too, say in the record what it showed.",
)
TOO_MANY_PIXELS = Message(
    "WM707",
    "the picture has more pixels than are decoded here",
    "Decoding it could take all the memory of this computer.",
    "Save a smaller copy (12 to 50 megapixels show everything a report can) and look at that.",
)
ANIMATED = Message(
    "WM708",
    "this file holds a sequence of pictures",
    "A record needs to say which single picture it rests on.",
    "Save the one picture that matters by itself, or keep the sequence as a video.",
)
NO_TIME = Message(
    "WM709",
    "the file does not say when it was taken",
    "Without a time it cannot be set between the other things of the visit.",
    "Look at the original from the camera (messengers and editors remove times), or note it by hand with its time.",
)
NO_OFFSET = Message(
    "WM710",
    "the file has a clock time but not the offset of its time zone",
    "The same clock time is another moment in another zone, so it is not guessed.",
    "Give the offset of the camera's clock, for example --offset=-07:00.",
)
BAD_OFFSET = Message(
    "WM711",
    "this is not an offset from UTC",
    "Times that the files state without a zone cannot be placed.",
    "Write it as +HH:MM or -HH:MM, for example -07:00.",
)
NOT_A_FRAME = Message(
    "WM712",
    "this is not a thermal frame in a form that is read here",
    "Colours of a saved screen are not temperatures.",
    "Export the frame as a 16-bit grey TIFF whose values are kelvin × 100, one page.",
)
NOT_KELVIN = Message(
    "WM713",
    "the values of this frame cannot be kelvin × 100",
    "Temperatures read from them would be wrong without anyone seeing it.",
    "Check the scale of the camera's export: 20 °C has to be stored as 29315.",
)
BAD_DESCRIPTION = Message(
    "WM714",
    "a part of the frame's description cannot be used",
    "It is left out; the temperatures are as the camera gave them.",
    "The description is JSON with emissivity (above 0 to 1), reflected_c, distance_m (above 0), taken_at (RFC 3339) and"
    " invented (true or false).",
)
OUTSIDE = Message(
    "WM715",
    "this spot lies outside the frame",
    "There is no temperature there.",
    "Count columns from the left and rows from the top, both from 0.",
)
