"""The command line. Each command imports what it needs when it runs, so that `read` starts fast."""

from __future__ import annotations

import gc
import sys
from collections.abc import Callable
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

if TYPE_CHECKING:
    from bot.settings import Settings

app = typer.Typer(
    add_completion=False,
    no_args_is_help=True,
    pretty_exceptions_enable=False,
    help="Pailtext: text it what you gather, and it keeps the sugaring season's tally.",
)


@app.callback()
def pailtext() -> None:
    """Text it what you gather, and it keeps the sugaring season's tally."""


@app.command()
def read() -> None:
    """Read texts (JSON lines on standard input) and print what each one means."""
    from bot.reading.lines import answer_lines

    # What is loaded by now stays: the garbage collector need not look through it again and again.
    gc.freeze()
    for line in answer_lines(sys.stdin):
        print(line, flush=False)


@app.command()
def outlook() -> None:
    """Hourly temperatures (CSV time_local,temp_f on standard input): each day's run outlook."""
    from bot.reckoning.hours_csv import UnreadableHoursError
    from bot.reckoning.outlook_lines import outlook_lines

    try:
        for line in outlook_lines(sys.stdin):
            print(line, flush=False)
    except UnreadableHoursError as error:
        print(f"outlook: {error}", file=sys.stderr)
        raise typer.Exit(2) from error


@app.command()
def replay(
    forecast: Annotated[
        Path | None, typer.Option(help="Hourly temperatures (CSV time_local,temp_f).")
    ] = None,
    until: Annotated[
        str | None, typer.Option(help="Run the clock on to this local time (ISO).")
    ] = None,
) -> None:
    """Live through texts (JSON lines at, from, text) on a simulated clock; print the replies."""
    from bot.replay import replay as live_through

    try:
        hours = None if forecast is None else forecast.read_text(encoding="utf-8").splitlines()
        for line in live_through(sys.stdin, hours, until):
            print(line, flush=False)
    except (OSError, ValueError) as error:
        print(f"replay: {error}", file=sys.stderr)
        raise typer.Exit(2) from error


@app.command()
def chat(
    at: Annotated[
        datetime | None, typer.Option(help="Pretend this local time, like 2027-03-04T17:20.")
    ] = None,
    store: Annotated[Path | None, typer.Option(help="The file to keep the tally in.")] = None,
    fresh: Annotated[bool, typer.Option("--fresh", help="Begin with an empty tally.")] = False,
    sender: Annotated[
        str, typer.Option("--from", help="The number that you text from.")
    ] = "+15550100001",
) -> None:
    """Talk to Pailtext here in the terminal."""
    from platformdirs import user_data_path

    from bot import chat as terminal
    from bot.settings import SettingsError, load_settings
    from bot.wiring import network_skies

    try:
        # A real forecast is of now: with a pretended time the weather is invented.
        skies = None if at is not None else network_skies(load_settings())
    except SettingsError as error:
        for line in str(error).splitlines():
            print(f"chat: {line}", file=sys.stderr)
        raise typer.Exit(2) from error
    path = store or user_data_path("pailtext", appauthor=False) / "chat.sqlite"
    url = terminal.fresh_store(path) if fresh else terminal.store_url(path)
    terminal.run(url, sender=sender, at=at, history=path.with_suffix(".history"), skies=skies)


@app.command()
def serve(
    port: Annotated[int, typer.Option(help="The port to listen on.", min=1, max=65535)] = 8000,
    host: Annotated[
        str, typer.Option(help="The address to listen on; 0.0.0.0 for all.")
    ] = "127.0.0.1",
    worker: Annotated[
        bool, typer.Option(help="Also send alerts and reminders; else `work` does, apart.")
    ] = True,
) -> None:
    """Take texts at a webhook and answer them, and send what is owed, until told to stop."""
    from bot.serving import serve as run_server

    _run("serve", lambda settings: run_server(settings, host, port, with_worker=worker))


@app.command()
def work() -> None:
    """Send alerts and reminders, until told to stop; for a process apart from `serve`."""
    from bot.worker import work as run_worker

    _run("work", run_worker)


def _run(command: str, run: Callable[[Settings], None]) -> None:
    """Run what goes on until it is told to stop, or say why it cannot."""
    from sqlalchemy.exc import SQLAlchemyError

    from bot.ledger import NewerStoreError
    from bot.ledger.presence import NoRoomError
    from bot.serving import leave, log_to_standard_error
    from bot.settings import SettingsError, load_settings, misspelt

    for line in misspelt():
        print(f"{command}: {line}", file=sys.stderr)
    log_to_standard_error()
    code = 0
    try:
        run(load_settings())
    except SystemExit as ended:  # by SIGTERM, or by uvicorn where it cannot listen
        if isinstance(ended.code, str):
            print(f"{command}: {ended.code}", file=sys.stderr)
        code = ended.code if isinstance(ended.code, int) else int(ended.code is not None)
    except SettingsError as error:
        for line in str(error).splitlines():
            print(f"{command}: {line}", file=sys.stderr)
        code = 2
    except NoRoomError as error:
        print(f"{command}: {error}", file=sys.stderr)
        code = 1
    except (NewerStoreError, SQLAlchemyError, OSError) as error:
        reason = str(error).partition("\n")[0]
        print(f"{command}: the store does not open: {reason}", file=sys.stderr)
        code = 1
    leave(code)


@app.command()
def doctor() -> None:
    """Look at settings, store, mail, public URL and signature, and say what to do."""
    from bot.doctor import examine

    findings = list(examine())
    print(*findings, sep="\n")
    if any(finding.remedy is not None for finding in findings):
        raise typer.Exit(1)
