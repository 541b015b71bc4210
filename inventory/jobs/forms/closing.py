"""What became of what nobody spoke for."""

from typing import Any

from django import forms

from inventory.jobs import queries
from inventory.jobs.actions import Said
from inventory.models import Shop
from inventory.units import AmountError, parse_amount, show


class CloseForm(forms.Form):
    """What became of each need that nobody spoke for: as planned, another amount, or not done."""

    def __init__(self, *args: Any, shop: Shop, unsaid: list[queries.Unsaid], **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.shop, self.unsaid = shop, unsaid
        for one in unsaid:
            left, plan = (show(each, one.dimension, shop.system) for each in (one.left, one.need.amount))
            planned = f"as planned: {plan}" if left == plan else f"as planned: the other {left} of {plan}"
            self.fields[f"how_{one.need.pk}"] = forms.ChoiceField(
                label=f"{one.named}, {one.step.name}",
                choices=[
                    ("planned", planned),
                    ("not", "not done"),
                    ("amount", "another amount:"),
                ],
                widget=forms.RadioSelect,
                required=False,
            )
            self.fields[f"amount_{one.need.pk}"] = forms.CharField(
                label=f"Another amount of {one.named}", required=False, max_length=60
            )

    def rows(self) -> list[dict[str, forms.BoundField]]:
        """Return the two fields of each need."""
        return [
            {"how": self[f"how_{one.need.pk}"], "amount": self[f"amount_{one.need.pk}"]}
            for one in self.unsaid
        ]

    def clean(self) -> dict[str, Any]:
        """Read each amount in its product's dimension."""
        given: dict[str, Any] = super().clean() or {}
        self.said = [said for one in self.unsaid if (said := self._said(one, given))]
        return given

    def _said(self, one: queries.Unsaid, given: dict[str, Any]) -> Said | None:
        name = f"amount_{one.need.pk}"
        how = given.get(f"how_{one.need.pk}") or ("amount" if given.get(name) else "")
        if how == "not":
            return Said(one.need, None, left=one.left)
        if how == "planned":
            return Said(one.need, one.left, left=one.left)
        if how != "amount":
            self.add_error(
                f"how_{one.need.pk}", "Say what became of it: as planned, another amount, or not done."
            )
            return None
        try:
            base = parse_amount(
                str(given.get(name) or ""), dimension=one.dimension, system=self.shop.system,
                decimal=self.shop.decimal_mark or None,
            ).base  # fmt: skip
        except AmountError as error:
            self.add_error(name, str(error))
            return None
        return Said(one.need, base, measured=True, left=one.left)
