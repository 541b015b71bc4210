"""Products and the packs they are bought in."""

from django.db import models
from django.db.models import Q

from .own_code import product_code
from .shop import Shop
from .supplier import Supplier


class Kind(models.TextChoices):
    """What a product is for; steps may ask for a kind instead of a product."""

    SHAMPOO = "shampoo", "shampoo"
    FOAM = "foam", "foam"
    ALKALINE = "alkaline", "alkaline cleaner"
    CLEANER = "cleaner", "all-purpose cleaner"
    WHEEL = "wheel", "wheel cleaner"
    ACID = "acid", "acid cleaner"
    IRON = "iron", "iron remover"
    TAR = "tar", "tar remover"
    CLAY = "clay", "clay"
    LUBRICANT = "lubricant", "clay lubricant"
    COMPOUND = "compound", "compound"
    POLISH = "polish", "polish"
    PAD = "pad", "pad"
    TOWEL = "towel", "towel"
    ABRASIVE = "abrasive", "abrasive paper"
    SOLVENT = "solvent", "panel wipe"
    COATING = "coating", "coating"
    TOPPER = "topper", "topper"
    WAX = "wax", "wax or sealant"
    DRESSING = "dressing", "dressing"
    GLASS = "glass", "glass cleaner"
    INTERIOR = "interior", "interior cleaner"
    TAPE = "tape", "masking tape"
    APPLICATOR = "applicator", "applicator"
    BOTTLE = "bottle", "refillable bottle"
    PROTECTIVE = "protective", "protective item"
    FIRST_AID = "first_aid", "first-aid item"
    SPILL = "spill", "spill or rescue item"
    OTHER = "other", "other"


# Products whose path to a car must be known (common practice, no source): scanned, never posted as planned.
TRACED_KINDS = frozenset({Kind.COATING, Kind.SOLVENT, Kind.ACID, Kind.IRON})
# Whose printed date stops whoever gave it: they stand between a person and harm.
GUARDING_KINDS = frozenset({Kind.PROTECTIVE, Kind.FIRST_AID, Kind.SPILL})


class LifeUnit(models.TextChoices):
    """Lives under a day are instants, the others end with a local day."""

    MINUTE = "minute", "minutes"
    DAY = "day", "days"
    MONTH = "month", "months"


class GivenBy(models.TextChoices):
    """Who says how long it lasts: the maker's word stops, an estimate asks."""

    MAKER = "maker", "the maker"
    SHOP = "shop", "this shop"
    DEFAULT = "default", "a default"


class Product(models.Model):
    """A make of something the shop keeps; what its lives, its sheet and its supplier are."""

    class Dimension(models.TextChoices):
        VOLUME = "volume", "by volume"
        MASS = "mass", "by weight"
        PIECES = "pieces", "by the piece"
        LENGTH = "length", "by length"

    class Keeping(models.TextChoices):
        EACH = "each", "every bottle has its code"
        SET = "set", "one code for a bag or set"
        BIN = "bin", "one code, a number only"

    shop = models.ForeignKey(Shop, models.PROTECT, related_name="products")
    code = models.CharField(max_length=8, unique=True, default=product_code)
    name = models.CharField(max_length=80)
    maker = models.CharField(max_length=80, blank=True)
    kind = models.CharField(max_length=12, choices=Kind)
    dimension = models.CharField(max_length=6, choices=Dimension)
    density_mg_per_l = models.PositiveBigIntegerField(null=True, blank=True)
    density_source = models.CharField(max_length=120, blank=True)
    noun = models.CharField(max_length=20, default="bottle", help_text="bottle, drum, box, bag, pad set …")
    keeping = models.CharField(max_length=4, choices=Keeping, default=Keeping.EACH)
    traced = models.BooleanField(default=False, help_text="scanned, never posted as planned")
    mixes_lots = models.BooleanField(default=False, help_text="one step may take it from several lots")
    dated = models.BooleanField(default=True, help_text="a date is asked for when it arrives")

    sealed_life = models.PositiveSmallIntegerField(null=True, blank=True)
    sealed_life_unit = models.CharField(max_length=6, choices=LifeUnit, default=LifeUnit.MONTH)
    sealed_life_by = models.CharField(max_length=7, choices=GivenBy, default=GivenBy.SHOP)
    open_life = models.PositiveSmallIntegerField(null=True, blank=True)
    open_life_unit = models.CharField(max_length=6, choices=LifeUnit, default=LifeUnit.DAY)
    open_life_by = models.CharField(max_length=7, choices=GivenBy, default=GivenBy.SHOP)
    mix_life = models.PositiveSmallIntegerField(null=True, blank=True)
    mix_life_unit = models.CharField(max_length=6, choices=LifeUnit, default=LifeUnit.DAY)
    mix_life_by = models.CharField(max_length=7, choices=GivenBy, default=GivenBy.SHOP)

    wear_uses = models.PositiveSmallIntegerField(null=True, blank=True, help_text="cars a pad or clay lasts")
    wear_minutes = models.PositiveIntegerField(null=True, blank=True)
    store_from_c = models.SmallIntegerField(null=True, blank=True)
    store_to_c = models.SmallIntegerField(null=True, blank=True)

    supplier = models.ForeignKey(Supplier, models.PROTECT, null=True, blank=True, related_name="products")
    lead_days = models.PositiveSmallIntegerField(null=True, blank=True, help_text="else the supplier's")
    sheet = models.ForeignKey(
        "safety.DataSheet", models.PROTECT, null=True, blank=True, related_name="+", db_index=True
    )
    needs_sheet = models.BooleanField(default=True)
    archived = models.BooleanField(default=False)

    class Meta:
        constraints = [
            models.UniqueConstraint("shop", "name", name="product_name_once_a_shop"),
            models.CheckConstraint(
                condition=Q(density_mg_per_l__isnull=True) | Q(density_mg_per_l__gt=0),
                name="density_positive",
            ),
            models.CheckConstraint(
                condition=Q(store_from_c__isnull=True)
                | Q(store_to_c__isnull=True)
                | Q(store_from_c__lt=models.F("store_to_c")),
                name="storage_window_in_order",
            ),
        ]

    def __str__(self) -> str:
        return self.name

    @property
    def density_in_mixes(self) -> float | None:
        """Its kg/l where parts are told by volume; None where nobody knows.

        Parts by weight are parts by volume of something as heavy as water.
        """
        if self.dimension == self.Dimension.MASS:
            return 1.0
        return self.density_mg_per_l / 1_000_000 if self.density_mg_per_l else None

    @property
    def guards_people(self) -> bool:
        """Protective, first-aid and rescue items: whatever date they carry stops."""
        return self.kind in GUARDING_KINDS


class Pack(models.Model):
    """A size that is bought, with its GTIN. A kit is one pack and several bottles (`parts`)."""

    class Vessel(models.TextChoices):
        UNKNOWN = "", "not said"
        PLASTIC = "plastic", "glass or plastic"
        METAL = "metal", "metal"
        SAFETY_CAN = "safety_can", "safety can"

    product = models.ForeignKey(Product, models.PROTECT, related_name="packs")
    name = models.CharField(max_length=40, blank=True)
    amount = models.PositiveBigIntegerField(help_text="content, in the base unit")
    gtin = models.CharField(max_length=14, blank=True, help_text="GTIN-14 with leading zeros")
    price_minor = models.PositiveBigIntegerField(null=True, blank=True)
    multiple = models.PositiveSmallIntegerField(default=1, help_text="ordered in cases of this many")
    per_case = models.PositiveSmallIntegerField(default=1, help_text="bottles that one scan brings")
    usual = models.BooleanField(default=True, help_text="what is reordered")
    vessel = models.CharField(max_length=10, choices=Vessel, default=Vessel.UNKNOWN, blank=True)

    class Meta:
        constraints = [
            models.CheckConstraint(condition=Q(amount__gt=0), name="pack_holds_something"),
            models.CheckConstraint(
                condition=Q(multiple__gt=0) & Q(per_case__gt=0), name="pack_counts_positive"
            ),
            models.CheckConstraint(
                condition=Q(gtin="") | Q(gtin__regex=r"^[0-9]{14}$"), name="pack_gtin_14_digits"
            ),
        ]

    def __str__(self) -> str:
        return f"{self.product}, {self.name or self.amount}"


class KitPart(models.Model):
    """A bottle that comes inside a kit beside the pack's own content."""

    pack = models.ForeignKey(Pack, models.CASCADE, related_name="parts")
    product = models.ForeignKey(Product, models.PROTECT, related_name="+")
    amount = models.PositiveBigIntegerField()

    class Meta:
        constraints = [models.CheckConstraint(condition=Q(amount__gt=0), name="kit_part_holds_something")]

    def __str__(self) -> str:
        return f"{self.product} in {self.pack}"
