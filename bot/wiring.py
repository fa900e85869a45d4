"""Picks the concrete parts and puts them together. Nothing else does."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from bot import places
from bot.channels.channel import Channel
from bot.channels.console import Console
from bot.clock import DEFAULT_ZONE as DEFAULT_ZONE
from bot.clock import Clock
from bot.conversation import Conversation, Senses
from bot.inbox import Inbox
from bot.ledger import Ledger
from bot.messages import CONSOLE_DOOR, SMS_DOOR, TWILIO_STATUS_PATH
from bot.outbox import Outbox
from bot.reading import read, settle
from bot.rounds import Round
from bot.settings import Settings


@dataclass(frozen=True, slots=True)
class Parts:
    """Pailtext, put together. rounds: what the worker goes every quarter hour."""

    ledger: Ledger
    conversation: Conversation
    inbox: Inbox
    outbox: Outbox
    clock: Clock
    rounds: tuple[Round, ...] = ()


def build(
    database_url: str,
    clock: Clock,
    default_zone: str = DEFAULT_ZONE,
    channels: Mapping[str, Channel] | None = None,
) -> Parts:
    """Pailtext on the store at `database_url`, with its tables brought up to date.

    channels: what sends the texts that are owed, by the name of the door; nothing, unless given.
    """
    ledger = Ledger.open(database_url)
    senses = Senses(
        read=read, settle=settle, find_place=places.find, likely_places=places.candidates
    )
    conversation = Conversation(senses, default_zone)
    return Parts(
        ledger=ledger,
        conversation=conversation,
        inbox=Inbox(ledger, conversation, clock, default_zone),
        outbox=Outbox(ledger, channels or {}, clock, default_zone),
        clock=clock,
    )


def channels_of(settings: Settings) -> dict[str, Channel]:
    """The ways out that the settings allow, by the name of the door."""
    found: dict[str, Channel] = {CONSOLE_DOOR: Console()}
    token = settings.twilio_auth_token
    if settings.twilio_account_sid and token and settings.twilio_from:
        # Its client takes a quarter of a second to import, which `chat` need not wait for.
        from bot.channels.twilio_rest import TwilioRest

        found[SMS_DOOR] = TwilioRest(
            settings.twilio_account_sid,
            token.get_secret_value(),
            settings.twilio_from,
            status_url=status_url(settings),
        )
    return found


def with_folder(settings: Settings) -> str:
    """The store's URL; the folder of a SQLite file is made, for its owner's eyes only."""
    path = settings.sqlite_file
    if path is not None:
        path.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
    return settings.database_url


def status_url(settings: Settings) -> str | None:
    """Where Twilio is told to report deliveries, None without a public URL."""
    return settings.public_url and settings.public_url + TWILIO_STATUS_PATH
