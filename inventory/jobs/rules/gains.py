"""Who gains when a job moves or is cancelled: verdicts before and after, said in sentences."""

from collections.abc import Mapping
from dataclasses import dataclass

GRAVITY = {"ready": 0, "ask": 1, "stop": 2}


@dataclass(frozen=True)
class Standing:
    """How a job stands: its name, its verdict, and how many findings stand open."""

    named: str
    verdict: str
    open: int


def changed(before: Mapping[str, Standing], after: Mapping[str, Standing]) -> list[str]:
    """Return a sentence for each job (by code) that stands better or worse than before."""
    said = []
    for code, now in after.items():
        was = before.get(code)
        if was is None or (was.verdict, was.open) == (now.verdict, now.open):
            continue
        if (GRAVITY[now.verdict], now.open) < (GRAVITY[was.verdict], was.open):
            said.append(f"{now.named} gains: {_how(now)}.")
        else:
            said.append(f"{now.named} gives way: {_how(now)}.")
    return said


def _how(now: Standing) -> str:
    if now.verdict == "ready":
        return "it is ready now"
    what = "a stop stands" if now.verdict == "stop" else "it asks"
    return f"{what}, {now.open} finding{'' if now.open == 1 else 's'} open"
