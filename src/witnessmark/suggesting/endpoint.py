"""One question to a server on this machine or a private network, without a proxy, a redirect or a second look-up of its name.

The protocol is the chat-completion request that local model servers share (POST ``chat/completions`` with ``messages`` and
``response_format``; recalled). Addresses: loopback (RFC 1122, RFC 4291), private (RFC 1918), unique local (RFC 4193).
"""

from __future__ import annotations

import contextlib
import http.client
import ipaddress
import json
import socket
import ssl
import time
from dataclasses import dataclass
from urllib.parse import urlsplit

from witnessmark.problems import Refusal
from witnessmark.suggesting.messages import BAD_ADDRESS, NOT_LOCAL

__all__ = ["Answer", "Endpoint", "NoAnswer", "at_address"]

_LOCAL = tuple(
    ipaddress.ip_network(text)
    for text in ("127.0.0.0/8", "::1/128", "10.0.0.0/8", "172.16.0.0/12", "192.168.0.0/16", "fc00::/7")
)
#: Bytes of an answer that are read at most.
_MOST = 4_000_000
_SIP = 65_536


class NoAnswer(Exception):  # noqa: N818 - says what came back
    """Raised when the server cannot be reached, breaks off, or takes longer than it may."""


@dataclass(frozen=True, slots=True)
class Answer:
    """What came back: the HTTP status and the body."""

    status: int
    body: bytes


@dataclass(frozen=True, slots=True)
class Endpoint:
    """A server that was checked. ``address`` is the one number that is connected to, whatever its name says later.

    ``public`` tells that the address is not a local one; ``timeout`` are seconds for a whole answer.
    """

    host: str
    port: int
    path: str
    secure: bool
    address: str
    model: str
    timeout: float
    public: bool

    def ask(self, question: dict[str, object]) -> Answer:
        """Send one request and read the answer.

        Raises:
            NoAnswer: nothing came, not all of it, or not in time.
        """
        until = time.monotonic() + self.timeout
        connection = _connection(self)
        try:
            body = json.dumps(question).encode()
            connection.request(
                "POST", self.path, body, {"Content-Type": "application/json", "Accept": "application/json"}
            )
            # Closed here: a connection forgets a response that ends it, and its socket would stay open until collected.
            with contextlib.closing(connection.getresponse()) as response:
                return Answer(response.status, self._body(response, until))
        except TimeoutError as error:
            message = f"no answer within {self.timeout:g} s"
            raise NoAnswer(message) from error
        except (OSError, http.client.HTTPException, ValueError) as error:
            raise NoAnswer(str(error) or type(error).__name__) from error
        finally:
            connection.close()

    def _body(self, response: http.client.HTTPResponse, until: float) -> bytes:
        taken: list[bytes] = []
        size = 0
        while piece := response.read1(_SIP):
            taken.append(piece)
            size += len(piece)
            if time.monotonic() > until:
                message = f"no full answer within {self.timeout:g} s"
                raise NoAnswer(message)
            if size > _MOST:
                message = f"more than {_MOST:,} bytes came"
                raise NoAnswer(message)
        if response.length:
            message = f"the answer broke off {response.length} bytes early"
            raise NoAnswer(message)
        return b"".join(taken)


def _connection(endpoint: Endpoint) -> http.client.HTTPConnection:
    """A connection to the address that was checked; HTTP and TLS still go by the name."""

    def dial() -> socket.socket:
        return socket.create_connection((endpoint.address, endpoint.port), endpoint.timeout)

    class Plain(http.client.HTTPConnection):
        def connect(self) -> None:
            self.sock = dial()

    class Secure(http.client.HTTPSConnection):
        def connect(self) -> None:
            self.sock = ssl.create_default_context().wrap_socket(dial(), server_hostname=endpoint.host)

    return (Secure if endpoint.secure else Plain)(endpoint.host, endpoint.port, timeout=endpoint.timeout)


def at_address(url: str, model: str, *, anywhere: bool = False, timeout: float = 120.0) -> Endpoint:
    """Check the address of a server and fix it to one number.

    Args:
        url: base address, such as ``http://127.0.0.1:8080/v1``.
        model: name of the model as the server knows it.
        anywhere: whether a public address is allowed.
        timeout: seconds that one answer may take.

    Raises:
        Refusal: no such address (WM660), or one that is not local (WM661).
    """
    try:
        parts = urlsplit(url.strip())
        host, port = parts.hostname or "", parts.port
    except ValueError as error:
        raise Refusal(BAD_ADDRESS.at(url, str(error))) from error
    if parts.scheme not in {"http", "https"} or not host:
        raise Refusal(BAD_ADDRESS.at(url, "it does not begin with http:// or https:// and a name"))
    if parts.username or parts.password or parts.query or parts.fragment:
        raise Refusal(BAD_ADDRESS.at(host, "it holds more than a server, a port and a path"))
    if not model.strip():
        raise Refusal(BAD_ADDRESS.at(url, "the model has no name"))
    port = port or (443 if parts.scheme == "https" else 80)
    try:
        found = list(dict.fromkeys(str(row[4][0]) for row in socket.getaddrinfo(host, port, type=socket.SOCK_STREAM)))
    except (OSError, UnicodeError) as error:
        raise Refusal(BAD_ADDRESS.at(url, str(error))) from error
    local = [address for address in found if _is_local(address)]
    if len(local) < len(found) and not anywhere:
        public = ", ".join(address for address in found if address not in local)
        raise Refusal(NOT_LOCAL.at(url, "" if public == host else f"{host} is {public}"))
    chosen = (local or found)[0]
    path = parts.path.rstrip("/") + "/chat/completions"
    return Endpoint(host, port, path, parts.scheme == "https", chosen, model.strip(), timeout, not _is_local(chosen))


def _is_local(address: str) -> bool:
    number = ipaddress.ip_address(address.partition("%")[0])
    mapped = getattr(number, "ipv4_mapped", None)
    number = mapped or number
    return any(number in network for network in _LOCAL if network.version == number.version)
