"""The rows about people and bays that a check asks for, each set in one query and only where it is asked."""

from collections import defaultdict
from collections.abc import Collection, Mapping
from datetime import datetime
from functools import cached_property

from django.db.models import Max, OuterRef, Q, Subquery

from inventory.models import (
    Container,
    Equipment,
    FirstDay,
    FitTest,
    MedicalEvaluation,
    Person,
    Place,
    PlaceCheck,
    Training,
)
from inventory.precheck.questions.topics.people import Fitted, Lasting, PersonFacts, Trained
from safety.models import SheetVersion

from .loading import Loading


class PeopleRows:
    """Rows of the people of the steps under check, and of their bays."""

    def __init__(
        self, loading: Loading, *, asked: bool, respirators: bool, served: Mapping[int, Equipment]
    ) -> None:
        self.loading, self.asked, self.respirators, self.served = loading, asked, respirators, served
        self.people = {row.person.pk: row.person for row in loading.step_rows if row.person}

    @cached_property
    def trainings(self) -> list[Training]:
        """All of the shop, so that a shop that writes none down is known."""
        rows = Training.objects.filter(person__shop=self.loading.shop).order_by("trained_on", "id")
        return list(rows) if self.asked else []

    @cached_property
    def evaluations(self) -> list[MedicalEvaluation]:
        rows = MedicalEvaluation.objects.filter(person__in=self.people).order_by("evaluated_on", "id")
        return list(rows) if self.respirators else []

    @cached_property
    def fit_tests(self) -> list[FitTest]:
        rows = FitTest.objects.filter(person__in=self.people).select_related("mask", "evaluation")
        return list(rows.order_by("tested_on", "id")) if self.respirators else []

    @cached_property
    def first_days(self) -> dict[int, datetime]:
        rows = FirstDay.objects.filter(person__in=self.people).values_list("person", "signed_at")
        return dict(rows) if self.asked else {}

    def runs(self, bays: Collection[int]) -> dict[int, datetime]:
        """Return by bay when its eyewash was last run."""
        rows = PlaceCheck.objects.filter(place__in=bays, what=PlaceCheck.What.EYEWASH)
        last = rows.order_by().values("place").annotate(last=Max("done_at"))
        return dict(last.values_list("place", "last"))

    def fluorides(self, bays: Collection[int]) -> dict[int, list[str]]:
        """Return by bay the names of what stands in it and holds a fluoride."""
        newest = SheetVersion.objects.filter(sheet=OuterRef("product__sheet")).order_by("-revision_on", "-id")
        here = Container.objects.filter(
            Q(place__in=bays) | Q(place__within__in=bays), state__in=["sealed", "open"], content__gt=0
        ).exclude(place__kind=Place.Kind.WASTE)
        holding = here.annotate(fluoride=Subquery(newest.values("holds_fluoride")[:1])).filter(fluoride=True)
        found: dict[int, list[str]] = defaultdict(list)
        for place, within, name in holding.order_by("product__name").values_list(
            "place", "place__within", "product__name"
        ):
            found[place if place in bays else within or 0].append(name)
        return found


def persons(rows: PeopleRows) -> dict[str, PersonFacts]:
    """Return the people of the steps by their codes."""
    return {row.code: _person(rows, row) for row in rows.people.values()}


def _person(rows: PeopleRows, row: Person) -> PersonFacts:
    return PersonFacts(
        code=row.code,
        name=row.name,
        owner=row.is_owner,
        face=row.face,
        trained=tuple(
            Trained(one.topic, Lasting(one.trained_on, one.until_on))
            for one in rows.trainings
            if one.person_id == row.pk
        ),
        evaluated=tuple(
            Lasting(one.evaluated_on, one.until_on) for one in rows.evaluations if one.person_id == row.pk
        ),
        fitted=tuple(_fitted(rows, one) for one in rows.fit_tests if one.person_id == row.pk),
        first_day=rows.first_days.get(row.pk),
    )


def _fitted(rows: PeopleRows, one: FitTest) -> Fitted:
    served = rows.served.get(one.mask_id)
    return Fitted(
        mask=one.mask.code,
        mask_name=one.mask.name,
        serves=served.serves if served else "",
        when=Lasting(one.tested_on, one.until_on),
        evaluated_on=one.evaluation.evaluated_on,
    )
