"""The pages as a running server gives them."""

from __future__ import annotations

import re
from pathlib import Path

import httpx

from tests.doors.running import running
from tests.doors.twilio_peer import form


def test_a_texted_wish_for_ones_data_leads_to_the_file(tmp_path: Path) -> None:
    with running(tmp_path, f"sqlite:///{tmp_path / 'served.sqlite'}") as server:
        server.text(form("12 gal at 2.2"))
        answer = server.text(form("export my data")).text
        url = re.search(r"http://\S+/page/[\w.-]+", answer)
        assert url is not None, answer
        file = httpx.get(url[0])
        assert (file.status_code, file.headers["content-type"]) == (200, "text/csv; charset=utf-8")
        assert ",sap,12.0,2.2," in file.text
        assert httpx.get(url[0][:-3]).status_code == 404
        assert httpx.post(f"{server.url}/unsubscribe/forged").status_code == 404
