"""Addresses of the check."""

from django.urls import path

from inventory.precheck import views

app_name = "precheck"
urlpatterns = [
    path("rules/", views.rules, name="rules"),
    path("rules/<str:rule>/", views.regrade, name="regrade"),
    path("<str:code>/", views.job, name="job"),
    path("<str:code>/sign/", views.sign, name="sign"),
    path("<str:code>/answer/<str:finding>/", views.answer, name="answer"),
]
