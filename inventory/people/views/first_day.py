"""The sheet of the first day: on screen, on paper, and signed."""

from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.utils import timezone
from django.views.decorators.http import require_GET, require_POST

from inventory.access import member, person_of, shop_of, worker
from inventory.models import Person, Shop
from inventory.people import views
from inventory.people.actions import record as actions
from inventory.people.forms import SignForm
from inventory.people.pdf import first_day_pdf
from inventory.people.queries import first_day as queries
from inventory.people.rules.first_day import TITLE, Section, notes
from safety.print.words import say, written


def _address(request: HttpRequest, path: str) -> str:
    """Return the whole address of a page, as a phone in the shop reaches it."""
    site = shop_of(request).site_url.rstrip("/")
    return f"{site}{path}" if site else request.build_absolute_uri(path)


def _language(request: HttpRequest) -> str:
    """Return the language that was asked for, the shop's own where it is none of ours."""
    asked = request.GET.get("language", "")
    return asked if asked in Shop.Language.values else shop_of(request).language


def _parts(request: HttpRequest, language: str) -> tuple[Section, ...]:
    return queries.first_day(shop_of(request), _address(request, reverse("safety:sheets")), language)


def _page(language: str) -> str:
    """Return the address of the sheet in a language."""
    return f"{reverse('people:first_day')}?language={language}"


def _signed(person: Person, language: str) -> str:
    """Return that somebody signed, when and with whom; "" where nobody did."""
    if (kept := getattr(person, "first_day", None)) is None:
        return ""
    words = "You signed this on {day}, shown round by {who}."
    day = written(timezone.localdate(kept.signed_at), language)
    return say(words, language, day=day, who=kept.shown_by.name)


@member
@require_GET
def sheet(request: HttpRequest) -> HttpResponse:
    """Show what a new person is shown, and who may sign it."""
    reader, language = person_of(request), _language(request)
    signed = _signed(reader, language)
    may_sign = not signed and not reader.is_owner and reader.role != Person.Role.VIEWER
    context = {
        "title": say(TITLE, language),
        "notes": notes(language),
        "parts": _parts(request, language),
        "signed": signed,
        "form": SignForm.of_page(reader, language) if may_sign else None,
        "language": language,
        "languages": [one for one in Shop.Language.choices if one[0] != language],
        "person": reader,
    }
    return render(request, "inventory/people/first_day.html", context)


@member
@require_GET
def sheet_pdf(request: HttpRequest) -> HttpResponse:
    """Print the sheet, with lines to sign on."""
    shop, language = shop_of(request), _language(request)
    pdf = first_day_pdf(
        shop.name,
        _parts(request, language),
        language=language,
        url=_address(request, _page(language)),
        binder_at=shop.binder_at,
        on=timezone.localdate(),
        paper="Letter" if shop.country in {"US", "CA"} else "A4",
    )
    headers = {
        "Content-Disposition": 'inline; filename="first-day.pdf"',
        "Cache-Control": "no-store",
    }
    return HttpResponse(pdf, content_type="application/pdf", headers=headers)


@worker
@require_POST
def sign(request: HttpRequest, code: str) -> HttpResponse:
    """Keep that somebody signed the sheet, with what stood on it."""
    signer = views.own_or_owner(request, code)
    form = SignForm(request.POST, person=signer)
    if not form.is_valid():
        messages.error(request, "Say who showed you round, then sign.")
        return redirect(_page(language) if (language := form.read_in()) else "people:first_day")
    try:
        actions.sign_first_day(
            signer,
            _parts(request, form.cleaned_data["language"]),
            language=form.cleaned_data["language"],
            shown_by=form.cleaned_data["shown_by"],
            at=timezone.now(),
            by=person_of(request),
        )
    except actions.Refused as refusal:
        messages.error(request, refusal.says)
    else:
        messages.success(request, f"Signed. Welcome, {signer.name}.")
    return redirect("people:person", signer.code)
