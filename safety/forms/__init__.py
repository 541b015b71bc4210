"""Taking in a data sheet: the sheet, its versions, the rows of its section 3."""

from safety.forms.composition import IngredientForm, IngredientRows
from safety.forms.versions import LARGEST, SheetForm, VersionForm

__all__ = ["LARGEST", "IngredientForm", "IngredientRows", "SheetForm", "VersionForm"]
