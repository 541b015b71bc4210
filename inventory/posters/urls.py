"""Addresses of posters and labels."""

from django.urls import path

from inventory.posters.views import codes, labels, papers, posters

app_name = "posters"
urlpatterns = [
    path("", posters.posters, name="list"),
    path("badges.pdf", codes.badges_pdf, name="badges_pdf"),
    path("cards.pdf", codes.cards_pdf, name="cards_pdf"),
    path("weather.pdf", codes.weather_pdf, name="weather_pdf"),
    path("labels/", labels.labels_pdf, name="labels_pdf"),
    path("labels/<str:code>/", labels.label_pdf, name="label_pdf"),
    path("chemicals/<slug:shop>/", papers.chemicals, name="chemicals"),
    path("chemicals/<slug:shop>/list.pdf", papers.chemicals_pdf, name="chemicals_pdf"),
    path("cards/<str:code>/", papers.card, name="card"),
    path("cards/<str:code>/card.pdf", papers.card_pdf, name="card_pdf"),
    path("<str:code>/", posters.place, name="place"),
    path("<str:code>/contents.pdf", papers.cabinet_pdf, name="cabinet_pdf"),
    path("<str:code>/print/", posters.print_, name="print"),
    path("<str:code>/sheets.pdf", posters.sheets_pdf, name="sheets_pdf"),
    path("<str:code>/admit/", posters.admit, name="admit"),
    path("<str:code>/withdraw/<str:product>/", posters.withdraw, name="withdraw"),
]
