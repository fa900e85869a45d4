"""Whole conversations, kept as data in fixtures/conversations (see `checks` for the format)."""

from __future__ import annotations

import json
from datetime import datetime
from pathlib import Path
from typing import Any

import pytest

from bot.clock import utc_time
from bot.messages import Incoming
from bot.wiring import DEFAULT_ZONE
from tests.conversation.checks import faults
from tests.conversation.stage import Stage

FOLDER = Path(__file__).parents[2] / "fixtures" / "conversations"
CONVERSATIONS = [
    json.loads(line)
    for path in sorted(FOLDER.glob("*.jsonl"))
    for line in path.read_text(encoding="utf-8").splitlines()
]
# Totals are sums of floats.
TOLERANCE = 0.002


@pytest.mark.parametrize("told", CONVERSATIONS, ids=[one["id"] for one in CONVERSATIONS])
def test_a_conversation_goes_as_its_file_says(told: dict[str, Any]) -> None:
    stage = Stage()
    first = told["steps"][0]["from"]
    wrong = []
    for step in told["steps"]:
        reply = _text(stage, step, first)
        wrong += [f"{step['text']!r} -> {reply!r} {fault}" for fault in faults(step, reply)]
    totals = stage.totals(first, told["steps"][-1]["at"])
    for name, value in told.get("final", {}).items():
        found = totals[name]
        if found is None or abs(found - value) > TOLERANCE * max(abs(value), 1):
            wrong.append(f"in the end {name} is {found}, should be {value}")
    assert not wrong, "\n".join([told["about"], *wrong])


def _text(stage: Stage, step: dict[str, Any], first: str) -> str:
    """Until somebody's place is known they share the first sender's clock, as in a replay."""
    parts = stage.parts
    with parts.ledger.reading() as book:
        zone = (
            parts.conversation.zone(book, step["from"])
            or parts.conversation.zone(book, first)
            or DEFAULT_ZONE
        )
    arrived = utc_time(datetime.fromisoformat(step["at"]), zone)
    incoming = Incoming("test", stage.next_id(), step["from"], step["text"], arrived)
    return parts.inbox.receive(incoming) or ""


def test_there_are_conversations_of_every_sort() -> None:
    assert len(CONVERSATIONS) >= 25
    assert len({one["id"] for one in CONVERSATIONS}) == len(CONVERSATIONS)
