"""The forms of a bottle's page. They are for kindness; the ledger keeps the promises."""

from datetime import datetime

from django import forms
from django.http import QueryDict
from django.utils import timezone

from inventory.models import Container, Place, Shop
from inventory.precheck.queries import tipped_into
from inventory.shelf.queries import beside
from inventory.units import AmountError, parse_amount
from safety.findings import Finding

DAY = forms.DateInput(attrs={"type": "date"}, format="%Y-%m-%d")
REASONS = (
    "left open", "frozen", "overheated", "gelled", "dropped", "recalled", "something else",
)  # fmt: skip


class AmountField(forms.CharField):
    """An amount in any unit, cleaned to the base unit of a dimension."""

    def __init__(self, *, shop: Shop, dimension: str, **kwargs: object) -> None:
        self.shop, self.dimension = shop, dimension
        super().__init__(max_length=60, **kwargs)  # type: ignore[arg-type]

    def clean(self, value: object) -> int:
        """Return base units; what cannot be read is said as the grammar says it."""
        text = str(super().clean(value))
        try:
            mark = self.shop.decimal_mark or None
            return parse_amount(text, dimension=self.dimension, system=self.shop.system, decimal=mark).base
        except AmountError as error:
            raise forms.ValidationError(str(error)) from None


class CountForm(forms.Form):
    """What is in the bottle now."""

    def __init__(self, *args: object, shop: Shop, container: Container, **kwargs: object) -> None:
        super().__init__(*args, **kwargs)  # type: ignore[arg-type]
        dimension = container.product.dimension if container.product else "volume"
        self.fields["amount"] = AmountField(
            shop=shop,
            dimension=dimension,
            label="What it holds now",
            help_text="As you would say it: 120 ml, ½ l, 3 pieces.",
        )


class MeetingForm(forms.Form):
    """A form that brings a bottle to others: what must not meet there is refused, or asked once."""

    def meet(self, found: tuple[Finding, ...], all_the_same: str) -> None:
        """Raise what stops; ask about what asks, and offer the answer on the page."""
        if stops := [one for one in found if one.grade == "stop"]:
            raise forms.ValidationError([f"{one.says} {one.do}" for one in stops])
        asks = [one for one in found if one.grade == "ask"]
        known = self.data.getlist("known") if isinstance(self.data, QueryDict) else ()
        if open_ := [one for one in asks if one.code not in known]:
            self.fields["known"] = forms.MultipleChoiceField(
                choices=[(one.code, one.says) for one in asks], required=False,
                label=all_the_same, widget=forms.CheckboxSelectMultiple,
            )  # fmt: skip
            raise forms.ValidationError([f"{one.says} {one.do}" for one in open_])


class MoveForm(MeetingForm):
    """Where the bottle stands from now on."""

    def __init__(self, *args: object, shop: Shop, container: Container, **kwargs: object) -> None:
        super().__init__(*args, **kwargs)  # type: ignore[arg-type]
        self.container = container
        standing = Place.objects.filter(shop=shop).exclude(kind=Place.Kind.CAN).order_by("name")
        self.fields["place"] = forms.ModelChoiceField(standing, to_field_name="code", label="New place")

    def clean(self) -> dict[str, object]:
        """Refuse what must not stand there."""
        given: dict[str, object] = super().clean() or {}
        place = given.get("place")
        found = beside(self.container, place) if isinstance(place, Place) else ()
        self.meet(found, "Put it there all the same")
        # What was asked was answered a moment ago; what is only told says what to do, too.
        given["told"] = " ".join(f"{one.says} {one.do}" if one.grade == "tell" else one.says for one in found)
        return given


def why_it_goes(container: Container, at: datetime) -> str:
    """Return what the shop knows of why a bottle goes: why it is held, its date, nothing in it; or ""."""
    recalled = any(lot.recalled for lot in container.lots.all())
    if recalled and "recall" not in container.held:
        return f"recalled: {container.held}" if container.held else "recalled"
    if container.held:
        return container.held
    if container.use_by_at and container.use_by_at <= at:
        return "out of date"
    return "" if container.content else "empty"


class DiscardForm(MeetingForm):
    """Why the bottle leaves the shelf, and into which can what is left in it is tipped."""

    reason = forms.CharField(max_length=120, label="Why it goes")

    def __init__(self, *args: object, shop: Shop, container: Container, **kwargs: object) -> None:
        super().__init__(*args, **kwargs)  # type: ignore[arg-type]
        self.container = container
        self.initial["reason"] = why_it_goes(container, timezone.now())
        cans = Place.objects.filter(shop=shop, kind=Place.Kind.CAN).order_by("name")
        if container.content and cans:
            self.fields["can"] = forms.ModelChoiceField(
                cans, to_field_name="code", required=False, label="Tipped into",
                empty_label="no can: it leaves closed",
            )  # fmt: skip

    def clean(self) -> dict[str, object]:
        """Refuse what must never meet what is in the can."""
        given: dict[str, object] = super().clean() or {}
        can = given.get("can")
        found = tipped_into(can, self.container) if isinstance(can, Place) else ()
        self.meet(found, "Tip it in all the same")
        return given


class HoldForm(forms.Form):
    """Why nobody may use it."""

    reason = forms.ChoiceField(choices=[(reason, reason) for reason in REASONS], label="What happened to it")
    whole_lot = forms.BooleanField(required=False, label="The whole lot, later deliveries included")


class ReleaseForm(forms.Form):
    """Why it may be used again: an owner's word."""

    reason = forms.CharField(max_length=120, label="Why it may be used again")
    whole_lot = forms.BooleanField(required=False, label="The whole lot")


class CorrectForm(forms.Form):
    """What is really printed on the bottle: its lot and its dates."""

    number = forms.CharField(max_length=40, required=False, label="Lot", help_text="Empty: it was not given.")
    expires_on = forms.DateField(required=False, label="Use by, printed on it", widget=DAY)
    best_before_on = forms.DateField(required=False, label="Best before, printed on it", widget=DAY)
    made_on = forms.DateField(required=False, label="Made, printed on it", widget=DAY)


class RetestForm(forms.Form):
    """A test that gives a new date in place of the printed one: who, what, on what evidence."""

    test = forms.CharField(
        max_length=120, label="What was tested", help_text="A test panel, a spray-out, a viscosity …"
    )
    evidence = forms.CharField(max_length=120, label="What it showed, or where the record is")
    until = forms.DateField(label="Good until", widget=DAY)
