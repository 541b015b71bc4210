"""What a product reacts with, as its owner confirms it."""

from collections.abc import Iterable

from django import forms

from safety.reactions.groups import groups

WATER = (("", "as its groups say"), ("yes", "yes"), ("no", "no"))
SAID = {"yes": True, "no": False, "": None}
SAYS = {True: "yes", False: "no", None: ""}


class GroupsForm(forms.Form):
    """Groups to confirm: those that stand or are proposed come ticked, all others lie folded below."""

    def __init__(
        self, *args: object, ticked: Iterable[str], water_based: bool | None, **kwargs: object
    ) -> None:
        super().__init__(*args, **kwargs)  # type: ignore[arg-type]
        known = {key: f"{one.name} ({key})" for key, one in groups().items()}
        first = [key for key in known if key in set(ticked)]
        self.fields["groups"] = self._choice("Groups", [(key, known[key]) for key in first], first)
        others = [(key, said) for key, said in known.items() if key not in first]
        self.fields["more"] = self._choice("Other groups", others, [])
        self.fields["water_based"] = forms.ChoiceField(
            required=False, label="Water-based", choices=WATER, initial=SAYS[water_based]
        )

    def _choice(
        self, label: str, choices: list[tuple[str, str]], ticked: list[str]
    ) -> forms.MultipleChoiceField:
        field = forms.MultipleChoiceField(
            required=False, label=label, widget=forms.CheckboxSelectMultiple, initial=ticked,
            choices=[(key, one.name) for key, one in groups().items()],
        )  # fmt: skip
        # Either list takes any group: what was proposed may have changed since the page was opened.
        field.widget.choices = choices
        return field

    @property
    def chosen(self) -> list[str]:
        """Return the groups in the table's order."""
        ticked = {*self.cleaned_data["groups"], *self.cleaned_data["more"]}
        return [key for key in groups() if key in ticked]

    @property
    def water_based(self) -> bool | None:
        """Return whether it counts with water; None leaves it to the groups."""
        return SAID[self.cleaned_data["water_based"]]
