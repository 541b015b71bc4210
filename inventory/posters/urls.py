"""Addresses of posters and labels."""

from django.urls import path

from inventory.posters import views

app_name = "posters"
urlpatterns = [
    path("", views.posters, name="list"),
    path("badges.pdf", views.badges_pdf, name="badges_pdf"),
    path("cards.pdf", views.cards_pdf, name="cards_pdf"),
    path("labels/", views.labels_pdf, name="labels_pdf"),
    path("labels/<str:code>/", views.label_pdf, name="label_pdf"),
    path("<str:code>/", views.place, name="place"),
    path("<str:code>/print/", views.print_, name="print"),
    path("<str:code>/sheets.pdf", views.sheets_pdf, name="sheets_pdf"),
    path("<str:code>/admit/", views.admit, name="admit"),
    path("<str:code>/withdraw/<str:product>/", views.withdraw, name="withdraw"),
]
