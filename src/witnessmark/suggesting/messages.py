"""What asking a language model for more drafts can say went wrong. The drafts of listening stand in every case."""

from __future__ import annotations

from witnessmark.problems import Message

__all__ = ["BAD_ADDRESS", "DROPPED", "ERROR_STATUS", "GIVEN_UP", "LEAVES", "NOT_LOCAL", "NO_ANSWER", "UNUSABLE"]

_STANDS = "What listening itself drafted is not affected."

BAD_ADDRESS = Message(
    "WM660",
    "this is not the address of an endpoint",
    "Nothing was asked and nothing was sent.",
    "Give the base address as the server prints it, such as http://127.0.0.1:8080/v1, and the name of its model.",
)
NOT_LOCAL = Message(
    "WM661",
    "this endpoint is neither on this machine nor on a private network",
    "What was said in a client's house would leave it. Nothing was sent.",
    "Run a server on this machine or in your own network; with the client's consent, say --endpoint-anywhere.",
)
NO_ANSWER = Message(
    "WM662",
    "the endpoint did not answer",
    _STANDS,
    "Check that the server runs and that the address and port are right; a slow machine may need more time.",
)
ERROR_STATUS = Message(
    "WM663",
    "the endpoint answered with an error",
    _STANDS,
    "Look at the server's own log; often the name of the model is wrong or it does not fit into memory.",
)
UNUSABLE = Message(
    "WM664",
    "the endpoint's answer could not be used",
    f"It is not the JSON that was asked for, or only half of it. {_STANDS}",
    "Use a server that keeps to a JSON schema, or a larger model.",
)
DROPPED = Message(
    "WM665",
    "suggestions were dropped",
    "A draft must quote words that were said, at their time, in the terms of the packs; these did not.",
    "Nothing needs to be done; when most are dropped, the model is too weak for this.",
)
GIVEN_UP = Message(
    "WM666",
    "the endpoint failed repeatedly, so the rest of the narration was not sent to it",
    _STANDS,
    "Mend what the messages above tell, and listen again.",
)
LEAVES = Message(
    "WM667",
    "the narration was sent over a public network",
    "It holds what was said in a client's house, and --endpoint-anywhere allowed it.",
    "See that the agreement with the client covers this.",
)
