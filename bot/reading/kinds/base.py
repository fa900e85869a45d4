"""What every kind of reading shares: a name, and its fields as plain values."""

from __future__ import annotations

import dataclasses
from dataclasses import dataclass
from datetime import date, time
from typing import Any, ClassVar


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """One thing that a text says. Quantities are in the units that the field names tell:
    US gallons, degrees Brix, degrees Fahrenheit, inches, US dollars, hours; `on` is a
    local date. A field that the text does not give is None."""

    kind: ClassVar[str]

    def as_dict(self) -> dict[str, Any]:
        """The reading as the contract's JSON object: no absent fields, dates as ISO text."""
        out: dict[str, Any] = {"kind": self.kind}
        for name in _fields(type(self)):
            value = getattr(self, name)
            if value is not None:
                out[name] = _plain(value)
        return out


_NAMES: dict[type[Reading], tuple[str, ...]] = {}


def _fields(kind: type[Reading]) -> tuple[str, ...]:
    """The names of a kind's fields, looked up once."""
    if kind not in _NAMES:
        _NAMES[kind] = tuple(spec.name for spec in dataclasses.fields(kind))
    return _NAMES[kind]


def _plain(value: Any) -> Any:
    if isinstance(value, (str, int, float)):
        return value
    if isinstance(value, (date, time)):
        return value.isoformat()
    if isinstance(value, tuple):
        return [_plain(part) for part in value]
    if dataclasses.is_dataclass(value) and not isinstance(value, type):
        return {spec.name: _plain(getattr(value, spec.name)) for spec in dataclasses.fields(value)}
    return value
