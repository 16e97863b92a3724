"""Run the whole suite: `python -m tests [pytest's arguments]`.

A browser, a PostgreSQL server and a word processor are installed first where they are
missing and can be (Debian and its kin, as root or with sudo). Where they cannot, the tests
that need them say why they did not run.
"""

import os
import shutil
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
BENCHMARKS = "tests/benchmarks"
CALC = Path("/usr/lib/libreoffice/program/libsclo.so")
"""What of the word processor's house reads tables."""


def missing() -> list[str]:
    """Return the Debian packages whose programs are not on this machine."""
    packages = []
    if not (shutil.which("chromium") or shutil.which("chromium-browser")):
        packages.append("chromium")
    if not list(Path("/usr/lib/postgresql").glob("*/bin/postgres")):
        packages.append("postgresql")
    if not shutil.which("soffice"):
        packages.append("libreoffice-writer-nogui")
    if not CALC.exists():
        packages.append("libreoffice-calc-nogui")
    return packages


def install(packages: list[str]) -> None:
    """Install packages where this user may; say so where not."""
    apt = shutil.which("apt-get")
    sudo = [] if os.geteuid() == 0 else ["sudo", "-n"]
    if apt is None or (sudo and shutil.which("sudo") is None):
        print(f"Not on this machine, and cannot be installed from here: {', '.join(packages)}.")
        return
    print(f"Installing {', '.join(packages)} for the tests.", flush=True)
    quiet = {**os.environ, "DEBIAN_FRONTEND": "noninteractive"}
    for step in (["update"], ["install", "-y", "--no-install-recommends", *packages]):
        done = subprocess.run(
            [*sudo, apt, "-qq", *step], env=quiet, check=False, stdout=subprocess.DEVNULL
        )
        if done.returncode:
            print(f"apt-get {step[0]} failed; the tests that need it will say so.", flush=True)
            return


def run(*arguments: str) -> int:
    """Run pytest by itself, and return its exit code."""
    return subprocess.run([sys.executable, "-m", "pytest", *arguments], check=False).returncode


def run_all() -> int:
    """Run the suite on every core, then what is measured, alone: a neighbour would spoil it."""
    cores = str(max(2, os.cpu_count() or 2))
    # Not ordered by the number of tests in a file: the long files of few tests would come last.
    by_file = ("--dist", "loadfile", "--no-loadscope-reorder")
    done = run("-n", cores, *by_file, f"--ignore={BENCHMARKS}")
    return run(BENCHMARKS) or done


if __name__ == "__main__":
    os.chdir(ROOT)
    if packages := missing():
        install(packages)
    sys.exit(run(*sys.argv[1:]) if sys.argv[1:] else run_all())
