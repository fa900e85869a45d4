"""What `pailtext doctor` finds, and what it says to do."""

from __future__ import annotations

from pathlib import Path

import httpx
import pytest
from sqlalchemy import text

from bot import settings
from bot.doctor import Ask, Finding, examine
from bot.ledger import Store
from tests.doors.running import running
from tests.doors.twilio_peer import PUBLIC_URL, TOKEN


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


def answers(status: int) -> Ask:
    return lambda _url, _form, _headers: status


def wrong(findings: list[Finding]) -> list[str]:
    """What the findings say is to be put right."""
    return [finding.about for finding in findings if finding.remedy is not None]


@pytest.mark.usefixtures("_twilio")
def test_all_is_well_when_the_server_answers_that_the_signed_form_is_no_text() -> None:
    findings = list(examine(answers(400)))
    assert wrong(findings) == []
    assert [finding.about for finding in findings] == ["settings", "store", "mail", "webhook"]
    assert f"{PUBLIC_URL}/in/twilio" in findings[-1].found


def test_the_store_is_made_where_there_is_none(tmp_path: Path) -> None:
    list(examine(answers(400)))
    assert (tmp_path / "data" / "pailtext" / "pailtext.sqlite3").exists()


def test_a_webhook_without_token_is_found() -> None:
    (finding,) = [found for found in examine(answers(400)) if found.remedy is not None]
    assert finding.about == "webhook"
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
    finding = list(examine(answers(status)))[-1]
    assert f"answers {status}" in finding.found
    assert finding.remedy is not None
    assert remedy in finding.remedy


@pytest.mark.usefixtures("_twilio")
def test_no_answer_at_all_is_found() -> None:
    def silence(url: str, _form: dict[str, str], _headers: dict[str, str]) -> int:
        raise httpx.ConnectError("refused", request=httpx.Request("POST", url))

    finding = list(examine(silence))[-1]
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
