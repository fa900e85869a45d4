"""Where development data lies: beside the checkout, never in it. Tests that want it skip without
it and say so."""

from __future__ import annotations

from pathlib import Path

import pytest

BESIDE_THE_CHECKOUT = Path(__file__).resolve().parents[2] / "shared" / "data"


def development_data(name: str) -> Path:
    """The development data file `name`; skips the test where there is none."""
    path = BESIDE_THE_CHECKOUT / name
    if not path.exists():
        pytest.skip(f"development data beside the checkout is absent: {name}")
    return path
