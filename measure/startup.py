"""
Print how long Refettle takes to start, as multiples of a bare Python, within one run.

    python measure/startup.py [ROUNDS]

Ratios, since they say the same on a slow machine and a fast one. Each figure is the best of its rounds.
"""

import subprocess
import sys
import time

STARTS = {
    "bare python": ("-c", "pass"),
    "import refettle": ("-c", "import refettle"),
    "refettle --help": ("-m", "refettle", "--help"),
}


def seconds(arguments: tuple[str, ...]) -> float:
    """Return the wall-clock time of one start [s]."""
    began = time.perf_counter()
    subprocess.run((sys.executable, *arguments), check=True, capture_output=True)
    return time.perf_counter() - began


def main() -> None:
    """Start each in turn, round by round, so that a busy machine hits all alike."""
    rounds = int(sys.argv[1]) if len(sys.argv) > 1 else 5
    best = dict.fromkeys(STARTS, float("inf"))
    for _ in range(rounds):
        for name, arguments in STARTS.items():
            best[name] = min(best[name], seconds(arguments))
    bare = best["bare python"]
    for name, taken in best.items():
        print(f"{name:<16} {taken * 1000:6.0f} ms  {taken / bare:5.1f} x bare python")


if __name__ == "__main__":
    main()
