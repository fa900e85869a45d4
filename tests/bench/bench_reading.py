"""How long one text takes to be read, and beside it a library that looks for dates in it.

    python -m tests.bench.bench_reading [--rounds 5]

Prints the median and the 99th hundredth over all our own texts after one warm round, the
ratio of the medians to `dateparser.search.search_dates` on the same texts, and how long
`pailtext read` takes from start to its first answer.
"""

from __future__ import annotations

import argparse
import gc
import json
import subprocess
import sys
import time
import warnings
from collections.abc import Callable, Sequence
from datetime import datetime
from pathlib import Path

from bot.reading.lines import answer

TEXTS = Path(__file__).parents[2] / "fixtures" / "texts"


def timed(
    work: Callable[[dict[str, object]], object], lines: Sequence[dict[str, object]]
) -> list[float]:
    """Milliseconds for each line, sorted."""
    took = []
    for line in lines:
        start = time.perf_counter()
        work(line)
        took.append(1e3 * (time.perf_counter() - start))
    return sorted(took)


def at(share: float, took: Sequence[float]) -> float:
    """The value below which that share of the sorted values lies."""
    return took[min(len(took) - 1, int(share * len(took)))]


def search_dates(line: dict[str, object]) -> object:
    """The same text, searched for dates by the library."""
    from dateparser.search import search_dates as search

    sent = datetime.fromisoformat(str(line["sent"]))
    return search(str(line["text"]), languages=["en"], settings={"RELATIVE_BASE": sent})


def start_up() -> float:
    """Seconds from the start of `pailtext read` to its end, for one text."""
    start = time.perf_counter()
    subprocess.run(
        [sys.executable, "-m", "bot", "read"],
        input=json.dumps({"text": "12 gal at 2.2", "sent": "2027-03-04T17:20"}),
        text=True, check=True, capture_output=True,
    )  # fmt: skip
    return time.perf_counter() - start


def main() -> None:
    """Measures, and prints."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--rounds", type=int, default=5)
    rounds = parser.parse_args().rounds
    lines = [
        json.loads(line)
        for path in sorted(TEXTS.glob("*.jsonl"))
        for line in path.read_text(encoding="utf-8").splitlines()
    ]
    timed(answer, lines)
    gc.freeze()  # as the program does
    ours = sorted(ms for _ in range(rounds) for ms in timed(answer, lines))
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        timed(search_dates, lines[:50])
        theirs = timed(search_dates, lines)
    print(f"{len(lines)} texts, {rounds} rounds")
    print(f"reading: median {at(0.5, ours):.3f} ms, p99 {at(0.99, ours):.3f} ms")
    print(f"search_dates: median {at(0.5, theirs):.3f} ms, p99 {at(0.99, theirs):.3f} ms")
    print(f"ratio of medians: {at(0.5, theirs) / at(0.5, ours):.1f}")
    print(f"start of `pailtext read` to its answer: {min(start_up() for _ in range(3)):.2f} s")


if __name__ == "__main__":
    main()
