"""The command line. Each command imports what it needs when it runs, so that `read` starts fast."""

from __future__ import annotations

import sys

import typer

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
