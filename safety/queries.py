"""Reading data sheets: which version counts, what it says, what is missing, what is old."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from django.db.models import Q

from safety.hazards import facts as hazard_facts
from safety.hazards.changes import what_changed
from safety.hazards.facts import Measured, SheetFacts, label_parts
from safety.hazards.mix import UNDILUTED, mixed
from safety.models import DataSheet, SheetVersion

Current = dict[int, SheetVersion]

WANTED = (
    ("wear_eyes", "what to wear for the eyes"),
    ("wear_hands", "what to wear on the hands"),
    ("aid_eyes", "first aid for the eyes"),
    ("aid_skin", "first aid for the skin"),
    ("aid_breath", "first aid after breathing it"),
    ("aid_swallowed", "first aid if swallowed"),
    ("fire", "what to do in a fire"),
    ("spill", "what to do after a spill"),
    ("pdf", "the sheet itself (PDF)"),
)


@dataclass(frozen=True)
class ListedSheet:
    """A row of the list: the sheet, its version that counts, and what is wrong with it."""

    sheet: DataSheet
    version: SheetVersion | None
    old: bool
    waiting: bool


def current_by_sheet(sheets: Iterable[int | None]) -> Current:
    """Return by sheet the version that counts: the latest revision that a person confirmed. One query."""
    rows = SheetVersion.objects.filter(sheet__in={one for one in sheets if one}, confirmed_on__isnull=False)
    # The last one of a sheet wins: the newest revision, of two the one typed later.
    return {version.sheet_id: version for version in rows.order_by("revision_on", "id")}


def current(sheet: DataSheet) -> SheetVersion | None:
    """Return the version of one sheet that counts, if any is confirmed."""
    return current_by_sheet([sheet.pk]).get(sheet.pk)


def facts_of(version: SheetVersion) -> SheetFacts:
    """Return a version as plain values."""
    return SheetFacts(
        hazards=tuple(version.hazards),
        statements=tuple(version.statements),
        not_classified=version.not_classified,
        holds_fluoride=version.holds_fluoride,
        holds_isocyanate=version.holds_isocyanate,
        wear_eyes=version.wear_eyes,
        wear_hands=version.wear_hands,
        wear_breath=version.wear_breath,
        wear_body=version.wear_body,
        ventilation=version.ventilation,
        aid_eyes=version.aid_eyes,
        aid_skin=version.aid_skin,
        aid_breath=version.aid_breath,
        aid_swallowed=version.aid_swallowed,
        fire=version.fire,
        spill=version.spill,
        never_with=tuple((pair["with"], pair["why"]) for pair in version.never_with),
        mixes=tuple(
            Measured((one["parts"][0], one["parts"][1]), one.get("ph"), one.get("flash_point_c"))
            for one in version.mixes
        ),
        composition=mixture_of(version) if version.composition else None,
    )


def mixture_of(version: SheetVersion) -> dict[str, object]:
    """Return sections 3 and 9 of a version as the document of a mixture."""
    return {
        "form": version.form,
        "ph": version.ph,
        "flash_point_c": version.flash_point_c,
        "boiling_point_c": version.boiling_point_c,
        "viscosity_mm2_s_40c": version.viscosity_mm2_s_40c,
        "ingredients": version.composition,
    }


def facts_or_none(version: SheetVersion | None) -> SheetFacts | None:
    """Return the facts of a version, None where there is none or nobody confirmed it."""
    return facts_of(version) if version and version.confirmed else None


def facts_in(
    version: SheetVersion | None, regime: str, parts: tuple[int, int], density: float | None
) -> SheetFacts | None:
    """Return the facts of what a bottle holds: product and water by volume; None without a confirmed sheet.

    density: kg/l of the product, None where nobody knows.
    """
    facts = facts_or_none(version)
    return mixed(facts, regime, parts, density).facts if facts else None


def before(version: SheetVersion) -> SheetVersion | None:
    """Return the confirmed version that counted before this one."""
    rows = SheetVersion.objects.filter(sheet=version.sheet_id, confirmed_on__isnull=False).exclude(
        pk=version.pk
    )
    older = Q(revision_on__lt=version.revision_on) | Q(revision_on=version.revision_on, pk__lt=version.pk)
    return rows.filter(older).order_by("revision_on", "pk").last()


def changes_since_before(version: SheetVersion) -> list[str]:
    """Return what a version changes on labels against the one before, a sentence each; [] without one.

    Judged are the product itself and every mix that either version was measured on.
    """
    earlier = before(version)
    if earlier is None:
        return []
    old, new = facts_of(earlier), facts_of(version)
    mixes = dict.fromkeys([UNDILUTED, *(one.parts for one in (*old.mixes, *new.mixes))])
    found = []
    for parts in mixes:
        was, becomes = (
            label_parts(mixed(one, version.regime, parts).facts, version.regime) for one in (old, new)
        )
        if change := what_changed(was, becomes):
            found.append(f"{f'Mixed {parts[0]}:{parts[1]}' if parts[1] else 'Undiluted'}: {change.says}")
    return found or ["Nothing on the label changes."]


def is_grave(version: SheetVersion) -> bool:
    """Return whether a version is of an acid, another corrosive, a fluoride or an isocyanate."""
    return hazard_facts.is_grave(facts_of(version))


def missing_fields(version: SheetVersion) -> list[str]:
    """Return in words what nobody typed in yet; one that is not classified needs only its file."""
    wanted = WANTED[-1:] if version.not_classified else WANTED
    missing = [words for field, words in wanted if not getattr(version, field)]
    if not version.hazards and not version.not_classified:
        missing.insert(0, "the hazard classes")
    return missing


def years_before(on: date, years: int) -> date:
    """Return the same day some years earlier, 28 February for a leap day."""
    try:
        return on.replace(year=on.year - years)
    except ValueError:
        return on.replace(year=on.year - years, day=28)


def is_old(version: SheetVersion, on: date, years: int = 3) -> bool:
    """Return whether a version was revised more than that many years before a day."""
    return version.revision_on < years_before(on, years)


def older_than(on: date, years: int = 3) -> list[SheetVersion]:
    """Return the versions that count whose revision is older than that, the oldest first."""
    found = current_by_sheet(DataSheet.objects.values_list("pk", flat=True))
    old = [version for version in found.values() if is_old(version, on, years)]
    return sorted(old, key=lambda version: (version.revision_on, version.pk))


def listed(on: date) -> list[ListedSheet]:
    """Return every sheet by supplier and title with what is wrong with it, in three queries."""
    sheets = list(DataSheet.objects.order_by("supplier", "title"))
    found = current_by_sheet(sheet.pk for sheet in sheets)
    typed = SheetVersion.objects.filter(confirmed_on__isnull=True).values_list("sheet_id", flat=True)
    waiting = set(typed)
    return [
        ListedSheet(
            sheet=sheet,
            version=(version := found.get(sheet.pk)),
            old=bool(version and is_old(version, on)),
            waiting=sheet.pk in waiting,
        )
        for sheet in sheets
    ]
