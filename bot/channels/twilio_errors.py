"""Twilio's error codes as what to do about them; the table is in twilio_errors.txt."""

from __future__ import annotations

from functools import cache
from importlib import resources

from bot.channels.channel import (
    NeverError,
    OptedOutError,
    SendError,
    TryLaterError,
    UnclearError,
)

_KINDS: dict[str, type[SendError]] = {
    "later": TryLaterError,
    "never": NeverError,
    "opted_out": OptedOutError,
    "unclear": UnclearError,
}
_TOO_MANY_REQUESTS = 429


@cache
def table() -> dict[int, tuple[str, str]]:
    """By code: "later", "never", "opted_out" or "unclear", and why."""
    found = {}
    text = resources.files("bot.channels").joinpath("twilio_errors.txt").read_text("utf-8")
    for line in text.splitlines():
        if line.strip() and not line.startswith("#"):
            code, kind, why = line.split(maxsplit=2)
            found[int(code)] = (kind, why)
    return found


def error_of(code: int | None, http_status: int | None = None) -> SendError:
    """The error that a code stands for, `http_status` deciding where the code is not known.

    The message names the code and our own words for it: Twilio's repeat the receiver's number.
    """
    known = None if code is None else table().get(code)
    if known is not None:
        kind, why = known
        return _KINDS[kind](f"error {code}: {why}")
    told = f"HTTP status {http_status}" if code is None or code == http_status else f"error {code}"
    if http_status == _TOO_MANY_REQUESTS:
        return TryLaterError(f"{told}: too many requests at once")
    if http_status is not None and 400 <= http_status < 500:
        return NeverError(f"{told}: refused")
    return UnclearError(f"{told}: nobody knows")
