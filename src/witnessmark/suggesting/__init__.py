"""Suggesting: what else do these words say, by a language model on this machine? Off unless asked for, and never needed."""

from witnessmark.suggesting.endpoint import Endpoint, at_address
from witnessmark.suggesting.suggestions import Suggested, ask_endpoint, together

__all__ = ["Endpoint", "Suggested", "ask_endpoint", "at_address", "together"]
