"""Addresses of the check."""

from django.urls import path

from inventory.precheck import views

app_name = "precheck"
urlpatterns = [
    path("<str:code>/", views.job, name="job"),
    path("<str:code>/sign/", views.sign, name="sign"),
    path("<str:code>/answer/<slug:finding>/", views.answer, name="answer"),
]
