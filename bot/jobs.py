"""What runs by the clock, carried by DBOS: schedules, one queue, and recovery after a crash.

DBOS only carries: each job looks at the ledger and does what the rows there ask for, so that a
job may be lost, late or repeated without harm. So one job, one workflow, without steps. What is
known of DBOS 3 and minded here:

- The version of the application is a constant. By default it is a hash of this source, and work
  that another version left would wait for ever. So workflows keep their names and arguments.
- No two live processes may have one executor id, or they run each other's work: `Presence`.
- Nobody takes over a dead process's work by itself: `take_over`.
- The store on SQLite has to be in WAL mode already: our own engine opened it first.
- Schedules are applied, not created; queues are registered after the launch.
- Finished workflows are kept for ever: `tidy` deletes them.
- A step that is tried again by DBOS logs a traceback at each try. Here the outbox row knows when
  to try again, and nothing is raised; a try comes back through the queue, and so it counts for
  the sender's rate.
- Its threads try a database that is away again without end, and Python waits for them at its end:
  `serving.leave` does not.

Only `serve` and `work` import this module, which takes half a second.
"""

from __future__ import annotations

import logging
from collections.abc import Callable
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from typing import Any

from dbos import DBOS, DBOSClient, DBOSConfig

from bot.ledger import Due
from bot.ledger.presence import Presence

log = logging.getLogger(__name__)

APPLICATION = "pailtext"
# Never changed: see above.
APPLICATION_VERSION = "1"
SENDING = "sending"
CHORES = "chores"
# A tick that comes later than this, after the machine slept, has nothing to say that the next
# one does not.
LATEST_TICK = timedelta(minutes=10)
KEPT_FOR = timedelta(days=30)
_FINISHED = ["SUCCESS", "ERROR", "CANCELLED", "MAX_RECOVERY_ATTEMPTS_EXCEEDED"]
_AT_ONCE = 500
# Texts in hand when the engine is told to stop are finished first.
_LAST_TEXTS_S = 15


@dataclass(frozen=True, slots=True)
class Rhythm:
    """How often, as crontab lines in UTC, and how quickly.

    texts, period_s: how many texts one sender may hand over in how many seconds.
    at_once: how many one process hands over at the same time; the others are left to others.
    """

    plan: str = "*/15 * * * *"
    carry: str = "* * * * *"
    take_over: str = "* * * * *"
    tidy: str = "17 4 * * *"
    texts: int = 10
    period_s: float = 10.0
    at_once: int = 20
    poll_s: float = 1.0


@dataclass(frozen=True, slots=True)
class Work:
    """What the jobs do.

    rounds: each plans and owes what became due since the one before. take_up: reads the texts
    that were left unread. due, deliver: of the outbox.
    """

    rounds: tuple[Callable[[], int], ...]
    take_up: Callable[[], int]
    due: Callable[[], list[Due]]
    deliver: Callable[[int], str]


class Jobs:
    """The engine of this process: at most one at a time."""

    def __init__(
        self, database_url: str, presence: Presence, work: Work, rhythm: Rhythm | None = None
    ) -> None:
        self._url = database_url
        self._presence = presence
        self._work = work
        self._rhythm = rhythm or Rhythm()
        self._client: DBOSClient | None = None

    def start(self) -> None:
        """Begin to work. Raises `presence.NoRoomError` where there is room for one only."""
        self._presence.begin()
        try:
            self._launch()
        except BaseException:
            self.stop()
            raise

    def stop(self) -> None:
        """Finish what is in hand and end. What is not finished is done by the next process."""
        DBOS.destroy(destroy_registry=True, workflow_completion_timeout_sec=_LAST_TEXTS_S)
        if self._client is not None:
            self._client.destroy()
            self._client = None
        self._presence.end()

    def _launch(self) -> None:
        rhythm = self._rhythm
        config: DBOSConfig = {
            "name": APPLICATION,
            "system_database_url": self._url,
            "application_version": APPLICATION_VERSION,
            "executor_id": self._presence.name,
            # It praises a hosted console at INFO.
            "log_level": "WARNING",
            # Nothing here waits for messages, and the connection for them would stay open.
            "use_listen_notify": False,
            "scheduler_polling_interval_sec": rhythm.poll_s,
        }
        DBOS(config=config)
        _workflow("send", self._send)
        plan, carry = _workflow("plan", self._plan), _workflow("carry", self._carry)
        take_over, tidy = _workflow("take_over", self._take_over), _workflow("tidy", self._tidy)
        DBOS.launch()
        DBOS.register_queue(
            SENDING,
            worker_concurrency=rhythm.at_once,
            partition_limiter={"limit": rhythm.texts, "period": rhythm.period_s},
            polling_interval_sec=rhythm.poll_s,
        )
        DBOS.register_queue(CHORES, polling_interval_sec=rhythm.poll_s)
        self._client = DBOSClient(system_database_url=self._url)
        DBOS.apply_schedules(
            [
                {"schedule_name": name, "workflow_fn": job, "schedule": cron, "context": None}
                for name, job, cron in (
                    ("plan", plan, rhythm.plan),
                    ("carry", carry, rhythm.carry),
                    ("take_over", take_over, rhythm.take_over),
                    ("tidy", tidy, rhythm.tidy),
                )
            ]
        )

    # --- the jobs ----------------------------------------------------------------------------

    def _send(self, text_id: int) -> str:
        """Send one text of the outbox, if it is still to be sent."""
        return self._work.deliver(text_id)

    def _plan(self, scheduled_utc: datetime, _context: Any) -> None:
        """Every quarter hour: who is owed what since the last time?"""
        if self._is_too_late(scheduled_utc):
            return
        for go in self._work.rounds:
            try:
                go()
            except Exception:
                # The others are planned all the same, and this one again at the next tick.
                log.exception("Could not plan what is owed")

    def _carry(self, scheduled_utc: datetime, _context: Any) -> None:
        """Every minute: take up what was left unread, and queue what is due.

        A try of a text is queued once, however often it is found due: its id is that of the text
        and the number of tries before it.
        """
        if self._is_too_late(scheduled_utc):
            return
        try:
            self._work.take_up()
        except Exception:
            log.exception("Could not take up what was left unread")
        assert self._client is not None
        for due in self._work.due():
            self._client.enqueue(
                {
                    "queue_name": SENDING,
                    "workflow_name": "send",
                    "workflow_id": f"send-{due.id}-{due.tries}",
                    "queue_partition_key": due.sent_from or "usual",
                    "app_version": APPLICATION_VERSION,
                },
                due.id,
            )

    def _take_over(self, _scheduled_utc: datetime, _context: Any) -> None:
        """Every minute: queue anew what a process had begun that is no more."""
        self._presence.renew()
        begun = DBOS.list_workflows(status="PENDING", load_input=False, load_output=False)
        others: dict[str, list[str]] = {}
        for each in begun:
            if each.executor_id is not None and each.executor_id != self._presence.name:
                others.setdefault(each.executor_id, []).append(each.workflow_id)
        for name, ids in others.items():
            if self._presence.is_gone(name):
                log.warning("Worker %s is no more; taking over %d jobs", name, len(ids))
                DBOS.resume_workflows(ids, queue_name=CHORES)

    def _tidy(self, _scheduled_utc: datetime, _context: Any) -> None:
        """Every night: delete what was finished a month ago."""
        before = (datetime.now(UTC) - KEPT_FOR).isoformat()
        while True:
            old = DBOS.list_workflows(
                status=_FINISHED,
                completed_before=before,
                limit=_AT_ONCE,
                load_input=False,
                load_output=False,
            )
            if not old:
                return
            DBOS.delete_workflows([each.workflow_id for each in old])

    def _is_too_late(self, scheduled_utc: datetime) -> bool:
        return datetime.now(UTC) - scheduled_utc > LATEST_TICK


def _workflow(name: str, does: Callable[..., Any]) -> Callable[..., Any]:
    """Make `does` known under a name. DBOS takes functions, and these are methods."""

    def job(*given: Any) -> Any:
        return does(*given)

    return DBOS.workflow(name=name)(job)
