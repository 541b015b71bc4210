"""The admin's tables: an owner sees and edits one shop, whatever is asked for; orders are looked at only."""

from typing import Any

import pytest
from django.contrib import admin
from django.core.exceptions import PermissionDenied
from django.db.models import ForeignKey
from django.test import Client, RequestFactory
from django.urls import reverse

from inventory.admin import SHOP_AT
from inventory.models import Admission, Order, OrderLine, Person, Supplier
from tests.world import LITRE, ML, TODAY, World, bottle, larkmoor, pack, tidewall

pytestmark = pytest.mark.django_db
OURS = [model for model in admin.site._registry if model._meta.app_label == "inventory"]


@pytest.fixture
def here() -> World:
    return larkmoor()


@pytest.fixture
def there(here: World) -> World:
    world = larkmoor("hollow-lane")
    world.orlo.name = "Merrow Coatings"
    world.orlo.save()
    return world


def signed_in(person: Person) -> Client:
    client = Client()
    client.force_login(person)
    return client


def keeper(**facts: Any) -> Client:
    return signed_in(Person.objects.create_superuser("pia", "clear coat", name="Pia", **facts))


def test_an_owner_lists_no_row_of_another_shop(here: World, there: World) -> None:
    page = signed_in(here.ines).get(reverse("admin:inventory_supplier_changelist")).content.decode()
    assert "Orlo Supply" in page
    assert "Merrow Coatings" not in page


def test_the_ledgers_tables_show_no_row_of_another_shop(here: World, there: World) -> None:
    ours, theirs = (bottle(world, tidewall(world), 30 * ML) for world in (here, there))
    page = signed_in(here.ines).get(reverse("admin:inventory_container_changelist")).content.decode()
    assert ours.code in page.replace(" ", "")
    assert theirs.code not in page.replace(" ", "")
    address = reverse("admin:inventory_container_change", args=[theirs.pk])
    assert signed_in(here.ines).get(address).status_code == 302


def test_an_owner_changes_no_row_of_another_shop(here: World, there: World) -> None:
    address = reverse("admin:inventory_supplier_change", args=[there.orlo.pk])
    sent = {"shop": here.shop.pk, "name": "Taken", "lead_days": 1}
    assert signed_in(here.ines).get(address).status_code == 302
    assert signed_in(here.ines).post(address, sent).status_code == 302
    assert Supplier.objects.get(pk=there.orlo.pk).name == "Merrow Coatings"


def test_an_owner_gives_no_row_away_to_another_shop(here: World, there: World) -> None:
    address = reverse("admin:inventory_supplier_change", args=[here.orlo.pk])
    page = signed_in(here.ines).post(address, {"shop": there.shop.pk, "name": "Orlo", "lead_days": 1})
    assert "not one of the available choices" in page.content.decode()
    assert Supplier.objects.get(pk=here.orlo.pk).shop == here.shop


def test_nothing_of_another_shop_is_offered_or_taken(here: World, there: World) -> None:
    theirs = tidewall(there)
    address = reverse("admin:inventory_admission_add")
    page = signed_in(here.ines).get(address).content.decode()
    assert f'<option value="{here.bay_1.pk}">' in page
    assert f'<option value="{there.bay_1.pk}">' not in page
    sent = {"place": here.bay_1.pk, "product": theirs.pk, "admitted_on": "2026-11-25"}
    signed_in(here.ines).post(address, sent)
    assert not Admission.objects.exists()


def test_what_a_form_lets_through_is_refused_where_it_is_saved(here: World, there: World) -> None:
    request = RequestFactory().post("/")
    request.user = here.ines
    mixed = Admission(place=here.bay_1, product=tidewall(there), admitted_on=TODAY)
    with pytest.raises(PermissionDenied, match="That belongs to another shop"):
        admin.site._registry[Admission].save_model(request, mixed, form=None, change=False)
    own = Admission(place=here.bay_1, product=tidewall(here), admitted_on=TODAY)
    admin.site._registry[Admission].save_model(request, own, form=None, change=False)
    assert Admission.objects.get() == own


def test_an_owner_edits_the_own_shop(here: World) -> None:
    address = reverse("admin:inventory_supplier_change", args=[here.orlo.pk])
    form = signed_in(here.ines).get(address).context["adminform"].form
    sent = {name: "" if value is None else value for name, value in form.initial.items()}
    signed_in(here.ines).post(address, sent | {"name": "Orlo and Daughters"})
    assert Supplier.objects.get().name == "Orlo and Daughters"


@pytest.mark.parametrize("has_shop", [True, False])
def test_a_superuser_keeps_every_shop(here: World, there: World, has_shop: bool) -> None:
    client = keeper(shop=here.shop if has_shop else None)
    page = client.get(reverse("admin:inventory_supplier_changelist")).content.decode()
    assert "Orlo Supply" in page
    assert "Merrow Coatings" in page


def test_an_owner_without_a_shop_sees_nothing(here: World) -> None:
    nobody = Person.objects.create_user("nel", "clear coat", name="Nel", role=Person.Role.OWNER)
    page = signed_in(nobody).get(reverse("admin:inventory_supplier_changelist")).content.decode()
    assert "Orlo Supply" not in page


def test_a_technician_is_sent_away(here: World) -> None:
    address = reverse("admin:inventory_supplier_changelist")
    assert signed_in(here.tomas).get(address).status_code == 302


def test_the_admins_first_page_lists_what_is_edited_and_what_is_looked_at(here: World) -> None:
    page = signed_in(here.ines).get(reverse("admin:index")).content.decode()
    assert reverse("admin:inventory_supplier_changelist") in page
    assert reverse("admin:inventory_movement_changelist") in page
    assert reverse("admin:inventory_order_add") not in page


def test_orders_are_looked_at_and_never_written(here: World) -> None:
    order = Order.objects.create(shop=here.shop, supplier=here.orlo)
    line = OrderLine.objects.create(order=order, pack=pack(tidewall(here), LITRE), packs=2)
    client = keeper(shop=here.shop)
    for row in (order, line):
        name = row._meta.model_name
        address = reverse(f"admin:inventory_{name}_change", args=[row.pk])
        assert client.get(address).status_code == 200
        assert client.post(address, {"packs": 9, "state": "received"}).status_code == 403
        assert client.get(reverse(f"admin:inventory_{name}_add")).status_code == 403
        assert client.post(reverse(f"admin:inventory_{name}_delete", args=[row.pk])).status_code == 403


@pytest.mark.parametrize("model", OURS, ids=lambda model: model.__name__)
def test_every_table_opens_for_its_owner_and_knows_whose_its_rows_are(here: World, model: Any) -> None:
    named = [field.related_model for field in model._meta.fields if isinstance(field, ForeignKey)]
    assert {model, *named} <= set(SHOP_AT)
    address = reverse(f"admin:inventory_{model._meta.model_name}_changelist")
    assert signed_in(here.ines).get(address).status_code == 200
