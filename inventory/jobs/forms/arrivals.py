"""What a car arrives with, as it is typed: old wax, sealant, an old coating."""

from datetime import date
from typing import Any, cast

from django import forms

from inventory.jobs.actions.panels import Arriving
from inventory.jobs.queries import panels as queries
from inventory.jobs.queries import products
from inventory.jobs.rules.arrivals import CAR, at_odds
from inventory.models import Job, Panel, Product
from inventory.trade.residues import NOTHING

from .fields import DayField, choose

EMPTY_ROWS = 2


class ArrivalForm(forms.Form):
    """One thing that the car arrives with; an empty row says nothing."""

    residue = forms.ChoiceField(label="Arrives with", required=False)
    panel = forms.ModelChoiceField(
        queryset=Panel.objects.none(), label="On", required=False, empty_label="the whole car"
    )
    since_on = DayField(label="Since", required=False)
    product = forms.ModelChoiceField(
        queryset=Product.objects.none(), label="Product", required=False, empty_label="not known"
    )

    def __init__(self, *args: Any, job: Job, today: date, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.today = today
        residue = cast(forms.ChoiceField, self.fields["residue"])
        residue.choices = [("", "not said"), *queries.residue_words().items()]
        choose(self.fields["panel"], queries.panels(job))
        choose(self.fields["product"], products(job.shop))

    def clean_since_on(self) -> date | None:
        """Refuse a day that is still to come."""
        since: date | None = self.cleaned_data["since_on"]
        if since and since > self.today:
            raise forms.ValidationError("This day is still to come. Give the day since when it is there.")
        return since

    def clean(self) -> dict[str, Any]:
        """A day or a product without its residue says nothing."""
        given: dict[str, Any] = super().clean() or {}
        said = any(given.get(name) for name in ("panel", "since_on", "product"))
        if said and not given.get("residue") and "residue" not in self.errors:
            self.add_error("residue", "Say what this is about, or empty the row.")
        if given.get("residue") == NOTHING and (given.get("since_on") or given.get("product")):
            self.add_error("residue", "Nothing has no day and no product. Empty both, or say what is there.")
        return given

    def said(self) -> Arriving | None:
        """Return the row, None where it says nothing."""
        given = self.cleaned_data
        if not given.get("residue"):
            return None
        return Arriving(given["residue"], given.get("panel"), given.get("since_on"), given.get("product"))


def _where(one: Arriving) -> str:
    return one.panel.name if one.panel else CAR


class ArrivalRows(forms.BaseFormSet):  # type: ignore[type-arg]
    """What a car arrives with, a row each."""

    def clean(self) -> None:
        """Refuse the same thing on the same panel twice, and nothing where something is."""
        seen = set()
        for form in self.forms:
            if (one := form.said()) is None:
                continue
            if (key := (one.residue, one.panel)) in seen:
                form.add_error("residue", "This is said above already. Empty one of the two rows.")
            seen.add(key)
        self._refuse_at_odds()

    def _refuse_at_odds(self) -> None:
        """Say at each row that finds nothing what another row says of the same panel."""
        said = [(form, one) for form in self.forms if (one := form.said())]
        odd = at_odds((one.residue, _where(one)) for _, one in said)
        for form, one in said:
            if one.residue == NOTHING and (says := odd.get(_where(one))):
                form.add_error("residue", says)

    def said(self) -> list[Arriving]:
        """Return the rows that say something."""
        return [one for form in self.forms if (one := form.said())]


def arrival_rows(job: Job, today: date, data: Any = None) -> ArrivalRows:
    """Return the rows of what a car arrives with, with empty ones behind them."""
    made = forms.formset_factory(ArrivalForm, formset=ArrivalRows, extra=EMPTY_ROWS, max_num=60)
    zone = job.shop.zone
    initial = [
        {
            "residue": row.residue,
            "panel": row.panel,
            "since_on": row.since_at.astimezone(zone).date() if row.since_at else None,
            "product": row.product,
        }
        for row in queries.arrivals(job)
    ]
    return cast(
        ArrivalRows, made(data, initial=initial, form_kwargs={"job": job, "today": today}, prefix="arrivals")
    )
