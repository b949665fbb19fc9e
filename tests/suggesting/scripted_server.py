"""A model server on this machine that answers by a script: one row a request, or the same for all."""

from __future__ import annotations

import contextlib
import json
import ssl
import threading
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from typing import Any

__all__ = ["Server", "completion", "serving"]

Reply = Callable[["Server", BaseHTTPRequestHandler, dict[str, Any]], None]


@dataclass
class Server:
    """``url`` is its base address; ``asked`` holds every request that came, ``paths`` where it went."""

    reply: Reply
    url: str = ""
    asked: list[dict[str, Any]] = field(default_factory=list)
    paths: list[str] = field(default_factory=list)

    @property
    def said(self) -> list[str]:
        """What the user's message of each request held."""
        return [row["messages"][-1]["content"] for row in self.asked]


def send(handler: BaseHTTPRequestHandler, body: bytes, status: int = 200, *, promised: int | None = None) -> None:
    handler.send_response(status)
    handler.send_header("Content-Type", "application/json")
    handler.send_header("Content-Length", str(len(body) if promised is None else promised))
    handler.end_headers()
    handler.wfile.write(body)


def completion(content: str) -> bytes:
    """A whole answer around what the model wrote."""
    return json.dumps({"choices": [{"message": {"role": "assistant", "content": content}}]}).encode()


def drafts(*rows: dict[str, Any]) -> Reply:
    """Answers every request with these rows."""
    return lambda _server, handler, _asked: send(handler, completion(json.dumps({"drafts": list(rows)})))


def raw(body: bytes, status: int = 200, promised: int | None = None) -> Reply:
    """Answers every request with these bytes."""
    return lambda _server, handler, _asked: send(handler, body, status, promised=promised)


def slow(seconds: float, *, trickle: bool = False) -> Reply:
    """Answers too late, or byte by byte."""

    def reply(_server: Server, handler: BaseHTTPRequestHandler, _asked: dict[str, Any]) -> None:
        body = completion('{"drafts": []}')
        try:
            if not trickle:
                time.sleep(seconds)
                send(handler, body)
                return
            send(handler, b"", promised=len(body))
            for number in range(len(body)):
                handler.wfile.write(body[number : number + 1])
                handler.wfile.flush()
                time.sleep(seconds)
        except OSError:
            pass  # the one who asked has gone away, as it should

    return reply


@contextlib.contextmanager
def serving(reply: Reply, secure: ssl.SSLContext | None = None) -> Iterator[Server]:
    """Run the server for a while, over TLS when *secure* is given."""
    server = Server(reply)

    class Handler(BaseHTTPRequestHandler):
        def do_POST(self) -> None:
            asked = json.loads(self.rfile.read(int(self.headers["Content-Length"])))
            server.asked.append(asked)
            server.paths.append(self.path)
            server.reply(server, self, asked)

        def handle(self) -> None:
            with contextlib.suppress(OSError):  # one who does not trust the certificate hangs up
                super().handle()

        def log_message(self, *_args: object) -> None:
            """Quiet."""

    with ThreadingHTTPServer(("127.0.0.1", 0), Handler) as listening:
        listening.daemon_threads = True
        if secure is not None:
            listening.socket = secure.wrap_socket(listening.socket, server_side=True)
        thread = threading.Thread(target=listening.serve_forever, kwargs={"poll_interval": 0.02}, daemon=True)
        thread.start()
        server.url = f"http{'s' if secure else ''}://127.0.0.1:{listening.server_port}/v1"
        try:
            yield server
        finally:
            listening.shutdown()
            thread.join()
