"""Asking a weather service politely: who we are, cached as it wishes, few tries, never in step.

A fresh answer is taken from the cache, an old one is asked for with If-Modified-Since, and a 304
gives the cached body again (RFC 9111). A try that fails for a passing reason is made again after a
pause of random length; three tries in all.
"""

from __future__ import annotations

import random
import sqlite3
import threading
import time
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

import httpx
import structlog
from hishel import CacheOptions, SqliteStorage
from hishel.httpx import CacheTransport

from bot.weather.errors import (
    NotCoveredError,
    RefusedError,
    TryLaterError,
)

TRIES = 3
FIRST_PAUSE_SECONDS = 0.5
LONGEST_PAUSE_SECONDS = 5.0
"""The US service's documentation asks to retry after about 5 s."""
TIMEOUT_SECONDS = 10.0
CACHE_KEPT_SECONDS = 2 * 86400.0
"""An answer older than that is of no use even to ask whether it changed."""
CACHE_BYTES = 500 * 1024**2
"""Some 5,000 cells: a raw US gridpoint is about 100 KB."""

log = structlog.get_logger("pailtext.weather")


def cached_client(
    contact: str,
    cache_path: Path | None,
    transport: httpx.BaseTransport | None = None,
    timeout_seconds: float = TIMEOUT_SECONDS,
) -> httpx.Client:
    """A client that says who it is and keeps answers as long as the service says.

    contact: the host's mail address or site: both services refuse requests without one.
    cache_path: file of the cache; None keeps it in memory. A private cache: max-age counts,
    s-maxage (for proxies) does not. Raises ValueError for an empty contact.
    """
    if "@" not in contact and "." not in contact:
        raise ValueError(
            f"the weather contact is {contact!r}, wanted a mail address or a site: the weather "
            "services refuse requests that do not say whom to write to"
        )
    storage = SqliteStorage(
        connection=None
        if cache_path is not None
        else sqlite3.connect(":memory:", check_same_thread=False, isolation_level=None),
        database_path=cache_path or ":memory:",
        default_ttl=CACHE_KEPT_SECONDS,
        max_size=CACHE_BYTES,
    )
    return httpx.Client(
        transport=CacheTransport(
            next_transport=transport or httpx.HTTPTransport(),
            storage=storage,
            rfc=CacheOptions(shared=False),
        ),
        headers={"User-Agent": f"Pailtext ({contact})", "Accept-Encoding": "gzip"},
        timeout=timeout_seconds,
        follow_redirects=True,
    )


class Fetcher:
    """Fetches JSON for one source. Safe to use from several threads."""

    def __init__(
        self,
        client: httpx.Client,
        source: str,
        *,
        requests_per_second: float,
        sleep: Callable[[float], None] = time.sleep,
        chance: random.Random | None = None,
    ) -> None:
        self._client = client
        self._source = source
        self._gap_seconds = 1 / requests_per_second
        self._sleep = sleep
        self._chance = chance or random.Random()
        self._turn = threading.Lock()
        self._next_at = 0.0

    def json(
        self,
        url: str,
        params: Mapping[str, str] | None = None,
        accept: str = "application/json",
        *,
        past_cache: bool = False,
    ) -> dict[str, Any]:
        """The JSON object at `url`. past_cache: ask the service itself, for a cached answer that
        turned out bad.

        Raises TryLaterError after three tries (no connection, too slow, 429, 5xx, not JSON),
        NotCoveredError for 404, RefusedError for any other refusal.
        """
        headers = {"Accept": accept}
        for tried in range(1, TRIES + 1):
            if past_cache or tried > 1:
                headers["Cache-Control"] = "no-cache"
            try:
                return self._once(url, params, headers)
            except TryLaterError as error:
                if tried == TRIES:
                    raise
                pause = self._pause_seconds(tried)
                log.info("weather_retry", source=self._source, error=str(error), pause=pause)
                self._sleep(pause)
        raise AssertionError("unreachable: the last try returns or raises")

    def _once(
        self, url: str, params: Mapping[str, str] | None, headers: Mapping[str, str]
    ) -> dict[str, Any]:
        self._wait_for_turn()
        try:
            response = self._client.get(url, params=params, headers=headers)
        except httpx.TooManyRedirects as error:
            raise RefusedError(f"{self._source}: {url} redirects for ever") from error
        except httpx.HTTPError as error:
            raise TryLaterError(f"{self._source}: {type(error).__name__} at {url}") from error
        self._complain(response)
        try:
            body = response.json()
        except ValueError as error:
            raise TryLaterError(f"{self._source}: the answer of {url} is not JSON") from error
        if not isinstance(body, dict):
            raise TryLaterError(f"{self._source}: the answer of {url} is no JSON object")
        return body

    def _complain(self, response: httpx.Response) -> None:
        if response.status_code == httpx.codes.NON_AUTHORITATIVE_INFORMATION:
            log.warning("weather_deprecated", source=self._source, url=str(response.url))
        if response.is_success:
            return
        said = f"{self._source}: {response.status_code} {problem(response)}"
        if response.status_code == httpx.codes.TOO_MANY_REQUESTS or response.is_server_error:
            raise TryLaterError(said)
        if response.status_code == httpx.codes.NOT_FOUND:
            raise NotCoveredError(said)
        raise RefusedError(said)

    def _pause_seconds(self, tried: int) -> float:
        longest = min(LONGEST_PAUSE_SECONDS, FIRST_PAUSE_SECONDS * 4 ** (tried - 1))
        return self._chance.uniform(longest / 2, longest)

    def _wait_for_turn(self) -> None:
        """Keeps requests apart, over all threads, so that a round of many cells is no burst."""
        with self._turn:
            now = time.monotonic()
            wait = max(0.0, self._next_at - now)
            self._next_at = max(now, self._next_at) + self._gap_seconds
        if wait > 0:
            self._sleep(wait)


def problem(response: httpx.Response) -> str:
    """What an error answer says of itself: the title and detail of a problem document (RFC 7807),
    else the start of its text."""
    try:
        body = response.json()
    except ValueError:
        return response.text[:120].strip()
    if not isinstance(body, dict):
        return ""
    return ": ".join(str(body[key]) for key in ("title", "detail") if body.get(key))
