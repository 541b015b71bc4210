"""The address of the first page."""

from django.urls import path

from inventory.today import views

app_name = "today"
urlpatterns = [path("", views.home, name="home")]
