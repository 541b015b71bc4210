"""Label elements: which pictograms, which word and which statements stand, once precedence has spoken.

Sources: CLP Art 20(3) (from memory), Art 26(1), 26(2) and the labels of Annex VI; 29 CFR 1910.1200 C.2.1;
SOR/2015-17 s. 3.6; UN GHS Rev 10, 1.4.10.5.3. Where a pictogram is optional (flame or oxidiser beside the
explosive, gas cylinder beside flame or skull) it stays: the fuller label is never the wrong one.
"""

import re
from collections.abc import Iterable
from dataclasses import dataclass

from safety.hazards.classes import REGIMES, Hazard, plain, read_hazard

SKULL_SILENCES_ALL = ("EU", "UN")
SENSITISER_OR_IRRITANT = ("Skin Sens.", "Skin Irrit.", "Eye Irrit.")
IRRITANT = ("Skin Irrit.", "Eye Irrit.")
# EU: every pair with H400 seen in Annex VI prints H410 alone. UN: only like beside like.
AQUATIC_PAIRS = {
    "EU": {("H400", "H410"): "H410", ("H400", "H411"): "H410", ("H400", "H412"): "H410"},
    "UN": {("H400", "H410"): "H410", ("H401", "H411"): "H411", ("H402", "H412"): "H412"},
}
ACUTE = re.compile(r"H3[013][0-2]")


class UnknownRegime(ValueError):
    """A regime that is none of EU, US, CA, UN."""


@dataclass(frozen=True)
class Elements:
    """What a label shows. statements are joined where routes share a category; left_out says what the
    regime has no class for."""

    pictograms: tuple[str, ...] = ()
    signal_word: str | None = None
    statements: tuple[str, ...] = ()
    supplemental: tuple[str, ...] = ()
    left_out: tuple[str, ...] = ()


def elements(hazards: Iterable[str], regime: str) -> Elements:
    """Return the label elements of written hazards ("Flam. Liq. 2 H225"; "EUH066" alone is supplemental).

    Raises UnknownHazard, UnknownRegime. The order of hazards does not matter.
    """
    if regime not in REGIMES:
        raise UnknownRegime(f"“{regime}” is not one of {', '.join(REGIMES)}.")
    written = list(hazards)
    supplemental = {text.strip() for text in written if text.strip().startswith("EUH")}
    read = [in_words_of(regime, text) for text in written if not text.strip().startswith("EUH")]
    known = [one for one in read if regime in one.of.regimes]
    return Elements(
        pictograms=pictograms(known, regime),
        signal_word=signal_word(known),
        statements=statements(known, regime),
        supplemental=tuple(sorted(supplemental)) if regime == "EU" else (),
        left_out=tuple(sorted(str(one) for one in read if regime not in one.of.regimes)),
    )


def in_words_of(regime: str, text: str) -> Hazard:
    """Return a written hazard as the regime has it: the EU's one Eye Irrit. 2 covers 2A and 2B."""
    hazard = read_hazard(text)
    if regime == "EU" and hazard.of.name == "Eye Irrit." and hazard.of.category in ("2A", "2B"):
        return read_hazard("Eye Irrit. 2 H319")
    return hazard


def signal_word(hazards: list[Hazard]) -> str | None:
    """Return Danger where any class has it, else Warning, else None."""
    words = {one.of.signal_word for one in hazards}
    return "Danger" if "Danger" in words else "Warning" if "Warning" in words else None


def pictograms(hazards: list[Hazard], regime: str) -> tuple[str, ...]:
    """Return the pictograms that stand, in number order."""
    given = {(pictogram, one.of.name) for one in gravest(hazards, regime) for pictogram in one.of.pictograms}
    shown = {pictogram for pictogram, _ in given}
    silenced: set[str] = set()
    if "GHS06" in shown:
        silenced |= {name for _, name in given} if regime in SKULL_SILENCES_ALL else {"Acute Tox."}
    # Corrosion to metals alone silences nothing: keeping the exclamation mark is the safe reading.
    if any(pictogram == "GHS05" and name != "Met. Corr." for pictogram, name in given):
        silenced |= set(IRRITANT)
    if ("GHS08", "Resp. Sens.") in given:
        silenced |= set(SENSITISER_OR_IRRITANT)
    stands = {picture for picture, name in given if picture != "GHS07" or name not in silenced}
    return tuple(sorted(stands))


def gravest(hazards: list[Hazard], regime: str) -> list[Hazard]:
    """Return, for the EU, only the gravest category of each class (Art 26(2)); elsewhere all."""
    if regime != "EU":
        return hazards
    best: dict[str, str] = {}
    for one in hazards:
        best[one.of.group] = min(best.get(one.of.group, "9"), one.of.category)
    return [one for one in hazards if one.of.category == best[one.of.group]]


def statements(hazards: list[Hazard], regime: str) -> tuple[str, ...]:
    """Return the H-codes of the label, redundancy gone, routes of one category joined."""
    codes = {code if regime == "EU" else plain(code) for one in hazards for code in one.codes}
    if "H314" in codes:
        codes.discard("H318")
    for (acute, chronic), stays in AQUATIC_PAIRS["EU" if regime == "EU" else "UN"].items():
        if acute in codes and chronic in codes:
            codes = codes - {acute, chronic} | {stays}
    return tuple(sorted(joined(codes), key=order))


def joined(codes: set[str]) -> set[str]:
    """Return the codes with acute toxicity of one severity joined over its routes: H302+H312."""
    out = {code for code in codes if not ACUTE.fullmatch(code)}
    for severity in "012":
        routes = sorted(code for code in codes if ACUTE.fullmatch(code) and code[-1] == severity)
        if routes:
            out.add("+".join(routes))
    return out


def order(code: str) -> tuple[bool, str]:
    """Return the place of a code on a label: H before EUH, then by number."""
    return (code.startswith("EUH"), code)
