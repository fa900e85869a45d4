"""What `pailtext doctor` finds, and what it says to do."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path

import httpx
import pytest
from sqlalchemy import text

from bot import doctor, settings
from bot.channels.channel import SendError, Sent, TryLaterError
from bot.clock import HandClock
from bot.doctor import Ask, Finding
from bot.ledger import Ledger, Store
from bot.messages import Outgoing
from tests.doors.running import running
from tests.doors.twilio_peer import OURS, PUBLIC_URL, TOKEN
from tests.outbox.post_office import Office


@pytest.fixture(autouse=True)
def _own_settings(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    for name in settings.names():
        monkeypatch.delenv(name, raising=False)
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))


@pytest.fixture
def _twilio(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PAILTEXT_PUBLIC_URL", PUBLIC_URL)
    monkeypatch.setenv("PAILTEXT_TWILIO_AUTH_TOKEN", TOKEN)


ACCOUNT = "AC" + "0" * 32


@pytest.fixture(autouse=True)
def _all_else(monkeypatch: pytest.MonkeyPatch, _own_settings: None) -> None:
    """What is needed besides the way in."""
    monkeypatch.setenv("PAILTEXT_TWILIO_ACCOUNT_SID", ACCOUNT)
    monkeypatch.setenv("PAILTEXT_TWILIO_FROM", OURS)
    monkeypatch.setenv("PAILTEXT_WEATHER_CONTACT", "host@sap.example")


class Twilio:
    """What would send, and sends nothing."""

    def __init__(self, error: SendError | None = None) -> None:
        self.error = error

    def send(self, outgoing: Outgoing) -> Sent:
        raise AssertionError("the doctor sends nothing")

    def find(self, outgoing: Outgoing, since_utc: datetime) -> Sent | None:
        if self.error is not None:
            raise self.error
        return None


def examine(ask: Ask | None = None, error: SendError | None = None) -> Iterator[Finding]:
    return doctor.examine(ask, Twilio(error))


def of(about: str, findings: list[Finding]) -> Finding:
    """The one finding about something."""
    (found,) = [each for each in findings if each.about == about]
    return found


def answers(status: int) -> Ask:
    return lambda _url, _form, _headers: status


def wrong(findings: list[Finding]) -> list[str]:
    """What the findings say is to be put right."""
    return [finding.about for finding in findings if finding.remedy is not None]


@pytest.mark.usefixtures("_twilio")
def test_all_is_well_when_the_server_answers_that_the_signed_form_is_no_text() -> None:
    findings = list(examine(answers(400)))
    assert wrong(findings) == []
    assert [finding.about for finding in findings] == [
        *("settings", "store", "mail", "webhook", "sending", "weather")
    ]
    assert f"{PUBLIC_URL}/in/twilio" in of("webhook", findings).found


def test_the_store_is_made_where_there_is_none(tmp_path: Path) -> None:
    list(examine(answers(400)))
    assert (tmp_path / "data" / "pailtext" / "pailtext.sqlite3").exists()


def test_a_webhook_without_token_is_found() -> None:
    finding = of("webhook", list(examine(answers(400))))
    assert finding.remedy is not None
    assert "PAILTEXT_TWILIO_AUTH_TOKEN and PAILTEXT_PUBLIC_URL" in finding.found


@pytest.mark.usefixtures("_twilio")
@pytest.mark.parametrize(
    ("status", "remedy"),
    [
        (403, "another token or another public URL"),
        (404, "Something else answers"),
        (503, "without a token"),
        (200, "unchanged"),
        (502, "unchanged"),
    ],
)
def test_any_other_answer_of_the_server_has_a_remedy(status: int, remedy: str) -> None:
    finding = of("webhook", list(examine(answers(status))))
    assert f"answers {status}" in finding.found
    assert finding.remedy is not None
    assert remedy in finding.remedy


@pytest.mark.usefixtures("_twilio")
def test_no_answer_at_all_is_found() -> None:
    def silence(url: str, _form: dict[str, str], _headers: dict[str, str]) -> int:
        raise httpx.ConnectError("refused", request=httpx.Request("POST", url))

    finding = of("webhook", list(examine(silence)))
    assert finding.remedy is not None
    assert "does not answer (ConnectError)" in finding.found


@pytest.mark.usefixtures("_twilio")
def test_a_public_url_that_is_not_encrypted_is_found(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PAILTEXT_PUBLIC_URL", "http://sap.example")
    assert wrong(list(examine(answers(400)))) == ["public URL"]


def test_a_wrong_and_a_misspelt_setting_are_found(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PAILTEXT_PUBLIC_URL", "sap.example")
    monkeypatch.setenv("PAILTEXT_TWILIO_TOKEN", "x")
    findings = list(examine(answers(400)))
    assert wrong(findings) == ["settings", "settings"]
    assert [finding.found.split()[0] for finding in findings] == [
        "PAILTEXT_TWILIO_TOKEN",
        "PAILTEXT_PUBLIC_URL",
    ]


@pytest.mark.parametrize("url", ["sqlite:////proc/none/p.sqlite3", "postgresql:///no?host=/none"])
def test_a_store_that_does_not_open_is_found(monkeypatch: pytest.MonkeyPatch, url: str) -> None:
    monkeypatch.setenv("PAILTEXT_DATABASE_URL", url)
    findings = list(examine(answers(400)))
    assert "store" in wrong(findings)
    assert "does not open" in next(f.found for f in findings if f.about == "store")


def test_the_probe_is_known_by_a_real_server_and_leaves_nothing_there(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    store = f"sqlite:///{tmp_path / 'pailtext.sqlite3'}"
    with running(tmp_path, store) as server:
        for token, expected in ((TOKEN, []), ("f" * 32, ["webhook"])):
            monkeypatch.setenv("PAILTEXT_DATABASE_URL", store)
            monkeypatch.setenv("PAILTEXT_PUBLIC_URL", server.url)
            monkeypatch.setenv("PAILTEXT_TWILIO_AUTH_TOKEN", token)
            assert wrong(list(examine())) == expected
        assert _inbox_is_empty(store)


@pytest.mark.usefixtures("_twilio")
@pytest.mark.parametrize("name", ["TWILIO_ACCOUNT_SID", "TWILIO_FROM"])
def test_what_sending_lacks_is_found(monkeypatch: pytest.MonkeyPatch, name: str) -> None:
    monkeypatch.delenv(f"PAILTEXT_{name}")
    findings = list(examine(answers(400)))
    assert wrong(findings) == ["sending"]
    assert f"without PAILTEXT_{name} no alert" in of("sending", findings).found


@pytest.mark.usefixtures("_twilio")
def test_an_account_that_twilio_does_not_serve_is_found() -> None:
    error = TryLaterError("error 20003: the account SID or the auth token is wrong")
    findings = list(examine(answers(400), error))
    assert wrong(findings) == ["sending"]
    assert "the auth token is wrong" in of("sending", findings).found


@pytest.mark.usefixtures("_twilio")
def test_a_missing_weather_contact_is_found(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("PAILTEXT_WEATHER_CONTACT")
    assert wrong(list(examine(answers(400)))) == ["weather"]


@pytest.mark.usefixtures("_twilio")
@pytest.mark.parametrize(("minutes", "found"), [(5, []), (20, ["store"])])
def test_texts_that_nobody_sends_are_found(tmp_path: Path, minutes: int, found: list[str]) -> None:
    list(examine(answers(400)))
    ledger = Ledger.open(f"sqlite:///{tmp_path / 'data' / 'pailtext' / 'pailtext.sqlite3'}")
    office = Office(ledger, HandClock(datetime.now(UTC) - timedelta(minutes=minutes)))
    office.owe(office.meet())
    ledger.close()
    findings = list(examine(answers(400)))
    assert wrong(findings) == found
    if found:
        assert "pailtext work" in (of("store", findings).remedy or "")


def _inbox_is_empty(url: str) -> bool:
    store = Store(url)
    try:
        with store.engine.connect() as connection:
            return not connection.execute(text("SELECT id FROM inbox")).all()
    finally:
        store.close()


def test_a_finding_says_on_a_line_of_its_own_what_to_do() -> None:
    assert str(Finding("store", "opens")) == "ok   store: opens"
    assert str(Finding("store", "is shut", "Open it.")) == "FIX  store: is shut\n     Open it."
