"""What a person types about a finding."""

from typing import Any

from django import forms
from django.utils import timezone

from inventory import throttle
from inventory.models import Person, RuleGrade, Shop
from inventory.precheck.rules.catalogue import why_not


class AnswerForm(forms.Form):
    """An answer to an ask: what was seen or decided."""

    says = forms.CharField(widget=forms.HiddenInput)
    reason = forms.CharField(
        label="What you saw or decided",
        widget=forms.Textarea(attrs={"rows": 3}),
        max_length=400,
        help_text="It is kept with your name, and the question no longer holds up this job.",
    )


class OverrideForm(AnswerForm):
    """An owner's override: a reason, and the owner's own password or PIN."""

    owner = forms.ModelChoiceField(label="Owner", queryset=Person.objects.none(), to_field_name="code")
    secret = forms.CharField(label="Their password or PIN", widget=forms.PasswordInput, strip=False)

    def __init__(self, *args: object, shop: Shop, by: Person, **kwargs: object) -> None:
        super().__init__(*args, **kwargs)  # type: ignore[arg-type]
        self.by = by
        self.fields["reason"].label = "Why it is right on this car"
        self.fields["reason"].help_text = "It is kept with the owner's name and reported."
        owners = Person.objects.filter(shop=shop, role=Person.Role.OWNER, is_active=True).order_by("name")
        owner = self.fields["owner"]
        assert isinstance(owner, forms.ModelChoiceField)
        owner.queryset = owners

    def clean(self) -> dict[str, object]:
        """Refuse a secret that is not this owner's, and any secret while the wait after wrong ones lasts."""
        given: dict[str, object] = super().clean() or {}
        owner, secret = given.get("owner"), given.get("secret")
        if (
            isinstance(owner, Person)
            and isinstance(secret, str)
            and (refusal := self._refusal(owner, secret))
        ):
            self.add_error("secret", refusal)
        return given

    def _refusal(self, owner: Person, secret: str) -> str:
        # Counted by who is signed in, not by address: another device is not another four-digit guess.
        tried_from = self.by.code
        if seconds := throttle.claim(owner.username, tried_from, timezone.now()):
            return throttle.says(seconds)
        if not _knows(owner, secret):
            return "That is not this owner's password or PIN. Try again."
        throttle.forget(owner.username, tried_from)
        return ""


class RegradeForm(forms.Form):
    """An owner's grade for a rule, and why; a grade that the rule may not have is refused."""

    grade = forms.ChoiceField(
        label="Grade", choices=[*RuleGrade.Grade.choices], required=False, widget=forms.RadioSelect
    )
    reason = forms.CharField(
        label="Why", widget=forms.Textarea(attrs={"rows": 3}), max_length=400,
        help_text="It is kept with your name. Earlier grades stay to be read.",
    )  # fmt: skip

    def __init__(self, *args: Any, code: str, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.code = code

    def clean_grade(self) -> str:
        """Refuse a grade that this rule never has."""
        grade = str(self.cleaned_data["grade"])
        if refused := why_not(self.code, grade):
            raise forms.ValidationError(refused)
        return grade

    def in_words(self) -> str:
        """Return what the rule does from now on."""
        says = {"stop": "stops", "ask": "asks", "tell": "is a note"}
        return says.get(self.cleaned_data["grade"], "keeps the grade it comes with")


def _knows(owner: Person, secret: str) -> bool:
    # Each is a slow hash: what is no PIN by its shape is not tried as one.
    like_a_pin = secret.isascii() and secret.isdigit()
    return (like_a_pin and owner.check_pin(secret)) or owner.check_password(secret)
