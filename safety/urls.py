"""Where the data sheets are."""

from django.urls import path

from safety import views

app_name = "safety"

urlpatterns = [
    path("", views.sheets, name="sheets"),
    path("new/", views.new_sheet, name="new_sheet"),
    path("pictograms/<str:code>.svg", views.pictogram, name="pictogram"),
    path("<int:pk>/", views.sheet, name="sheet"),
    path("<int:pk>/pdf/", views.sheet_pdf, name="sheet_pdf"),
    path("<int:pk>/new/", views.new_version, name="new_version"),
    path("<int:pk>/versions/<int:version>/section-3/", views.section_3, name="section_3"),
    path("<int:pk>/versions/<int:version>/confirm/", views.confirm, name="confirm"),
]
