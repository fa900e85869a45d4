"""Picks the concrete parts and puts them together. Nothing else does."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from datetime import timedelta
from functools import partial
from typing import TYPE_CHECKING

from platformdirs import user_cache_path

from bot import places
from bot.channels.channel import Channel
from bot.channels.console import Console
from bot.clock import DEFAULT_ZONE as DEFAULT_ZONE
from bot.clock import Clock, SystemClock
from bot.conversation import Conversation, Senses
from bot.conversation.reach import Reach
from bot.forecasts import LedgerDays, LedgerForecasts
from bot.helper_lines import HelperLines
from bot.inbox import Inbox
from bot.ledger import Ledger
from bot.links import Links, links_on
from bot.messages import CONSOLE_DOOR, EMAIL_DOOR, SMS_DOOR, TWILIO_STATUS_PATH
from bot.morning import Planner
from bot.outbox import Outbox
from bot.outdoors import Skies
from bot.reading import read, settle
from bot.rounds import Round
from bot.weather import Direct, Latest, Place
from bot.weather.file import FileWeather
from bot.weather.invented import InventedWeather

if TYPE_CHECKING:
    from bot.channels.email_proof import Proof
    from bot.channels.email_servers import Servers
    from bot.mailroom import Mailroom
    from bot.settings import Settings


@dataclass(frozen=True, slots=True)
class Parts:
    """Pailtext, put together. planner, helper_lines: say what is owed unasked; rounds: the same for
    the worker, which goes them every quarter hour. links: to pages, where there is a public URL.
    mail: the servers; mailroom: what takes the mails in; None both where no mail is set up."""

    ledger: Ledger
    conversation: Conversation
    inbox: Inbox
    outbox: Outbox
    clock: Clock
    planner: Planner
    helper_lines: HelperLines
    rounds: tuple[Round, ...] = ()
    links: Links | None = None
    mail: Mail | None = None
    mailroom: Mailroom | None = None


@dataclass(frozen=True, slots=True)
class Mail:
    """Mail, as the settings have it. proof: tells whether a mail comes from its address."""

    servers: Servers
    proof: Proof


SkiesOver = Callable[[Ledger], Skies]
# How long a text waits for the weather services, of the 15 s that Twilio waits (our own).
PATIENCE = timedelta(seconds=7)
# The weather of a file, and invented weather, is the same anywhere: the middle of the maple range,
# for those whose place is not known (our own).
_ANYWHERE = Place(44.0, -73.0)


def build(
    database_url: str,
    clock: Clock,
    default_zone: str = DEFAULT_ZONE,
    channels: Mapping[str, Channel] | None = None,
    skies: SkiesOver | None = None,
    mail: Mail | None = None,
    public_url: str | None = None,
) -> Parts:
    """Pailtext on the store at `database_url`, with its tables brought up to date.

    channels: what sends the texts that are owed, by the name of the door; nothing, unless given.
    skies: where the weather comes from; no forecast and no alerts, unless given. mail: the mail
    servers, beside the channels. public_url: where pages are reached.
    """
    ledger = Ledger.open(database_url)
    above = None if skies is None else skies(ledger)
    senses = Senses(
        read=read, settle=settle, find_place=places.find, likely_places=places.candidates
    )
    links = None if public_url is None else links_on(ledger, public_url)
    reach = Reach(
        None if mail is None else mail.servers.address,
        None if links is None else links.export_url,
    )
    conversation = Conversation(senses, default_zone, above, reach)
    ways_out = dict(channels or {})
    if mail is not None:
        ways_out[EMAIL_DOOR] = _post(mail, ledger, links, clock)
    inbox = Inbox(ledger, conversation, clock, default_zone)
    outbox = Outbox(ledger, ways_out, clock, default_zone)
    planner = Planner(ledger, above, default_zone)
    helper_lines = HelperLines(ledger, default_zone)
    return Parts(
        ledger=ledger,
        conversation=conversation,
        inbox=inbox,
        outbox=outbox,
        clock=clock,
        planner=planner,
        helper_lines=helper_lines,
        rounds=(
            Round("mornings", planner.plan_mornings_ahead, ledger, clock),
            Round("reminders", planner.plan_reminders, ledger, clock),
            Round("helpers", helper_lines.plan, ledger, clock),
        ),
        links=links,
        mail=mail,
        mailroom=None if mail is None else _mailroom(mail, inbox, outbox),
    )


# What mail needs is imported where there is mail: it takes a tenth of a second.


def _post(mail: Mail, ledger: Ledger, links: Links | None, clock: Clock) -> Channel:
    from bot.channels.email_imap import has_copy
    from bot.channels.email_smtp import EmailSmtp
    from bot.covers import Covers

    servers = mail.servers
    has_own_copy = partial(has_copy, servers)
    return EmailSmtp(servers, clock, Covers(ledger, links), has_own_copy)


def _mailroom(mail: Mail, inbox: Inbox, outbox: Outbox) -> Mailroom:
    from bot.mailroom import Mailroom

    return Mailroom(
        ledger=inbox.ledger,
        inbox=inbox,
        outbox=outbox,
        post=outbox.channels[EMAIL_DOOR],
        proof=mail.proof,
        clock=inbox.clock,
        own_address=mail.servers.address,
    )


def mail_of(settings: Settings) -> Mail | None:
    """The mail servers of the settings, None where they name none."""
    address, imap, smtp = settings.mail_address, settings.mail_imap, settings.mail_smtp
    if address is None or imap is None or smtp is None:
        return None
    from bot.channels.email_proof import proof
    from bot.channels.email_servers import Servers

    password = settings.mail_password
    servers = Servers(
        address=address,
        imap=imap,
        smtp=smtp,
        user=settings.mail_user or address,
        password="" if password is None else password.get_secret_value(),
    )
    return Mail(servers, proof(settings.mail_authserv_id))


def network_skies(settings: Settings) -> SkiesOver | None:
    """The weather services, with the last good forecasts kept in the ledger; None where the
    settings name no contact for them."""
    contact = settings.weather_contact
    if contact is None:
        return None

    def over(ledger: Ledger) -> Skies:
        # Their client takes a tenth of a second to import, which `read` need not wait for.
        from bot.weather.fetching import cached_client
        from bot.weather.services import network_sources

        cache = user_cache_path("pailtext", appauthor=False, ensure_exists=True)
        client = cached_client(contact, cache / "weather.sqlite3")
        latest = Latest(network_sources(client), LedgerForecasts(ledger))
        return Skies(latest, patience=PATIENCE, days=LedgerDays(ledger))

    return over


def file_skies(hours_csv: Iterable[str], default_zone: str = DEFAULT_ZONE) -> SkiesOver:
    """Weather from the lines of a file, everywhere the same. Raises UnreadableHoursError."""
    source = FileWeather(hours_csv, default_zone)
    return lambda _ledger: Skies(Direct(source), anywhere=_ANYWHERE)


def invented_skies(_ledger: Ledger) -> Skies:
    """Invented weather, which says that it is."""
    return Skies(Direct(InventedWeather()))


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


def build_all(settings: Settings, database_url: str) -> Parts:
    """Pailtext with every door, sky and mailbox that the settings open."""
    return build(
        database_url,
        SystemClock(),
        channels=channels_of(settings),
        skies=network_skies(settings),
        mail=mail_of(settings),
        public_url=settings.public_url,
    )


def with_folder(settings: Settings) -> str:
    """The store's URL; the folder of a SQLite file is made, for its owner's eyes only."""
    path = settings.sqlite_file
    if path is not None:
        path.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
    return settings.database_url


def status_url(settings: Settings) -> str | None:
    """Where Twilio is told to report deliveries, None without a public URL."""
    return settings.public_url and settings.public_url + TWILIO_STATUS_PATH
