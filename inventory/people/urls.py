"""Addresses of the people pages."""

from django.urls import path

from inventory.people import views

app_name = "people"
urlpatterns = [
    path("", views.people, name="list"),
    path("sign-in/", views.login, name="login"),
    path("sign-out/", views.logout, name="logout"),
    path("new/", views.new, name="new"),
    path("<str:code>/edit/", views.edit, name="edit"),
    path("<str:code>/remove-name/", views.remove_name, name="remove_name"),
]
