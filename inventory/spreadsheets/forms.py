"""The upload: one file, and what is in it."""

from django import forms

from inventory.spreadsheets.resources import RESOURCES


class UploadForm(forms.Form):
    """A spreadsheet that somebody wants to bring in."""

    kind = forms.ChoiceField(
        label="What is in it", choices=[(slug, each.what) for slug, each in RESOURCES.items()]
    )
    file = forms.FileField(
        label="The file",
        help_text="A workbook (.xlsx) or text (.csv in UTF-8), at most 8 MB and 20 000 rows.",
    )
