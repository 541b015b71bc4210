"""`poster PLACE --out F`: a place's poster as its next version; with an option, a card or a list instead."""

from pathlib import Path
from typing import Any

from django.core.management.base import CommandParser
from django.db import transaction
from django.urls import reverse

from inventory.management.scripted import Answer, BadInput, ScriptedCommand
from inventory.management.written import write_whole
from inventory.models import Place, Product, Shop
from inventory.posters import actions, queries
from inventory.posters.rules import only_here
from safety.print.pen import UnknownPaper
from safety.print.poster import DistanceOutOfRange, PaperTooSmall
from safety.print.poster_card import print_card
from safety.print.poster_lists import print_cabinet, print_chemicals
from safety.print.words import UnknownLanguage

NO_SITE = "http://localhost:8000"
KINDS = ("place", "card", "cabinet", "chemicals")


class Command(ScriptedCommand):
    """Write a place's poster as a PDF and keep it as a version; write a card or a list and keep nothing."""

    help = (
        "Print a place's poster (PLACE is its code or its name), or instead the card of one product, what "
        "stands in a place, or the shop's hazardous chemicals."
    )
    domain_errors = (
        actions.NothingToSay,
        UnknownPaper,
        PaperTooSmall,
        DistanceOutOfRange,
        UnknownLanguage,
    )

    def add_arguments(self, parser: CommandParser) -> None:
        """Take what to print, the file, the paper, the language and the distance."""
        parser.add_argument("place", nargs="?", help="its code or its name")
        parser.add_argument("--card", metavar="PRODUCT", help="the card of a product, by its code or name")
        parser.add_argument("--cabinet", metavar="PLACE", help="what stands in a place")
        parser.add_argument(
            "--chemicals", nargs="?", const="", metavar="SHOP", help="the list of hazardous chemicals"
        )
        parser.add_argument("--out", required=True, type=Path, help="the PDF to write")
        parser.add_argument("--paper", help="A3 (a poster's own), A4 (the others'), Letter or Tabloid")
        parser.add_argument("--language", default="", help="en or es; else the shop's own")
        parser.add_argument(
            "--read-at", type=float, metavar="M", help="metres, for a poster; else the place's own"
        )

    def answer(self, **options: Any) -> Answer:
        """Print it, and say what is on it; without the file, there is no new version."""
        chosen = [kind for kind in KINDS if options[kind] is not None]
        if len(chosen) != 1:
            raise BadInput("One of PLACE, --card, --cabinet and --chemicals was expected.")
        kind = chosen[0]
        if kind != "place" and options["read_at"] is not None:
            raise BadInput("--read-at: only a poster is printed for a distance of one's own.")
        answer: Answer = getattr(self, f"answer_{kind}")(options)
        return answer

    @transaction.atomic
    def answer_place(self, options: dict[str, Any]) -> Answer:
        """Print a poster as the place's next version."""
        place, out = place_called(options["place"], "PLACE"), options["out"]
        url, on = address(place.shop, "place", place.code), queries.today(place.shop)
        paper, language = options["paper"] or "A3", options["language"]
        issued = actions.issue_poster(place, url, on, paper, options["read_at"], language)
        write_whole(out, issued.pdf)
        count = "1 product" if issued.products == 1 else f"{issued.products} products"
        says = f"{place.name}, version {issued.version}: {count}, written to {out}.{unreachable(url)}"
        return says, {"code": place.code, "file": str(out), **issued.said}

    def answer_card(self, options: dict[str, Any]) -> Answer:
        """Print a product's card."""
        product = product_called(options["card"])
        url, on = address(product.shop, "card", product.code), queries.today(product.shop)
        content = queries.card(product, url, on, options["language"])
        pdf, said = print_card(content, options["paper"] or "A4")
        return written_answer(f"The card of {product.name}", product.code, options["out"], pdf, said)

    def answer_cabinet(self, options: dict[str, Any]) -> Answer:
        """Print what stands in a place."""
        place = place_called(options["cabinet"], "--cabinet")
        url, on = address(place.shop, "place", place.code), queries.today(place.shop)
        content = queries.cabinet(place, url, on, options["language"])
        pdf, said = print_cabinet(content, options["paper"] or "A4")
        return written_answer(f"What stands in {place.name}", place.code, options["out"], pdf, said)

    def answer_chemicals(self, options: dict[str, Any]) -> Answer:
        """Print the shop's list."""
        shop = queries.shop_called(options["chemicals"])
        if shop is None:
            raise BadInput(f"--chemicals “{options['chemicals']}”: the address name of a shop was expected.")
        url, on = address(shop, "chemicals", shop.slug), queries.today(shop)
        content = queries.chemicals(shop, url, on, options["language"])
        pdf, said = print_chemicals(content, options["paper"] or "A4")
        return written_answer(f"The hazardous chemicals of {shop.name}", shop.slug, options["out"], pdf, said)


def written_answer(what: str, code: str, out: Path, pdf: bytes, said: dict[str, object]) -> Answer:
    """Write the file and return what is said of it."""
    write_whole(out, pdf)
    says = f"{what}: written to {out}.{unreachable(str(said['url']))}"
    return says, {"code": code, "file": str(out), **said}


def address(shop: Shop, page: str, code: str) -> str:
    """Return the address that the paper's code opens."""
    return f"{(shop.site_url or NO_SITE).rstrip('/')}{reverse(f'posters:{page}', args=[code])}"


def unreachable(url: str) -> str:
    """Return the warning where no phone can open an address."""
    if not only_here(url):
        return ""
    return f" Its code opens {url}, which no phone can: set the site's address in Settings."


def place_called(text: str, argument: str) -> Place:
    """Return the one place with this code or name, or refuse."""
    rows = queries.place_called(text)
    if len(rows) != 1:
        what = "several places are called so, their code" if rows else "a place's code or name"
        raise BadInput(f"{argument} “{text}”: {what} was expected.")
    return rows[0]


def product_called(text: str) -> Product:
    """Return the one product with this code or name, or refuse."""
    rows = queries.product_called(text)
    if len(rows) != 1:
        what = "several products are called so, their code" if rows else "a product's code or name"
        raise BadInput(f"--card “{text}”: {what} was expected.")
    return rows[0]
