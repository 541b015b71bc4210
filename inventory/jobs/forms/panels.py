"""A car's panels, and what the gauge read on them, as they are typed."""

from typing import Any, cast

from django import forms

from inventory.jobs.actions.panels import Read
from inventory.jobs.queries import panels as queries
from inventory.models import Job, Panel, Reading, Shop
from inventory.trade.surfaces import materials
from inventory.units import AmountError, parse_amount

from .fields import DayField, KeyField

THICKEST_UM = 5000
EMPTY_ROWS = 2


class PanelForm(forms.ModelForm):  # type: ignore[type-arg]
    """A panel: what it is made of and covered with."""

    surface = forms.ChoiceField(label="Surface", initial="clear_coat")
    since_on = DayField(label="Sprayed, wrapped or filmed on", required=False)
    baked = forms.NullBooleanField(label="A respray, and it was baked", required=False)
    remove = forms.BooleanField(label="Take it out", required=False)

    class Meta:
        model = Panel
        fields = ["name", "surface", "substrate", "since_on", "baked"]
        labels = {"name": "Panel", "substrate": "Made of"}
        help_texts = {"name": ""}

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        surface = cast(forms.ChoiceField, self.fields["surface"])
        surface.choices = [(key, one.name) for key, one in materials().items()]
        self.fields["baked"].widget.choices = [
            ("unknown", "not known"), ("true", "yes"), ("false", "no, air-dried"),
        ]  # fmt: skip
        if self.instance.pk is None:
            del self.fields["remove"]

    def first(self) -> list[forms.BoundField]:
        """Return what is asked of every panel."""
        return [self[name] for name in ("name", "surface", "substrate")]

    def more(self) -> list[forms.BoundField]:
        """Return what few panels need, which is folded."""
        return [self[name] for name in ("since_on", "baked", "remove") if name in self.fields]

    def more_said(self) -> bool:
        """Say whether something folded is said or to be put right."""
        told = self.instance.since_on is not None or self.instance.baked is not None
        return told or bool(set(self.errors) & {"since_on", "baked", "remove"})

    def clean_name(self) -> str:
        """Return the name without spaces around it."""
        return str(self.cleaned_data["name"]).strip()


class PanelRows(forms.BaseModelFormSet):  # type: ignore[type-arg]
    """A row a panel; an empty row says nothing."""

    def clean(self) -> None:
        """Refuse two panels of one name."""
        seen: set[str] = set()
        for form in self.forms:
            name = (form.cleaned_data.get("name") or "").lower()
            if name and name in seen:
                form.add_error("name", f"“{name}” is there already. Give this one another name.")
            seen.add(name)

    def validate_unique(self) -> None:
        """Names are compared above, with those they change places with."""

    def kept(self) -> list[Panel]:
        """Return the panels as they were typed."""
        return [form.save(commit=False) for form in self.forms if self._says(form) and not self._gone(form)]

    def removed(self) -> list[Panel]:
        """Return the panels that are to go."""
        return [form.instance for form in self.forms if self._gone(form)]

    def _says(self, form: forms.ModelForm) -> bool:  # type: ignore[type-arg]
        return bool(form.instance.pk or form.cleaned_data.get("name"))

    def _gone(self, form: forms.ModelForm) -> bool:  # type: ignore[type-arg]
        return bool(form.instance.pk and form.cleaned_data.get("remove"))


def panel_rows(job: Job, data: Any = None) -> PanelRows:
    """Return the rows of a car's panels, with empty ones behind them."""
    made = forms.modelformset_factory(Panel, form=PanelForm, formset=PanelRows, extra=EMPTY_ROWS)
    return cast(PanelRows, made(data, queryset=queries.panels(job), prefix="panels"))


class ReadingsForm(forms.Form):
    """What the gauge said, panel by panel; one before or after, and one film, for the whole page."""

    key = KeyField()
    when = forms.ChoiceField(label="Read", choices=Reading.When.choices, widget=forms.RadioSelect)
    film = forms.ChoiceField(
        label="The gauge reads", choices=Reading.Film.choices, widget=forms.RadioSelect, initial="whole"
    )

    def __init__(self, *args: Any, shop: Shop, panels: list[Panel], **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.shop, self.panels = shop, panels
        for panel in panels:
            self.fields[f"um_{panel.pk}"] = forms.CharField(
                label=panel.name.capitalize(), required=False, max_length=20,
                widget=forms.TextInput(attrs={"inputmode": "decimal", "autocomplete": "off"}),
            )  # fmt: skip
            self.fields[f"not_{panel.pk}"] = forms.BooleanField(
                label=f"{panel.name} not readable", required=False
            )

    def rows(self) -> list[dict[str, object]]:
        """Return each panel with its two fields."""
        return [
            {"panel": one, "um": self[f"um_{one.pk}"], "unreadable": self[f"not_{one.pk}"]}
            for one in self.panels
        ]

    def clean(self) -> dict[str, Any]:
        """Read each thickness in the shop's unit; a row left empty was not read."""
        given: dict[str, Any] = super().clean() or {}
        self.read = [read for one in self.panels if (read := self._read(one, given))]
        if not self.read and not self.errors:
            raise forms.ValidationError("Nothing was typed. Type at least one reading, or leave this page.")
        return given

    def _read(self, panel: Panel, given: dict[str, Any]) -> Read | None:
        name = f"um_{panel.pk}"
        text = str(given.get(name) or "").strip()
        if given.get(f"not_{panel.pk}"):
            if text:
                self.add_error(name, "It is readable or it is not. Empty one of the two.")
            return Read(panel.pk, None)
        if not text:
            return None
        try:
            return Read(panel.pk, self._um(text))
        except AmountError as error:
            self.add_error(name, str(error))
            return None

    def _um(self, text: str) -> int:
        said = text if text[-1].isalpha() else f"{text} {self.shop.film_unit}"
        um = parse_amount(said, dimension="length", decimal=self.shop.decimal_mark or None).base
        if not 1 <= um <= THICKEST_UM:
            raise AmountError(f"“{text}” is no thickness of paint. Type what the gauge shows.")
        return um
