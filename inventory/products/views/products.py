"""The product pages: the list, one product, and the owner's forms."""

from django.contrib import messages
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_GET

from inventory.access import member, owner, person_of, shop_of
from inventory.models import Kind, Pack, Product
from inventory.products import actions, queries
from inventory.products.forms import PackForm, ProductForm

FILTERS = (("", "All"), ("no_sheet", "No data sheet"), ("archived", "No longer used"))


@member
@require_GET
def products(request: HttpRequest) -> HttpResponse:
    """List the shop's products."""
    asked = {name: request.GET.get(name, "") for name in ("q", "kind", "only")}
    rows = queries.products(shop_of(request), asked["q"], asked["kind"], asked["only"])
    context = {"products": rows, "asked": asked, "filters": FILTERS, "kinds": Kind.choices}
    return render(request, "inventory/products/list.html", context)


@member
@require_GET
def product(request: HttpRequest, code: str) -> HttpResponse:
    """Show one product: its lives, its packs, its bottles, its sheet."""
    found = the_product(request, code)
    version = queries.version_of(found)
    unread = found.sheet is not None and version is None
    lacks = unread or (found.needs_sheet and found.sheet is None)
    context = {
        "product": found,
        "unread": unread,
        "untyped": version if version and not version.composition else None,
        "only_owners": queries.owners(found.shop) if lacks and not person_of(request).is_owner else "",
        "too_large": queries.too_large(found),
        "gives_off": queries.gives_off(found),
    }
    return render(request, "inventory/products/product.html", context)


def the_product(request: HttpRequest, code: str) -> Product:
    if (the_one := queries.product(shop_of(request), code.upper())) is None:
        raise Http404(f"No product here carries the code {code}.")
    return the_one


@owner
def new(request: HttpRequest) -> HttpResponse:
    """Make a product; a scan that was not known hands its GTIN on as `gtin`."""
    first = {name: request.GET[name] for name in ("name", "kind") if name in request.GET}
    form = ProductForm(request.POST or None, shop=shop_of(request), initial=first)
    if request.method == "POST" and form.is_valid():
        made = form.instance
        actions.keep_product(made)
        messages.success(request, f"{made.name} is known now. Give it the pack that you buy.")
        response = redirect("products:new_pack", made.code)
        if gtin := request.GET.get("gtin"):
            response["Location"] += f"?gtin={gtin}"
        return response
    return _form(request, form, "A new product", "Keep this product")


@owner
def edit(request: HttpRequest, code: str) -> HttpResponse:
    """Change a product; the use by of its bottles follows its lives at once."""
    found = the_product(request, code)
    form = ProductForm(request.POST or None, instance=found, shop=shop_of(request))
    if request.method == "POST" and form.is_valid():
        moved = actions.keep_product(found)
        dates = "1 use-by date" if moved == 1 else f"{moved} use-by dates"
        messages.success(request, f"Kept. {dates} moved with it." if moved else "Kept.")
        return redirect("products:product", found.code)
    return _form(request, form, f"Change {found.name}", "Keep the changes")


@owner
def new_pack(request: HttpRequest, code: str) -> HttpResponse:
    """Add a size that is bought."""
    found = the_product(request, code)
    return _pack(
        request,
        found,
        PackForm(request.POST or None, product=found, initial={"gtin": request.GET.get("gtin", "")}),
    )


@owner
def edit_pack(request: HttpRequest, code: str, pack: int) -> HttpResponse:
    """Change a size that is bought."""
    found = the_product(request, code)
    row = Pack.objects.filter(pk=pack, product=found).select_related("product__shop").first()
    if row is None:
        raise Http404("This product has no such pack.")
    return _pack(request, found, PackForm(request.POST or None, product=found, instance=row))


def _pack(request: HttpRequest, product: Product, form: PackForm) -> HttpResponse:
    if request.method == "POST" and form.is_valid():
        actions.keep_pack(form.instance)
        messages.success(request, "The pack is kept.")
        return redirect("products:product", product.code)
    return _form(request, form, f"A pack of {product.name}", "Keep this pack")


def _form(request: HttpRequest, form: ProductForm | PackForm, title: str, button: str) -> HttpResponse:
    context = {
        "form": form,
        "title": title,
        "button": button,
        "back": "products:list",
        "back_label": "Products",
    }
    return render(request, "inventory/parts/form_page.html", context)
