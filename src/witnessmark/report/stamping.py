"""Asking a time-stamp service (RFC 3161) for a token: one POST to an address that the user gave, and nothing else.

What is sent is a hash and a random number; nothing of the report leaves the machine.
"""

from __future__ import annotations

import asyncio
from http.client import HTTPException
from typing import Final
from urllib.error import HTTPError
from urllib.parse import urlsplit
from urllib.request import HTTPRedirectHandler, OpenerDirector, Request, build_opener

from asn1crypto import cms, core, tsp  # type: ignore[import-untyped] # it ships no types
from pyhanko.sign.general import SigningError
from pyhanko.sign.timestamps import TimeStamper
from pyhanko.sign.validation.errors import SignatureValidationError
from pyhanko.sign.validation.generic_cms import validate_tst_signed_data
from pyhanko_certvalidator import ValidationContext

from witnessmark.problems import Refusal
from witnessmark.report.messages import STAMP_UNFIT, STAMP_UNREACHABLE

__all__ = ["PATIENCE", "Service"]

#: Seconds until a service that does not answer is given up.
PATIENCE: Final = 20.0
_ASKS, _ANSWERS = "application/timestamp-query", "application/timestamp-reply"
#: A token with its certificates has a few kilobytes.
_MOST_BYTES = 1 << 20
#: What reading an answer can raise: it comes from outside and may be anything.
_FAILURES = (
    ValueError, TypeError, KeyError, IndexError, AttributeError, NotImplementedError, SigningError,
    SignatureValidationError,
)  # fmt: skip


class _NoElsewhere(HTTPRedirectHandler):
    """Follows no redirection: the user named one address."""

    def redirect_request(self, *_args: object, **_named: object) -> None:
        return None


class _Answer(core.Sequence):  # type: ignore[misc] # the library ships no types
    """A TimeStampResp (RFC 3161, 2.4.2): the token is not there when the service refuses."""

    _fields = [("status", tsp.PKIStatusInfo), ("time_stamp_token", cms.ContentInfo, {"optional": True})]  # noqa: RUF012 - the library's own form


class Service(TimeStamper):
    """A time-stamp service at an address, for pyHanko.

    Raises:
        Refusal: WM836 when it cannot be reached, WM837 when it answers with anything but a token for what was asked.
    """

    def __init__(self, address: str, *, patience: float = PATIENCE) -> None:
        try:
            parts = urlsplit(address)
            fit = parts.scheme in {"http", "https"} and bool(parts.hostname)
        except ValueError:
            fit = False
        if not fit:
            raise Refusal(STAMP_UNREACHABLE.at(address, "not an address that begins with https:// or http://"))
        super().__init__()  # type: ignore[no-untyped-call] # so the library has it
        self._address, self._patience = address, patience

    async def async_timestamp(self, message_digest: bytes, md_algorithm: str) -> cms.ContentInfo:
        """The service's token for a hash, held against what was asked."""
        _, asked = self.request_cms(message_digest, md_algorithm)  # type: ignore[no-untyped-call] # so the library has it
        data = await asyncio.to_thread(self._post, asked.dump())
        try:
            answer = _Answer.load(data, strict=True)
            status = answer["status"]
            if status["status"].native not in {"granted", "granted_with_mods"}:
                said = [status["status"].native, *(status["status_string"].native or ())]
                raise ValueError(f"the service refused: {', '.join(said)}")
            token = answer["time_stamp_token"]
            await _for_this(token["content"], asked)
        except _FAILURES as error:
            detail = str(error).split("\n", maxsplit=1)[0][:120]
            raise Refusal(STAMP_UNFIT.at(self._address, detail)) from error
        return token

    def _post(self, body: bytes) -> bytes:
        opener: OpenerDirector = build_opener(_NoElsewhere)
        request = Request(self._address, body, {"Content-Type": _ASKS, "Accept": _ANSWERS})  # noqa: S310 - checked above
        try:
            with opener.open(request, timeout=self._patience) as response:
                kind = response.headers.get_content_type()
                data: bytes = response.read(_MOST_BYTES + 1)
        except HTTPError as error:
            error.close()  # it holds the answer, and with it the socket
            raise Refusal(STAMP_UNREACHABLE.at(self._address, f"it answered {error.code} {error.reason}")) from error
        except (OSError, HTTPException, ValueError) as error:
            raise Refusal(STAMP_UNREACHABLE.at(self._address, str(error) or type(error).__name__)) from error
        if kind != _ANSWERS:
            raise Refusal(STAMP_UNFIT.at(self._address, f"it answered with {kind}"))
        if len(data) > _MOST_BYTES:
            raise Refusal(STAMP_UNFIT.at(self._address, "its answer is larger than 1 MB"))
        return data


async def _for_this(signed: cms.SignedData, asked: tsp.TimeStampReq) -> None:
    """Raise unless the token states the very hash and number that were asked for, and is signed by its certificate.

    RFC 3161, 2.4.2. Whether that certificate is to be trusted is for the reader to say.
    """
    told = signed["encap_content_info"]["content"].parsed
    if not isinstance(told, tsp.TSTInfo):
        raise TypeError("the token holds no time stamp")
    if told["message_imprint"].native != asked["message_imprint"].native:
        raise ValueError("the token is for another file")
    if told["nonce"].native != asked["nonce"].native:
        raise ValueError("the token answers another question")
    digest = asked["message_imprint"]["hashed_message"].native
    nobody = ValidationContext(trust_roots=[], allow_fetching=False)
    found = await validate_tst_signed_data(signed, nobody, lambda _algorithm: digest)
    if not (found["intact"] and found["valid"]):
        raise ValueError("the token's signature is not that of its certificate")
