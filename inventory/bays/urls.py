"""Addresses of the bays."""

from django.urls import path

from inventory.bays import views

app_name = "bays"
urlpatterns = [
    path("", views.listed, name="list"),
    path("steps/<str:code>/", views.step, name="step"),
    path("<str:code>/", views.bay, name="bay"),
    path("<str:code>/read/", views.read, name="read"),
    path("<str:code>/air/", views.air, name="air"),
    path("<str:code>/sparks/<int:pk>/", views.spark, name="spark"),
]
