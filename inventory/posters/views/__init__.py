"""The pages of posters and labels, and what they share: sending a PDF, the refusals of paper."""

from collections.abc import Mapping

from django.http import HttpRequest, HttpResponse
from django.utils.text import slugify

from inventory.models import Shop
from safety.print.pen import UnknownPaper
from safety.print.poster import DistanceOutOfRange, PaperTooSmall

PAPER_REFUSALS = (UnknownPaper, PaperTooSmall, DistanceOutOfRange)


def site_address(request: HttpRequest, shop: Shop, path: str) -> str:
    """Return the whole address of a page, as a phone in the shop reaches it."""
    site = shop.site_url.rstrip("/")
    return f"{site}{path}" if site else request.build_absolute_uri(path)


def language_of(asked: Mapping[str, str], shop: Shop) -> str:
    """Return the language that was asked for, the shop's own where it is none of ours."""
    language = asked.get("language", "")
    return language if language in Shop.Language.values else shop.language


def other_languages(language: str) -> list[tuple[str, str]]:
    """Return (letters, name) of the languages that a page could also be read in."""
    return [(letters, name) for letters, name in Shop.Language.choices if letters != language]


def sent(pdf: bytes, name: str) -> HttpResponse:
    """Send a PDF that opens in the browser, from where it is printed or saved under a name of its own."""
    headers = {
        "Content-Disposition": f'inline; filename="{slugify(name) or "sheets"}.pdf"',
        "Cache-Control": "no-store",
    }
    return HttpResponse(pdf, content_type="application/pdf", headers=headers)
