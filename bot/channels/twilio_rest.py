"""Texts sent by SMS or WhatsApp through Twilio's REST API, by its official client.

Twilio's page "Messages resource" (docs/messaging/api/message-resource). A request that Twilio
may have taken, but did not answer, is unclear: its list of messages tells.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import datetime, timedelta
from typing import Any

from requests.exceptions import ConnectionError as NoConnectionError
from requests.exceptions import ConnectTimeout, RequestException, SSLError

# The package carries no types.
from twilio.base.exceptions import (  # type: ignore[import-untyped]
    TwilioException,
    TwilioRestException,
)
from twilio.http import HttpClient  # type: ignore[import-untyped]
from twilio.http.http_client import TwilioHttpClient  # type: ignore[import-untyped]
from twilio.rest import Client  # type: ignore[import-untyped]

from bot.channels.channel import SendError, Sent, Status, TryLaterError, UnclearError
from bot.channels.twilio_errors import error_of
from bot.messages import Outgoing

# For the connection and for each wait on it; well under the lease that a claim has.
TIMEOUT_S = 10.0
# Twilio's bounds on how long a text may wait at it ("ValidityPeriod").
MOST_VALID_S = 36_000
LEAST_VALID_S = 1
# The latest messages to a number that are looked through for one that may have gone: far more
# than go to one person while a claim holds.
_LOOK_THROUGH = 50
# Twilio tells the time of a message in whole seconds, by a clock that is not ours.
_CLOCKS_DIFFER = timedelta(minutes=1)

# All of Twilio's words for how far a message is, as ours (the API description's enumeration).
STATUSES: dict[str, Status] = {
    "accepted": "accepted",
    "scheduled": "accepted",
    "queued": "accepted",
    "sending": "accepted",
    "sent": "sent",
    "delivered": "delivered",
    "partially_delivered": "delivered",
    "read": "delivered",
    "undelivered": "undelivered",
    "failed": "undelivered",
    "canceled": "undelivered",
}


class TwilioRest:
    """The channel "twilio_sms", outgoing."""

    def __init__(
        self,
        account_sid: str,
        auth_token: str,
        sender: str,
        *,
        status_url: str | None = None,
        http_client: HttpClient | None = None,
    ) -> None:
        """sender: the usual number, or the Messaging Service ("MG..."). status_url: where Twilio
        reports deliveries to; it gets the text's number as the query. http_client: what carries
        the requests, where it is not Twilio's own."""
        self._messages = Client(
            account_sid, auth_token, http_client=http_client or TwilioHttpClient(timeout=TIMEOUT_S)
        ).messages
        self._sender = sender
        self._status_url = status_url

    def send(self, outgoing: Outgoing) -> Sent:
        """Hand a text to Twilio. Raises the four SendErrors."""
        request: dict[str, Any] = {"to": outgoing.to, "body": outgoing.text}
        sender = _alike(outgoing.sent_from or self._sender, outgoing.to)
        if sender.startswith("MG"):
            request["messaging_service_sid"] = sender
        else:
            request["from_"] = sender
        if outgoing.valid_for is not None:
            seconds = int(outgoing.valid_for.total_seconds())
            request["validity_period"] = max(LEAST_VALID_S, min(seconds, MOST_VALID_S))
        if self._status_url is not None and outgoing.text_id is not None:
            request["status_callback"] = f"{self._status_url}?text={outgoing.text_id}"
        with _as_send_errors():
            message = self._messages.create(**request)
            sent = _sent(message)
        if sent.status == "undelivered":
            raise error_of(message.error_code)
        return sent

    def find(self, outgoing: Outgoing, since_utc: datetime) -> Sent | None:
        """What Twilio lists as sent to that number since then, with the same words. One that did
        not arrive may be sent again, so that it does not count. Raises TryLaterError when Twilio
        does not say."""
        try:
            with _as_send_errors():
                listed = self._messages.list(to=outgoing.to, limit=_LOOK_THROUGH)
                for message in listed:
                    if _is_it(message, outgoing, since_utc - _CLOCKS_DIFFER):
                        return _sent(message)
        except SendError as error:
            raise TryLaterError(f"the list of messages: {error}") from error
        return None


def _alike(sender: str, to: str) -> str:
    """The sender on the receiver's channel: WhatsApp is answered by WhatsApp."""
    if to.startswith("whatsapp:") and sender.startswith("+"):
        return f"whatsapp:{sender}"
    return sender


def _sent(message: Any) -> Sent:
    sid, status = message.sid, STATUSES.get(str(message.status))
    if not isinstance(sid, str) or not sid or status is None:
        raise UnclearError(f"Twilio's answer has no id, or a status that is not known: {status}")
    return Sent(sid, status)


def _is_it(message: Any, outgoing: Outgoing, since_utc: datetime) -> bool:
    made_utc = message.date_created
    if made_utc is None or made_utc < since_utc:
        return False
    if STATUSES.get(str(message.status)) == "undelivered":
        return False
    # A trial account puts a line of its own in front.
    return str(message.direction).startswith("outbound") and _words(message.body).endswith(
        _words(outgoing.text)
    )


def _words(text: str | None) -> str:
    return re.sub(r"\s+", " ", text or "").strip()


@contextmanager
def _as_send_errors() -> Iterator[None]:
    """Whatever goes wrong, as one of the four. What is not surely one of the others is unclear."""
    try:
        yield
    except TwilioRestException as error:
        raise error_of(error.code, error.status) from error
    except (ConnectTimeout, SSLError) as error:
        raise TryLaterError(f"no connection to Twilio ({type(error).__name__})") from error
    except NoConnectionError as error:
        # Either it never stood, or it broke with the text perhaps through.
        if _never_stood(error):
            raise TryLaterError("no connection to Twilio") from error
        raise UnclearError("the connection to Twilio broke") from error
    except RequestException as error:
        raise UnclearError(f"no answer from Twilio ({type(error).__name__})") from error
    except (TwilioException, ValueError, LookupError, TypeError, AttributeError) as error:
        raise UnclearError(f"an answer that is not Twilio's ({type(error).__name__})") from error


def _never_stood(error: NoConnectionError) -> bool:
    reason = getattr(error.args[0] if error.args else None, "reason", None)
    return type(reason).__name__ in {"NewConnectionError", "NameResolutionError"}
