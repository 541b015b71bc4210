"""The invented products whose sheets the safety tests read: makers, names and wording are ours."""

from safety.hazards.facts import SheetFacts
from safety.print.values import PlaceFacts

ACID = SheetFacts(
    hazards=("Met. Corr. 1 H290", "Acute Tox. 3 H311", "Skin Corr. 1B H314"),
    holds_fluoride=True,
    wear_eyes="face shield",
    wear_hands="nitrile 0.4 mm, new after 30 min",
    wear_body="apron",
    aid_eyes="Rinse at least 15 minutes, then hospital",
    aid_skin="Clothes off, rinse long, then gel, hospital",
    spill="Neutraliser first, never bleach",
    never_with=(
        ("Bleach cleaner", "chlorine gas, also one after the other in the drain"),
        ("Fenmoor iron remover", "toxic sulfur gas possible: rinse to a clear drain between"),
    ),
)
COATING = SheetFacts(
    hazards=("Flam. Liq. 3 H226", "Skin Sens. 1 H317", "Resp. Sens. 1 H334"),
    statements=("EUH204",),
    holds_isocyanate=True,
    wear_eyes="sealed glasses",
    wear_hands="nitrile 0.4 mm, new after 30 min",
    wear_breath="half mask A2",
    aid_breath="Call, even if it passes",
    ventilation="fan on, both doors open",
    never_with=(("Water, alcohol", "gas and pressure in a closed bottle"),),
)
WIPE = SheetFacts(
    hazards=("Flam. Liq. 2 H225", "Eye Irrit. 2 H319", "STOT SE 3 H336"),
    wear_eyes="sealed glasses",
    wear_hands="nitrile",
    fire="Never water on the solvent can",
    ventilation="fan on, both doors open",
)
IRON = SheetFacts(
    hazards=("Acute Tox. 4 H302", "Skin Sens. 1 H317"),
    wear_eyes="glasses",
    never_with=(("Brack wheel acid", "toxic sulfur gas possible: rinse to a clear drain between"),),
)
COMPOUND = SheetFacts(not_classified=True, wear_eyes="glasses")

SHELF = (
    ("Marl cutting compound", COMPOUND),
    ("Fenmoor iron remover", IRON),
    ("Hollin panel wipe", WIPE),
    ("Tidewall coating", COATING),
    ("Brack wheel acid", ACID),
)
BAY = PlaceFacts(
    name="Bay 2",
    task="Correction and coating",
    shop="Larkmoor Works",
    address="3 Mill Lane",
    eyewash="left of the door, 6 m",
    extinguisher="right wall",
    spill_kit="green cabinet",
    emergency_number="112",
    poison_centre="0800 555 0100",
    ventilation="fan on, both doors open",
    binder_at="the office shelf",
)
URL = "http://shelf.larkmoor.example/posters/PKTRVNXH/"
