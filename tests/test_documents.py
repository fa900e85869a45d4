"""README and DEVELOPERS.md say what is true: commands, settings, kinds, and the transcript.

`python -m tests.test_documents` writes the transcript of the README anew from the program.
"""

from __future__ import annotations

import json
import re
from datetime import datetime
from pathlib import Path

import pytest

from bot import settings
from bot.cli import app
from bot.reading.kinds import KINDS
from bot.replay import replay

ROOT = Path(__file__).resolve().parents[1]
README = ROOT / "README.md"
DEVELOPERS = ROOT / "DEVELOPERS.md"
TOLD_AS = re.compile(r"<!-- transcript: (\S+) -->\n```\n(.*?)```\n<!-- end of transcript -->", re.S)
NOT_TEXTED = frozenset(
    ("chat", "amend", "undo", "question", "helper", "join", "stop", "start", "help")
)
"""Kinds whose table row speaks of something else than the kind's own name."""


def transcript(season: Path) -> str:
    """The texts of a season and the program's answers, as the README prints them."""
    lines = season.read_text(encoding="utf-8").splitlines()
    answers: dict[int | None, list[str]] = {}
    for printed in map(json.loads, replay(lines)):
        if "text" in printed:
            answers.setdefault(printed["re"], []).append(printed["text"])
    shown: list[str] = []
    day = None
    for number, told in enumerate(map(json.loads, lines)):
        at = datetime.fromisoformat(told["at"])
        if at.date() != day:
            day = at.date()
            shown.append(f"{'' if not shown else chr(10)}{at:%a %d %b}")
        shown.append(f"> {told['text']}")
        shown += [f"  {answer}" for answer in answers.get(number, [])]
    return "\n".join(shown) + "\n"


def test_the_readme_shows_what_the_program_really_answers() -> None:
    """The transcript is the program's own, word for word."""
    found = TOLD_AS.search(README.read_text(encoding="utf-8"))
    assert found is not None
    assert found[2] == transcript(ROOT / found[1])


def test_every_command_is_described() -> None:
    """A command that README does not name is hidden."""
    readme = README.read_text(encoding="utf-8")
    names = [command.callback.__name__ for command in app.registered_commands if command.callback]
    assert names
    for name in names:
        assert f"`deploy/pailtext {name}" in readme, name


@pytest.mark.parametrize("name", settings.names())
def test_every_setting_is_described(name: str) -> None:
    """Whoever hosts it finds each setting in the table."""
    assert f"| `{name}` |" in README.read_text(encoding="utf-8")


def test_every_layer_and_family_of_the_house_is_described() -> None:
    """The contributor guide names every module and package."""
    guide = DEVELOPERS.read_text(encoding="utf-8")
    for entry in sorted((ROOT / "bot").iterdir()):
        name = entry.name.removesuffix(".py")
        if not name.startswith("__"):
            assert f"`{name}`" in guide, name


def test_a_sugarer_finds_every_kind_of_text() -> None:
    """Each kind that is told has an example in the README which reads as that kind."""
    from bot.reading import read

    rows = [row for row in README.read_text(encoding="utf-8").splitlines() if row.startswith("| ")]
    told = set()
    for row in rows:
        for text in re.findall(r"`([^`]+)`", row):
            understood = read(text, datetime(2027, 3, 10, 18))
            told |= {reading.kind for reading in understood.readings}
    assert told >= {kind.kind for kind in KINDS} - NOT_TEXTED


if __name__ == "__main__":
    text = README.read_text(encoding="utf-8")
    hit = TOLD_AS.search(text)
    assert hit is not None
    fresh = transcript(ROOT / hit[1])
    README.write_text(text[: hit.start(2)] + fresh + text[hit.end(2) :], encoding="utf-8")
