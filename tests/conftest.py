"""Fixtures that every test may ask for."""

from __future__ import annotations

from tests.postgres import (
    _postgres_template,
    empty_postgres_url,
    postgres_server,
    postgres_url,
    store_url,
)

__all__ = [
    "_postgres_template",
    "empty_postgres_url",
    "postgres_server",
    "postgres_url",
    "store_url",
]
