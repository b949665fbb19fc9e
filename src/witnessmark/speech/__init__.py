"""Speech: what was said in a recording, word by word with its times, heard on this machine alone?"""

from witnessmark.speech.engines import ENGINES, open_model
from witnessmark.speech.lines import SpokenLine
from witnessmark.speech.models import SETTING, find_model, installed_models, model_at
from witnessmark.speech.recognizer import Model, Recognizer
from witnessmark.speech.segments import Segment, Word
from witnessmark.speech.sound import is_sound
from witnessmark.speech.transcribing import transcribe_file
from witnessmark.speech.transcript import Transcript

__all__ = [
    "ENGINES", "SETTING", "Model", "Recognizer", "Segment", "SpokenLine", "Transcript", "Word", "find_model",
    "installed_models", "is_sound", "model_at", "open_model", "transcribe_file",
]  # fmt: skip
