"""The spreadsheet pages: what goes out and comes in, the preview, the confirmation."""

from django.contrib import messages
from django.core.paginator import Paginator
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone
from django.views.decorators.http import require_GET, require_POST

from inventory.access import owner, person_of, shop_of
from inventory.spreadsheets import actions, queries
from inventory.spreadsheets.forms import UploadForm
from inventory.spreadsheets.queries import Preview
from inventory.spreadsheets.resources import RESOURCES
from inventory.spreadsheets.rules.outcome import Becomes, count, summary
from inventory.spreadsheets.rules.table import Bounds, Unreadable
from inventory.spreadsheets.sheets import read_table, write_csv, write_xlsx
from inventory.stock.rules.lines import Refused

FILES = {
    "csv": "text/csv; charset=utf-8",
    "xlsx": "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
}
PAGE = 100
FILTERS = (
    ("", "All"),
    (Becomes.WRONG, "To put right"),
    (Becomes.NEW, "New"),
    (Becomes.CHANGED, "Changed"),
    (Becomes.SAME, "Unchanged"),
)


@owner
def home(request: HttpRequest) -> HttpResponse:
    """Offer every kind for download, and take a file in."""
    form = UploadForm(request.POST or None, request.FILES or None)
    if request.method == "POST" and form.is_valid():
        upload, slug = form.cleaned_data["file"], form.cleaned_data["kind"]
        try:
            if upload.size > Bounds().bytes:
                raise Unreadable(
                    f"The file is larger than {Bounds().bytes // 2**20} MB. Split it into parts."
                )
            data = upload.read()
            now = timezone.now()
            queries.check_columns(shop_of(request), slug, read_table(data))
            file = actions.keep(person_of(request), slug, upload.name, data, now)
            return redirect("spreadsheets:preview", file.token)
        except Unreadable as refusal:
            form.add_error("file", refusal.says)
    kinds = [{"slug": slug, "what": each.what, "lead": each.lead} for slug, each in RESOURCES.items()]
    return render(request, "inventory/spreadsheets/home.html", {"form": form, "kinds": kinds})


@owner
@require_GET
def download(request: HttpRequest, slug: str, form: str) -> HttpResponse:
    """Hand out one kind as a file."""
    if slug not in RESOURCES or form not in FILES:
        raise Http404("There is no such spreadsheet.")
    sheet, rows = queries.export(shop_of(request), slug, timezone.now())
    data = write_csv(sheet.heads, rows) if form == "csv" else write_xlsx(sheet.heads, rows, sheet.slug)
    name = f"{slug}-{timezone.localdate().isoformat()}.{form}"
    return HttpResponse(
        data, content_type=FILES[form], headers={"Content-Disposition": f'attachment; filename="{name}"'}
    )


@owner
@require_GET
def preview(request: HttpRequest, token: str) -> HttpResponse:
    """Show what the file would do, row by row; nothing is written and nothing is locked."""
    try:
        file = actions.kept(person_of(request), token, timezone.now())
        found = queries.preview(shop_of(request), file.slug, read_table(file.data), timezone.now())
    except Unreadable as refusal:
        return _back(request, refusal.says)
    return _shown(request, file, found)


def _back(request: HttpRequest, says: str) -> HttpResponse:
    messages.error(request, says)
    return redirect("spreadsheets:home")


def _shown(request: HttpRequest, file: actions.Kept, found: Preview) -> HttpResponse:
    outcomes = sorted(found.outcomes, key=lambda each: each.becomes is not Becomes.WRONG)
    only = request.GET.get("only", "")
    rows = [each for each in outcomes if not only or each.becomes == only]
    numbers = {"": len(outcomes)} | {str(each): count(outcomes, each) for each in Becomes}
    comes = numbers[Becomes.NEW] + numbers[Becomes.CHANGED]
    context = {
        "file": file,
        "kind": found.sheet.what,
        "says": summary(outcomes),
        "page": Paginator(rows, PAGE).get_page(request.GET.get("page")),
        "only": only,
        "filters": [(key, label, numbers[key]) for key, label in FILTERS],
        "wrong": numbers[Becomes.WRONG],
        "seen": found.fingerprint,
        "comes": comes,
        "grade": "stop" if found.wrong else "ready" if comes else "tell",
    }
    return render(request, "inventory/spreadsheets/preview.html", context)


@owner
@require_POST
def bring(request: HttpRequest, token: str) -> HttpResponse:
    """Bring the file in as it was shown, or show what changed."""
    person, now = person_of(request), timezone.now()
    try:
        file = actions.kept(person, token, now)
        table, seen = read_table(file.data), request.POST.get("seen", "")
        says = actions.bring_in(
            shop_of(request), file.slug, table, seen=seen, token=token, sha256=file.sha256, by=person, at=now
        )
    except Unreadable as refusal:
        return _back(request, refusal.says)
    except (actions.Moved, Refused) as refusal:
        messages.warning(request, refusal.says)
        return redirect("spreadsheets:preview", token)
    actions.drop(person, token)
    messages.success(request, says)
    return redirect("spreadsheets:home")


@owner
@require_POST
def leave(request: HttpRequest, token: str) -> HttpResponse:
    """Forget an uploaded file."""
    actions.drop(person_of(request), token)
    messages.success(request, "The file is forgotten. Nothing came in.")
    return redirect("spreadsheets:home")
