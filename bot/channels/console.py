"""Texts shown at the console instead of being sent: for trying things out."""

from __future__ import annotations

import sys
import threading
from datetime import datetime
from typing import TextIO
from uuid import uuid4

from bot.channels.channel import Sent, UnclearError
from bot.messages import Outgoing


class Console:
    """Prints each text on a line of its own. Safe in threads."""

    def __init__(self, out: TextIO | None = None) -> None:
        """out: where to; standard output, unless given."""
        self._out = out
        self._lock = threading.Lock()
        self._shown: dict[int | None, Sent] = {}

    def send(self, outgoing: Outgoing) -> Sent:
        """Show a text. Raises UnclearError when the console is gone in the middle of it."""
        with self._lock:
            sent = Sent(f"console-{uuid4().hex}", "delivered")
            try:
                print(f"{outgoing.to}: {outgoing.text}", file=self._out or sys.stdout, flush=True)
            except (OSError, ValueError) as error:
                raise UnclearError(f"the console is gone ({type(error).__name__})") from error
            self._shown[outgoing.text_id] = sent
            return sent

    def find(self, outgoing: Outgoing, since_utc: datetime) -> Sent | None:
        """Whether this process has shown it, whenever: its number in the outbox tells."""
        with self._lock:
            return None if outgoing.text_id is None else self._shown.get(outgoing.text_id)
