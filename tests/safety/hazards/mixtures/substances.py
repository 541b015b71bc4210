"""Substances of the check values, as documents.

CLP Annex VI table 3, ATP17 state (© European Union, CC BY 4.0): classes, and the specific limits given there.
"""

from typing import Any

Document = dict[str, Any]


def limit(start: float, hazard: str, end: float | None = None) -> Document:
    return {"from": start, "to": end, "hazard": hazard}


PROPANOL = {
    "name": "propan-2-ol",
    "cas": "67-63-0",
    "hazards": ["Flam. Liq. 2 H225", "Eye Irrit. 2 H319", "STOT SE 3 H336"],
}
ACETONE = PROPANOL | {"name": "acetone", "cas": "67-64-1", "hazards": [*PROPANOL["hazards"], "EUH066"]}
ETHANOL = {"name": "ethanol", "cas": "64-17-5", "hazards": ["Flam. Liq. 2 H225"]}
XYLENE = {
    "name": "xylene",
    "cas": "1330-20-7",
    "hazards": ["Flam. Liq. 3 H226", "Acute Tox. 4 H332", "Acute Tox. 4 H312", "Skin Irrit. 2 H315"],
}
BUTYL_ACETATE = {
    "name": "n-butyl acetate",
    "cas": "123-86-4",
    "hazards": ["Flam. Liq. 3 H226", "STOT SE 3 H336", "EUH066"],
}
TERT_BUTYL_ACETATE = {
    "name": "tert-butyl acetate",
    "cas": "540-88-5",
    "hazards": ["Flam. Liq. 2 H225", "EUH066"],
}
SODIUM_HYDROXIDE = {
    "name": "sodium hydroxide",
    "cas": "1310-73-2",
    "hazards": ["Skin Corr. 1A H314"],
    "limits": [
        limit(5, "Skin Corr. 1A H314"),
        limit(2, "Skin Corr. 1B H314", 5),
        limit(0.5, "Skin Irrit. 2 H315", 2),
        limit(0.5, "Eye Irrit. 2 H319", 2),
    ],
}
POTASSIUM_HYDROXIDE = SODIUM_HYDROXIDE | {"name": "potassium hydroxide", "cas": "1310-58-3"}
PHOSPHORIC_ACID = {
    "name": "phosphoric acid",
    "cas": "7664-38-2",
    "hazards": ["Skin Corr. 1B H314"],
    "limits": [
        limit(25, "Skin Corr. 1B H314"),
        limit(10, "Skin Irrit. 2 H315", 25),
        limit(10, "Eye Irrit. 2 H319", 25),
    ],
}
TETRAETHYL_SILICATE = {
    "name": "tetraethyl silicate",
    "cas": "78-10-4",
    "hazards": ["Flam. Liq. 3 H226", "Acute Tox. 4 H332", "STOT SE 3 H335", "Eye Irrit. 2 H319"],
}
DIISOCYANATE = {
    "name": "hexamethylene diisocyanate",
    "cas": "822-06-0",
    "hazards": [
        "Acute Tox. 3 H331",
        "STOT SE 3 H335",
        "Skin Irrit. 2 H315",
        "Eye Irrit. 2 H319",
        "Resp. Sens. 1 H334",
        "Skin Sens. 1 H317",
    ],
    "limits": [limit(0.5, "Resp. Sens. 1 H334"), limit(0.5, "Skin Sens. 1 H317")],
}
HYPOCHLORITE = {
    "name": "sodium hypochlorite, active chlorine",
    "cas": "7681-52-9",
    "hazards": ["Skin Corr. 1B H314", "Aquatic Acute 1 H400", "Aquatic Chronic 1 H410"],
    "m_acute": 10,
    "m_chronic": 1,
    "limits": [limit(5, "EUH031")],
}
NAPHTHA = {"name": "naphtha", "hazards": ["Carc. 1B H350", "Muta. 1B H340", "Asp. Tox. 1 H304"]}


def of(*parts: tuple[Document, object], **measured: object) -> Document:
    """A mixture's document: (substance, percent) each, the rest water."""
    ingredients = [{**substance, "percent": percent} for substance, percent in parts]
    return {"form": "liquid", "ingredients": ingredients, **measured}
