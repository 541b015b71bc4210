"""What the tests of the first day's sheet share: signing it, and reading its paper."""

from io import BytesIO

from django.test import Client
from django.urls import reverse
from pypdf import PdfReader

from inventory.models import Person

ADDRESS = "people:sign_first_day"


def sign(client: Client, who: Person, shown_by: Person, language: str = "en") -> str:
    said = {"shown_by": shown_by.code, "language": language}
    answer = client.post(reverse(ADDRESS, args=[who.code]), said, follow=True)
    return answer.content.decode()


def words_of(pdf: bytes) -> str:
    return " ".join("".join(p.extract_text() + "\n" for p in PdfReader(BytesIO(pdf)).pages).split())
