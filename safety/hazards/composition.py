"""A sheet's section 3 as people type it, one ingredient a row, and as the document that `classify` reads.

Pure. What is typed: percent "12.5", "5-15" or "<5"; hazards "Skin Corr. 1A H314; Met. Corr. 1 H290", "none"
for looked at and not classified, nothing for not known; limits "5: Skin Corr. 1A H314; 2-5: Skin Corr. 1B
H314", a percentage alone being “from … on”; acute toxicity "oral 1200; vapour 11" in mg/kg, mg/l or ppmV.
"""

import re
from collections.abc import Callable, Mapping
from typing import Any

from safety.hazards.classes import UnknownHazard, read_hazard
from safety.hazards.mixtures.values import ATE_KINDS, ROUTES

Document = dict[str, Any]
FIELDS = ("name", "cas", "percent", "hazards", "limits", "ate", "unknown", "m_factors", "ph", "additive")
NONE = "none"
NUMBER = r"\d+(?:[.,]\d+)?"
RANGE = re.compile(
    rf"(?:[≥>]=?\s*)?(?P<least>{NUMBER})\s*%?\s*(?:-|–|—|to|bis|a)\s*(?:[≤<]=?\s*)?(?P<most>{NUMBER})\s*%?"
)
BELOW = re.compile(rf"[≤<]=?\s*(?P<most>{NUMBER})\s*%?")
ALONE = re.compile(rf"(?:≥|>=)?\s*(?P<number>{NUMBER})\s*%?")
NAMED = re.compile(rf"(?P<name>[a-z][a-z _-]*?)\s*[:=]?\s*(?P<number>{NUMBER})\s*(?:mg/kg|mg/l|ppm\w*)?")


class Unreadable(ValueError):
    """A cell that cannot be read; the sentence says what was expected."""


def read_row(typed: Mapping[str, str]) -> tuple[Document, dict[str, str]]:
    """Return an ingredient's document and, by field, what is wrong with what was typed.

    Of the document only what was understood is there; a key that is missing means unknown.
    """
    document: Document = {}
    errors: dict[str, str] = {}
    for field, reader in READERS.items():
        text = typed.get(field, "").strip()
        try:
            document |= reader(text) if text else missing(field)
        except (Unreadable, UnknownHazard) as odd:
            errors[field] = str(odd)
    return document, errors


def missing(field: str) -> Document:
    """Return nothing for a field that may be empty; raise Unreadable for one that may not."""
    if field == "name":
        raise Unreadable("Give the ingredient a name, as the sheet's section 3 does.")
    if field == "percent":
        raise Unreadable("Give its percentage by weight, like 12 or 5-15.")
    return {}


def number(text: str) -> float:
    """Return a number written with a point or a comma; whole ones without a fraction."""
    value = float(text.replace(",", "."))
    return int(value) if value.is_integer() else value


def _name(text: str) -> Document:
    return {"name": text}


def _cas(text: str) -> Document:
    return {"cas": text}


def _percent(text: str) -> Document:
    if found := RANGE.fullmatch(text):
        return {"percent": [number(found["least"]), number(found["most"])]}
    if found := BELOW.fullmatch(text):
        return {"percent": [0, number(found["most"])]}
    if found := ALONE.fullmatch(text):
        return {"percent": number(found["number"])}
    raise Unreadable(f"“{text}” is not a percentage like 12, 5-15 or <5.")


def _hazards(text: str) -> Document:
    if text.lower() == NONE:
        return {"hazards": []}
    return {"hazards": [_hazard(part) for part in parts(text)]}


def _hazard(text: str) -> str:
    return text if text.startswith("EUH") else str(read_hazard(text))


def _limits(text: str) -> Document:
    return {"limits": [_limit(part) for part in parts(text)]}


def _limit(text: str) -> Document:
    at, colon, hazard = text.partition(":")
    found = RANGE.fullmatch(at.strip()) or ALONE.fullmatch(at.strip())
    if not (colon and found and hazard.strip()):
        raise Unreadable(
            f"“{text}” is not a limit like “2-5: Skin Corr. 1B H314” or “5: Skin Corr. 1A H314”."
        )
    known = found.groupdict()
    most = known.get("most")
    return {
        "from": number(known.get("number") or known["least"]),
        "to": number(most) if most else None,
        "hazard": _hazard(hazard.strip()),
    }


def _ate(text: str) -> Document:
    ate = {}
    for part in parts(text):
        found = NAMED.fullmatch(part.lower())
        kind = found["name"].strip().replace(" ", "_").replace("-", "_") if found else ""
        if found is None or kind not in ATE_KINDS:
            kinds = ", ".join(kind.replace("_", " ") for kind in ATE_KINDS)
            raise Unreadable(
                f"“{part}” is not a way in and a number, like “oral 1200”; the ways are {kinds}."
            )
        ate[kind] = number(found["number"])
    return {"ate": ate}


def _unknown(text: str) -> Document:
    routes = [part.strip().lower() for part in re.split(r"[;,\s]+", text) if part.strip()]
    if NONE in routes:
        return {"no_acute_toxicity": True}
    for route in routes:
        if route not in ROUTES:
            raise Unreadable(f"“{route}” is none of {', '.join(ROUTES)}.")
    return {"unknown": routes}


def _m_factors(text: str) -> Document:
    factors = {}
    for part in parts(text):
        found = NAMED.fullmatch(part.lower())
        if found is None or found["name"].strip() not in ("acute", "chronic"):
            raise Unreadable(f"“{part}” is not an M factor with its kind, like “acute 10; chronic 1”.")
        factors[f"m_{found['name'].strip()}"] = number(found["number"])
    return factors


def _ph(text: str) -> Document:
    if not re.fullmatch(rf"-?{NUMBER}", text):
        raise Unreadable(f"“{text}” is not a pH like 2 or 13.5.")
    return {"ph": number(text)}


def _additive(text: str) -> Document:
    if text not in ("yes", "no"):
        raise Unreadable("Say yes, no, or nothing where the sheet does not say.")
    return {"additive": text == "yes"}


READERS: dict[str, Callable[[str], Document]] = dict(
    zip(
        FIELDS,
        (_name, _cas, _percent, _hazards, _limits, _ate, _unknown, _m_factors, _ph, _additive),
        strict=True,
    )
)


MIX = re.compile(
    rf"(?P<product>[1-9]\d*)\s*:\s*(?P<water>[1-9]\d*)\s*[:,]?\s*"
    rf"(?:(?P<ph>pH)|flash point)\s*(?P<value>-?{NUMBER})\s*(?:°C)?",
    re.IGNORECASE,
)


def read_mixes(text: str) -> list[Document]:
    """Return what was measured on mixes, a line each: "1:10 pH 10.9", "1:1 flash point 24".

    Raises Unreadable.
    """
    mixes: dict[tuple[int, int], Document] = {}
    for line in parts(text):
        found = MIX.fullmatch(line)
        if not found:
            raise Unreadable(f"“{line}” is not a mix and what was measured, like “1:10 pH 10.9”.")
        key = (int(found["product"]), int(found["water"]))
        one = mixes.setdefault(key, {"parts": list(key), "ph": None, "flash_point_c": None})
        one["ph" if found["ph"] else "flash_point_c"] = number(found["value"])
    return list(mixes.values())


def mixes_typed(mixes: list[Document]) -> str:
    """Return mixes as somebody would type them."""
    lines = []
    for one in mixes:
        ratio = ":".join(str(part) for part in one["parts"])
        lines += [f"{ratio} pH {one['ph']}"] if one["ph"] is not None else []
        lines += [f"{ratio} flash point {one['flash_point_c']}"] if one["flash_point_c"] is not None else []
    return "\n".join(lines)


def parts(text: str) -> list[str]:
    """Return what stands between semicolons or on lines of its own."""
    return [part.strip() for part in re.split(r"[;\n]", text) if part.strip()]


def typed(document: Document) -> dict[str, str]:
    """Return a row as somebody would type it, so that `read_row` gives the document again."""
    percent, hazards, more = document["percent"], document.get("hazards"), document.get("additive")
    row = {
        "name": document["name"],
        "cas": document.get("cas", ""),
        "percent": "-".join(str(end) for end in percent) if isinstance(percent, list) else str(percent),
        "hazards": NONE if hazards == [] else "; ".join(hazards or []),
        "limits": "; ".join(_limit_typed(limit) for limit in document.get("limits", [])),
        "ate": "; ".join(f"{kind} {value}" for kind, value in (document.get("ate") or {}).items() if value),
        "unknown": NONE if document.get("no_acute_toxicity") else ", ".join(document.get("unknown", [])),
        "m_factors": "; ".join(
            f"{which} {document[f'm_{which}']}"
            for which in ("acute", "chronic")
            if document.get(f"m_{which}") is not None
        ),
        "ph": "" if document.get("ph") is None else str(document["ph"]),
        "additive": "" if more is None else "yes" if more else "no",
    }
    return row


def _limit_typed(limit: Document) -> str:
    most = "" if limit.get("to") is None else f"-{limit['to']}"
    return f"{limit['from']}{most}: {limit['hazard']}"
