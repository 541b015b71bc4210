"""Classifying many mixtures: made up by a seeded draw, each of twelve ingredients, from document to label.

The substances are those of the check values (CLP Annex VI, ATP17 state); names, shares and company are drawn.
"""

from collections.abc import Callable
from random import Random
from typing import Any

from inventory.management.bench.figures import Figure, milliseconds
from safety.hazards.classes import REGIMES
from safety.hazards.mixtures.reading import read_mixture
from safety.hazards.mixtures.rules import Classified, classify

INGREDIENTS = 12
SEED = 20261125
Document = dict[str, Any]


def limit(start: float, hazard: str, end: float | None = None) -> Document:
    """Return one row of an ingredient's own limits."""
    return {"from": start, "to": end, "hazard": hazard}


SUBSTANCES: tuple[Document, ...] = (
    {"cas": "67-63-0", "hazards": ["Flam. Liq. 2 H225", "Eye Irrit. 2 H319", "STOT SE 3 H336"]},
    {"cas": "67-64-1", "hazards": ["Flam. Liq. 2 H225", "Eye Irrit. 2 H319", "STOT SE 3 H336", "EUH066"]},
    {"cas": "64-17-5", "hazards": ["Flam. Liq. 2 H225"], "ate": {"vapour": 124}},
    {
        "cas": "1330-20-7",
        "hazards": ["Flam. Liq. 3 H226", "Acute Tox. 4 H332", "Acute Tox. 4 H312", "Skin Irrit. 2 H315"],
    },
    {
        "cas": "1310-73-2", "ph": 14, "hazards": ["Skin Corr. 1A H314"],
        "limits": [
            limit(5, "Skin Corr. 1A H314"), limit(2, "Skin Corr. 1B H314", 5),
            limit(0.5, "Skin Irrit. 2 H315", 2), limit(0.5, "Eye Irrit. 2 H319", 2),
        ],
    },
    {
        "cas": "7664-38-2", "ph": 1, "hazards": ["Skin Corr. 1B H314"],
        "limits": [
            limit(25, "Skin Corr. 1B H314"), limit(10, "Skin Irrit. 2 H315", 25),
            limit(10, "Eye Irrit. 2 H319", 25),
        ],
    },
    {
        "cas": "822-06-0",
        "hazards": [
            "Acute Tox. 3 H331", "STOT SE 3 H335", "Skin Irrit. 2 H315", "Eye Irrit. 2 H319",
            "Resp. Sens. 1 H334", "Skin Sens. 1 H317",
        ],
        "limits": [limit(0.5, "Resp. Sens. 1 H334"), limit(0.5, "Skin Sens. 1 H317")],
    },
    {
        "cas": "7681-52-9",
        "hazards": ["Skin Corr. 1B H314", "Aquatic Acute 1 H400", "Aquatic Chronic 1 H410"],
        "m_acute": 10, "m_chronic": 1, "limits": [limit(5, "EUH031")],
    },
    {
        "cas": "78-10-4",
        "hazards": ["Flam. Liq. 3 H226", "Acute Tox. 4 H332", "STOT SE 3 H335", "Eye Irrit. 2 H319"],
    },
    {"cas": "540-88-5", "hazards": ["Flam. Liq. 2 H225", "EUH066"]},
    {"hazards": ["Carc. 1B H350", "Muta. 1B H340", "Asp. Tox. 1 H304"]},
    {"hazards": ["Aquatic Chronic 2 H411", "STOT RE 2 H373"], "ate": {"oral": 4200}},
    {"hazards": []},
    {"unknown": ["oral", "inhalation"], "hazards": ["Skin Sens. 1A H317"]},
    {},
)  # fmt: skip


def drawn(draw: Random) -> Document:
    """Return one mixture of twelve ingredients, the rest water, some with ranges and measured values."""
    shares = [draw.random() ** 3 for _ in range(INGREDIENTS)]
    scale = draw.uniform(30, 100) / sum(shares)
    return {
        "form": draw.choice(("liquid", "liquid", "spray", "aerosol")),
        "ph": draw.choice((None, 1.5, 6, 9, 12.5)),
        "flash_point_c": draw.choice((None, 14, 40, 75)),
        "viscosity_mm2_s_40c": draw.choice((None, 8, 60)),
        "ingredients": [
            {**of, "name": f"substance {at}", "percent": percent_of(share * scale, draw)}
            for at, (of, share) in enumerate(zip(draw.sample(SUBSTANCES, INGREDIENTS), shares, strict=True))
        ],
    }


def percent_of(share: float, draw: Random) -> float | list[float]:
    """Return a percentage, or one time in three a range around it."""
    share = round(share, 2)
    return share if draw.random() < 2 / 3 else [round(share / 2, 2), min(100.0, share)]


def mixtures_classified(count: int, progress: Callable[[int], object]) -> list[Figure]:
    """Measure reading and classifying; every mixture by one regime, in turn."""
    draw = Random(SEED)
    documents = [drawn(draw) for _ in range(count)]
    read = [read_mixture(document) for document in documents]
    found: list[Classified] = []

    def all_of_them() -> None:
        for at, mixture in enumerate(read):
            found.append(classify(mixture, REGIMES[at % len(REGIMES)]))
            progress(1)

    reading = milliseconds(lambda: [read_mixture(document) for document in documents])
    classifying = milliseconds(all_of_them)
    if not all(one.hazards or one.needs_review for one in found):
        raise RuntimeError("A mixture was passed over in silence.")
    name = f"{count:,} mixtures of {INGREDIENTS} ingredients".replace(",", " ")
    return [
        Figure(f"classify {name}: reading, each", reading / count * 1000, "µs"),
        Figure(f"classify {name}: classifying, each", classifying / count * 1000, "µs"),
        Figure(f"classify {name}: both, all of them", (reading + classifying) / 1000, "s"),
    ]
