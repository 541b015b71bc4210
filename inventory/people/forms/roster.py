"""The forms about people: who, what role, how they sign in, and their PIN."""

from typing import Any

from django import forms
from django.contrib.auth.forms import AuthenticationForm
from django.contrib.auth.password_validation import validate_password
from django.utils import timezone

from inventory import throttle
from inventory.models import Person


class SignInForm(AuthenticationForm):
    """A name and a password, tried at a bearable pace."""

    def clean(self) -> dict[str, Any]:
        """Refuse a wrong password, and any password while the wait after wrong ones lasts."""
        account, given = self.cleaned_data.get("username"), self.cleaned_data.get("password")
        if not account or not given or self.request is None:
            return super().clean()
        tried_from = throttle.address_of(self.request)
        if seconds := throttle.claim(account, tried_from, timezone.now()):
            raise forms.ValidationError(throttle.says(seconds))
        cleaned = super().clean()
        throttle.forget(account, tried_from)
        return cleaned


def badge_only(person: Person) -> str:
    """Return what stands in the place of a sign-in name for somebody who only badges; never shown."""
    return f"badge-{person.code.lower()}"


class PersonForm(forms.ModelForm):  # type: ignore[type-arg]
    """Somebody who works here; a technician needs no password, the badge is enough at a station."""

    password = forms.CharField(
        required=False,
        widget=forms.PasswordInput,
        label="Password",
        help_text="Empty: they badge at a station only.",
    )
    pin = forms.CharField(
        required=False,
        widget=forms.PasswordInput,
        label="PIN",
        help_text="An owner's, 4 digits or more, for overrides.",
    )

    class Meta:
        model = Person
        fields = ["name", "username", "role", "password", "pin", "is_active"]
        labels = {"username": "Signs in as", "is_active": "Works here"}
        help_texts = {"username": "Empty: they badge at a station only, and sign in nowhere."}

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.fields["username"].required = False
        if self.instance.username == badge_only(self.instance):
            self.initial["username"] = ""

    def clean_username(self) -> str:
        """Return the name to sign in with; nobody else has the one that stands for a badge alone."""
        return str(self.cleaned_data["username"]) or badge_only(self.instance)

    def clean_password(self) -> str:
        """Return a password that is long enough, or nothing."""
        text = str(self.cleaned_data["password"])
        named = self.cleaned_data.get("username") != badge_only(self.instance)
        signs_in = self.instance.pk is not None and self.instance.has_usable_password()
        if not named and (text or signs_in):
            self.add_error("username", "Who has a password signs in with a name. Say which.")
        elif text:
            validate_password(text, self.instance)
        return text

    def clean_pin(self) -> str:
        """Return a PIN of digits, or nothing."""
        text = str(self.cleaned_data["pin"])
        if text and not (text.isascii() and text.isdigit() and 4 <= len(text) <= 12):
            raise forms.ValidationError("A PIN is 4 to 12 digits.")
        return text
