"""Taking in a data sheet: the sheet, its versions, the rows of its section 3."""

from safety.forms.composition import IngredientForm, IngredientRows
from safety.forms.files import LARGEST
from safety.forms.versions import SheetForm, VersionForm

__all__ = ["LARGEST", "IngredientForm", "IngredientRows", "SheetForm", "VersionForm"]
