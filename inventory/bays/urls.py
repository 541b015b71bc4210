"""Addresses of the bays."""

from django.urls import path

from inventory.bays.views import air, measured

app_name = "bays"
urlpatterns = [
    path("", air.listed, name="list"),
    path("steps/<str:code>/", air.step, name="step"),
    path("<str:code>/", air.bay, name="bay"),
    path("<str:code>/read/", air.read, name="read"),
    path("<str:code>/air/", air.air, name="air"),
    path("<str:code>/sparks/<int:pk>/", air.spark, name="spark"),
    path("<str:code>/exhaust/", measured.exhaust, name="exhaust"),
    path("<str:code>/exhaust/<int:pk>/end/", measured.end_exhaust, name="end_exhaust"),
    path("<str:code>/measure/", measured.measure, name="measure"),
    path("<str:code>/measured/<int:pk>/", measured.measurement, name="measurement"),
    path("<str:code>/measured/<int:pk>/withdraw/", measured.withdraw, name="withdraw"),
]
