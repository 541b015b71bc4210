"""The pages of posters and labels, and what they share: sending a PDF, the refusals of paper."""

from django.http import HttpResponse
from django.utils.text import slugify

from safety.print.pen import UnknownPaper
from safety.print.poster import DistanceOutOfRange, PaperTooSmall

PAPER_REFUSALS = (UnknownPaper, PaperTooSmall, DistanceOutOfRange)


def sent(pdf: bytes, name: str) -> HttpResponse:
    """Send a PDF that opens in the browser, from where it is printed or saved under a name of its own."""
    headers = {
        "Content-Disposition": f'inline; filename="{slugify(name) or "sheets"}.pdf"',
        "Cache-Control": "no-store",
    }
    return HttpResponse(pdf, content_type="application/pdf", headers=headers)
