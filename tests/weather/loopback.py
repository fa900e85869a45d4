"""A weather service on loopback that answers as told and remembers what it was asked."""

from __future__ import annotations

import json
import threading
import time
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, field
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from typing import Any
from urllib.parse import parse_qs, urlsplit


@dataclass(frozen=True)
class Asked:
    """One request. headers: by small letters."""

    path: str
    query: Mapping[str, list[str]]
    headers: Mapping[str, str]


@dataclass(frozen=True)
class Answer:
    """status, body (an object is sent as JSON), headers; seconds: how long it dawdles."""

    body: Any = None
    status: int = 200
    headers: Mapping[str, str] = field(default_factory=dict)
    seconds: float = 0.0


Script = Callable[[Asked], Answer]


class Loopback:
    """The running service. `script` may be changed between requests."""

    def __init__(self, url: str) -> None:
        self.url = url
        self.asked: list[Asked] = []
        self.script: Script = lambda asked: Answer({"title": "no script"}, status=500)


@contextmanager
def running() -> Iterator[Loopback]:
    """A service on a free port of this machine."""

    class Handler(BaseHTTPRequestHandler):
        def do_GET(self) -> None:
            parts = urlsplit(self.path)
            asked = Asked(
                parts.path,
                parse_qs(parts.query),
                {name.lower(): value for name, value in self.headers.items()},
            )
            service.asked.append(asked)
            answer = service.script(asked)
            time.sleep(answer.seconds)
            body = (
                answer.body if isinstance(answer.body, bytes) else json.dumps(answer.body).encode()
            )
            if answer.status == 304:
                body = b""
            self.send_response(answer.status)
            for name, value in answer.headers.items():
                self.send_header(name, value)
            self.send_header("Content-Length", str(len(body)))
            self.end_headers()
            try:
                self.wfile.write(body)
            except (BrokenPipeError, ConnectionResetError):
                self.close_connection = True  # the client gave up waiting, as a test wants

        def log_message(self, format: str, *args: Any) -> None:
            """Nothing: tests look at `asked`."""

    server = ThreadingHTTPServer(("127.0.0.1", 0), Handler)
    server.daemon_threads = True
    service = Loopback(f"http://127.0.0.1:{server.server_address[1]}")
    thread = threading.Thread(target=server.serve_forever, args=(0.01,), daemon=True)
    thread.start()
    try:
        yield service
    finally:
        server.shutdown()
        server.server_close()
        thread.join()
