"""What a step takes, in rows: what is typed becomes a product or a kind, and base units."""

from typing import Any, cast

from django import forms

from inventory.jobs import queries
from inventory.jobs.actions import Wanted
from inventory.models import Kind, Shop
from inventory.stock.rules.amounts import usual
from inventory.stock.rules.lines import NEAT
from inventory.units import AmountError, parse_amount

from .fields import MixField

EMPTY_ROWS = 2


class NeedForm(forms.Form):
    """One thing that a step takes: a product or a kind, how much of it undiluted, and with how much water."""

    what = forms.ChoiceField(label="Takes", required=False)
    amount = forms.CharField(label="Amount", required=False, max_length=60)
    mix = MixField(label="Mix, product : water", required=False, max_length=20)

    def __init__(self, *args: Any, shop: Shop, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.shop = shop
        made = [(f"p{row.pk}", row.name) for row in queries.products(shop)]
        kinds = [(f"k{value}", f"any {label}") for value, label in Kind.choices]
        what = cast(forms.ChoiceField, self.fields["what"])
        what.choices = [("", "nothing"), ("Products", made), ("Any of a kind", kinds)]

    def clean(self) -> dict[str, Any]:
        """Read the amount in the dimension of what is taken; left empty it is the usual one of its kind."""
        given: dict[str, Any] = super().clean() or {}
        if what := given.get("what"):
            product = queries.products(self.shop).filter(pk=what[1:]).first() if what[0] == "p" else None
            kind = product.kind if product else what[1:]
            dimension = product.dimension if product else queries.taking(self.shop).of_kind(kind)
            given["wanted"] = self._wanted(product.pk if product else None, kind, dimension, given)
        elif given.get("amount"):
            self.add_error("what", "Say what this amount is of, or empty the amount.")
        elif given.get("mix", NEAT) != NEAT:
            self.add_error("what", "Say what this mix is of, or empty the mix.")
        return given

    def _wanted(self, product: int | None, kind: str, dimension: str, given: dict[str, Any]) -> Wanted | None:
        text, (parts, water) = str(given.get("amount") or "").strip(), given.get("mix", NEAT)
        if not text:
            if (amount := usual(kind, dimension)) is None:
                self.add_error("amount", "How much does it take? There is no usual amount for this.")
                return None
            return Wanted(product, "" if product else kind, amount, water, parts)
        try:
            base = parse_amount(
                text, dimension=dimension, system=self.shop.system, decimal=self.shop.decimal_mark or None
            ).base
        except AmountError as error:
            self.add_error("amount", str(error))
            return None
        if not base:
            self.add_error("amount", "Nothing is no amount. Empty the row if the step does not take it.")
        return Wanted(product, "" if product else kind, base, water, parts)


class NeedRows(forms.BaseFormSet):  # type: ignore[type-arg]
    """What a step takes, a row each; emptied rows fall away."""

    def wanted(self) -> list[Wanted]:
        """Return the rows that say something."""
        return [row for form in self.forms if (row := form.cleaned_data.get("wanted"))]


def need_rows(shop: Shop, needs: Any, data: Any = None) -> NeedRows:
    """Return the rows for needs of a step or of a service's step, with empty ones behind them."""
    taking = queries.taking(shop)
    made = forms.formset_factory(NeedForm, formset=NeedRows, extra=EMPTY_ROWS, max_num=40)
    initial = [
        {
            "what": f"p{row.product_id}" if row.product_id else f"k{row.kind}",
            "amount": taking.amount(row.amount, row),
            "mix": (row.parts_product, row.parts_water),
        }
        for row in needs
    ]
    return cast(NeedRows, made(data, initial=initial, form_kwargs={"shop": shop}, prefix="needs"))
