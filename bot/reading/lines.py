"""`pailtext read`: one JSON object a line in, one out, as the reading contract says."""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator
from datetime import datetime
from typing import Any

from bot.reading.read import read
from bot.reading.understanding import Profile


def answer_lines(lines: Iterable[str]) -> Iterator[str]:
    """What each line means, in the same order. Raises ValueError on a line that is not one."""
    for number, line in enumerate(lines, start=1):
        if line.strip():
            try:
                yield json.dumps(answer(json.loads(line)))
            except (KeyError, TypeError, ValueError) as error:
                raise ValueError(f"line {number}: {error}") from error


def answer(asked: dict[str, Any]) -> dict[str, Any]:
    """`text`, `sent` (local ISO time) and perhaps `profile` in, `readings` and `ask` out."""
    known = asked.get("profile") or {}
    profile = Profile(
        units=known.get("units", "us"),
        bucket_gallons=known.get("bucket_gallons"),
        taps=known.get("taps"),
        tree_labels=tuple(known.get("tree_labels", ())),
        lots=tuple(known.get("lots", ())),
        boiling=known.get("boiling", False),
    )
    understanding = read(asked["text"], datetime.fromisoformat(asked["sent"]), profile)
    return {
        "readings": [reading.as_dict() for reading in understanding.readings],
        "ask": understanding.ask,
    }
