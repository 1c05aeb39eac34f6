"""Programs run in processes of their own, where sets and dicts may come in another order."""

import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]


def print_by_seed(code: str) -> set[str]:
    """Return what a program prints under different seeds of Python's hashes: one text if equal."""
    return {
        subprocess.run(
            [sys.executable, "-c", code],
            cwd=ROOT,
            env={"PYTHONHASHSEED": seed},
            capture_output=True,
            text=True,
            check=True,
        ).stdout
        for seed in ("1", "2")
    }
