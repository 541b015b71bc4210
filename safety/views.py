"""The shop's data sheets on screen: read by everybody in the shop, attached by an owner."""

from urllib.parse import quote, urlencode

from django.contrib import messages
from django.core.exceptions import ValidationError
from django.http import FileResponse, Http404, HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect, render
from django.urls import reverse
from django.utils import timezone
from django.utils.http import url_has_allowed_host_and_scheme
from django.views.decorators.cache import cache_control
from django.views.decorators.http import require_GET, require_http_methods, require_POST

from safety import actions, queries
from safety.access import lan_or_login, owner_only
from safety.forms import IngredientRows, SheetForm, VersionForm
from safety.hazards.composed import composed
from safety.hazards.composition import mixes_typed
from safety.hazards.facts import label_parts
from safety.models import DataSheet, SheetVersion
from safety.print import pictograms


@require_GET
@lan_or_login
def sheets(request: HttpRequest) -> HttpResponse:
    """List every sheet, with those that are old or wait for somebody to confirm them."""
    rows = queries.listed(timezone.localdate())
    only = request.GET.get("only", "")
    shown = [row for row in rows if only not in ("old", "waiting") or getattr(row, only)]
    counted = {
        "rows": shown,
        "only": only,
        "all": len(rows),
        "old": sum(row.old for row in rows),
        "waiting": sum(row.waiting for row in rows),
    }
    return render(request, "safety/sheets.html", counted)


@require_GET
@lan_or_login
def sheet(request: HttpRequest, pk: int) -> HttpResponse:
    """Show a sheet: what its version that counts says, and its history. ?version= shows an older one."""
    one = get_object_or_404(DataSheet, pk=pk)
    current = queries.current(one)
    shown = current or one.versions.first()
    if (asked := request.GET.get("version", "")).isdecimal():
        shown = get_object_or_404(one.versions, pk=int(asked))
    context: dict[str, object] = {"sheet": one, "version": shown, "current": current}
    if shown:
        facts = queries.facts_of(shown)
        parts = label_parts(facts, shown.regime, with_codes=True)
        context |= {
            "parts": parts,
            "composed": composed(facts, shown.regime),
            "changes": queries.changes_since_before(shown),
            "pictures": [(code, pictograms.NAMES[code]) for code in parts.elements.pictograms],
            "missing": queries.missing_fields(shown),
            "old": queries.is_old(shown, timezone.localdate()),
            "grave": queries.is_grave(shown),
        }
    return render(request, "safety/sheet.html", context)


@require_GET
@lan_or_login
def sheet_pdf(request: HttpRequest, pk: int) -> FileResponse:
    """Hand out the file of the version that counts, or of ?version=."""
    one = get_object_or_404(DataSheet, pk=pk)
    version = queries.current(one)
    if (asked := request.GET.get("version", "")).isdecimal():
        version = get_object_or_404(one.versions, pk=int(asked))
    if version is None or not version.pdf:
        raise Http404("No file is attached to this sheet yet.")
    name = f"{one.supplier} {one.title} {version.revision_on:%Y-%m-%d}.pdf".replace("/", "-")
    try:
        file = version.pdf.open("rb")
    except FileNotFoundError as gone:
        raise Http404("The file of this version is gone from the disk: restore it from a backup.") from gone
    answer = FileResponse(file, content_type="application/pdf")
    answer["Content-Disposition"] = f"inline; filename=\"sheet.pdf\"; filename*=UTF-8''{quote(name)}"
    answer["X-Content-Type-Options"] = "nosniff"
    # Runs nothing of the file's; the site's own policy would also keep a browser's PDF viewer out.
    answer["Content-Security-Policy"] = "script-src 'none'; frame-ancestors 'none'; base-uri 'none'"
    return answer


@require_GET
@lan_or_login
@cache_control(max_age=86400, private=True)
def pictogram(request: HttpRequest, code: str) -> HttpResponse:
    """Hand out one GHS diamond for a page."""
    try:
        return HttpResponse(pictograms.svg(code), content_type="image/svg+xml")
    except pictograms.UnknownPictogram as unknown:
        raise Http404(str(unknown)) from unknown


@require_http_methods(["GET", "POST"])
@owner_only
def new_sheet(request: HttpRequest) -> HttpResponse:
    """Take in a sheet that is new to the shop, then its first version.

    ?title= and ?supplier= start it; ?back= is the page that asked for it, to which both pages lead.
    """
    back = asked_back(request)
    start = {name: request.GET[name] for name in ("title", "supplier") if name in request.GET}
    form = SheetForm(request.POST or None, initial=start)
    if form.is_valid():
        onward = f"?{urlencode({'back': back})}" if back else ""
        return redirect(reverse("safety:new_version", args=[form.save().pk]) + onward)
    return render(request, "safety/new_sheet.html", {"form": form, "back": back})


@require_http_methods(["GET", "POST"])
@owner_only
def new_version(request: HttpRequest, pk: int) -> HttpResponse:
    """Take in a revision: its file, its date, its fields. ?back= is told which `sheet` it became."""
    back = asked_back(request)
    one = get_object_or_404(DataSheet, pk=pk)
    form = VersionForm(request.POST or None, request.FILES or None, initial=last_typed(one))
    if form.is_valid():
        try:
            kept = actions.add_version(
                one,
                form.version(),
                by=str(request.user),
                on=timezone.localdate(),
                confirm=form.cleaned_data["confirm"],
            )
        except actions.NothingRead as wrong:
            form.add_error("hazard_lines", str(wrong))
        except ValidationError as wrong:
            form.add_error(None, ValidationError(wrong.messages))
        else:
            messages.success(request, f"The version is kept. {told(kept)}".strip())
            joint = "&" if "?" in back else "?"
            return redirect(f"{back}{joint}sheet={one.pk}") if back else redirect("safety:sheet", one.pk)
    return render(request, "safety/new_version.html", {"form": form, "sheet": one, "back": back})


def asked_back(request: HttpRequest) -> str:
    """Return the page of this site that ?back= names, "" for anywhere else."""
    back = request.GET.get("back", "")
    ours = back.startswith("/") and url_has_allowed_host_and_scheme(back, allowed_hosts=None)
    return back if ours else ""


@require_http_methods(["GET", "POST"])
@owner_only
def section_3(request: HttpRequest, pk: int, version: int) -> HttpResponse:
    """Take in what a product is made of, where the version that counts says nothing of it."""
    one = get_object_or_404(SheetVersion.objects.select_related("sheet"), pk=version, sheet_id=pk)
    rows = IngredientRows(request.POST if request.method == "POST" else None)
    wrong = (rows.sentences() or rows.of_the_whole()) if request.method == "POST" else []
    if request.method == "POST" and not wrong:
        try:
            actions.add_composition(one, rows.documents(), by=str(request.user), on=timezone.localdate())
        except (actions.TypedAlready, ValidationError) as refused:
            wrong = refused.messages if isinstance(refused, ValidationError) else [str(refused)]
        else:
            messages.success(request, "Section 3 is kept: mixes, air and reactions are judged by it now.")
            return redirect("safety:sheet", pk)
    return render(request, "safety/section_3.html", {"version": one, "rows": rows, "wrong": wrong})


def told(version: SheetVersion) -> str:
    """Return what a confirmed version changes on labels; nothing where none went before it."""
    changes = queries.changes_since_before(version) if version.confirmed else []
    return " ".join(["Against the version before:", *changes]) if changes else ""


def last_typed(one: DataSheet) -> dict[str, object]:
    """Return what the last version said, to start from; never its file, date or confirmation."""
    last = queries.current(one) or one.versions.first()
    if last is None:
        return {}
    kept = {
        name: getattr(last, name) for name in VersionForm.Meta.fields if name not in ("pdf", "revision_on")
    }
    return kept | {
        "hazard_lines": "\n".join(last.hazards),
        "statement_lines": "\n".join(last.statements),
        "composition": last.composition,
        "mix_lines": mixes_typed(last.mixes),
        "never_lines": "\n".join(f"{pair['with']}: {pair['why']}" for pair in last.never_with),
    }


@require_POST
@owner_only
def confirm(request: HttpRequest, pk: int, version: int) -> HttpResponse:
    """Let an owner stand for what was typed in."""
    one = get_object_or_404(SheetVersion, pk=version, sheet_id=pk)
    try:
        one = actions.confirm(one, by=str(request.user), on=timezone.localdate())
        messages.success(request, f"Confirmed: labels and posters use this version now. {told(one)}".strip())
    except (actions.AlreadyConfirmed, actions.NothingRead, ValidationError) as wrong:
        said = wrong.messages if isinstance(wrong, ValidationError) else [str(wrong)]
        messages.error(request, " ".join(said))
    return redirect("safety:sheet", pk)
