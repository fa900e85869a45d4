"""A From line proves nothing: what does."""

from __future__ import annotations

import pytest

from bot.channels.email_proof import proof, provider_says_so, signature_says_so
from tests.mail.letters import ANN, letter, resolver, signed

PROVIDER = "mx.provider.example"


def told(result: str, *below: str) -> bytes:
    """A mail whose topmost Authentication-Results header says this."""
    lines = "".join(f"Authentication-Results: {each}\r\n" for each in (result, *below))
    return lines.encode() + letter().as_bytes()


@pytest.mark.parametrize(
    "result",
    [
        f"{PROVIDER}; dmarc=pass header.from=maple.example",
        f"{PROVIDER}; dkim=pass header.d=maple.example header.s=s1",
        f"{PROVIDER}; dkim=pass header.i=@maple.example",
        f"{PROVIDER} 1; spf=fail smtp.mailfrom=x.example;\r\n dmarc=pass (p=NONE)"
        " header.from=Maple.Example",
        f"{PROVIDER}; dkim=pass (good (2048) key; d=x) header.d=maple.example",
    ],
)
def test_the_providers_own_pass_for_the_senders_domain_proves_it(result: str) -> None:
    assert provider_says_so(told(result), ANN, PROVIDER)


@pytest.mark.parametrize(
    "result",
    [
        "mx.elsewhere.example; dmarc=pass header.from=maple.example",
        f"{PROVIDER}.evil.example; dmarc=pass header.from=maple.example",
        f"{PROVIDER}; dmarc=fail header.from=maple.example",
        f"{PROVIDER}; dmarc=pass header.from=evil.example",
        f"{PROVIDER}; dkim=pass header.d=evil.example",
        f"{PROVIDER}; dkim=pass header.d=le.example",
        f"{PROVIDER}; dkim=pass header.d=example",
        f"{PROVIDER}; spf=pass smtp.mailfrom=maple.example",
        f"{PROVIDER}; dkim=fail (dkim=pass header.d=maple.example) header.d=maple.example",
        f'{PROVIDER}; spf=fail smtp.mailfrom="; dmarc=pass header.from=maple.example"',
        f"{PROVIDER}; none",
        PROVIDER,
        "",
    ],
)
def test_anything_else_in_that_header_proves_nothing(result: str) -> None:
    assert not provider_says_so(told(result), ANN, PROVIDER)


def test_only_the_topmost_header_counts() -> None:
    good = f"{PROVIDER}; dmarc=pass header.from=maple.example"
    assert not provider_says_so(told("mx.elsewhere.example; none", good), ANN, PROVIDER)
    assert not provider_says_so(told(f"{PROVIDER}; dmarc=fail", good), ANN, PROVIDER)
    assert not provider_says_so(letter().as_bytes(), ANN, PROVIDER)


def test_a_good_signature_of_the_senders_domain_proves_it() -> None:
    assert signature_says_so(signed(letter().as_bytes()), ANN, resolver)


def test_a_signature_of_a_domain_above_the_senders_proves_it() -> None:
    sender = "ann@hill.maple.example"
    assert signature_says_so(signed(letter(sender=sender).as_bytes()), sender, resolver)


@pytest.mark.parametrize(
    "raw",
    [
        pytest.param(letter().as_bytes(), id="unsigned"),
        pytest.param(signed(letter().as_bytes()).replace(b"12 gal", b"99 gal"), id="altered"),
        pytest.param(signed(letter().as_bytes(), b"evil.example"), id="another domain"),
        pytest.param(signed(letter().as_bytes(), b"sub.maple.example"), id="a domain below"),
        pytest.param(signed(letter().as_bytes(), length=True) + b"99 gal\r\n", id="more behind"),
        pytest.param(signed(letter().as_bytes(), covers=(b"from",)), id="id not signed"),
        pytest.param(
            signed(letter().as_bytes()).replace(b"<1@maple", b"<2@maple"), id="another id"
        ),
        pytest.param(
            b"From: ben@maple.example\r\n" + signed(letter().as_bytes()), id="a second From"
        ),
        pytest.param(b"DKIM-Signature: v=1; rubbish\r\n" + letter().as_bytes(), id="rubbish"),
        pytest.param(b"", id="nothing"),
    ],
)
def test_anything_less_than_a_whole_signature_proves_nothing(raw: bytes) -> None:
    assert not signature_says_so(raw, ANN, resolver)


def test_a_signature_proves_its_own_sender_only() -> None:
    raw = signed(letter().as_bytes())
    assert not signature_says_so(raw, "ben@maple.example", resolver)


def test_a_dns_that_does_not_answer_proves_nothing() -> None:
    def silent(_name: bytes, timeout: float = 5) -> bytes | None:
        raise TimeoutError

    assert not signature_says_so(signed(letter().as_bytes()), ANN, silent)


def test_where_the_provider_is_named_a_signature_is_not_asked() -> None:
    raw = signed(letter().as_bytes())
    assert proof(None, resolver)(raw, ANN)
    assert not proof(PROVIDER, resolver)(raw, ANN)
