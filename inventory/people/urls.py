"""Addresses of the people pages."""

from django.urls import path

from inventory.people.views import cans, first_day, protection, record, roster

app_name = "people"
urlpatterns = [
    path("", roster.people, name="list"),
    path("sign-in/", roster.login, name="login"),
    path("sign-out/", roster.logout, name="logout"),
    path("new/", roster.new, name="new"),
    path("first-day/", first_day.sheet, name="first_day"),
    path("first-day.pdf", first_day.sheet_pdf, name="first_day_pdf"),
    path("protection/", protection.home, name="protection"),
    path("protection/new/", protection.new, name="new_equipment"),
    path("protection/ran/<str:code>/", protection.ran, name="ran"),
    path("protection/cans/", cans.home, name="cans"),
    path("protection/cans/<str:code>/rags/", cans.rags, name="rags"),
    path("protection/cans/<str:code>/emptied/", cans.emptied, name="emptied"),
    path("protection/<str:code>/", protection.edit, name="equipment"),
    path("protection/<str:code>/forget/", protection.forget, name="forget_equipment"),
    path("protection/<str:code>/minutes/", protection.minutes, name="minutes"),
    path("<str:code>/", record.person, name="person"),
    path("<str:code>/edit/", roster.edit, name="edit"),
    path("<str:code>/remove-name/", roster.remove_name, name="remove_name"),
    path("<str:code>/training/", record.training, name="training"),
    path("<str:code>/evaluation/", record.evaluation, name="evaluation"),
    path("<str:code>/fit-test/", record.fit_test, name="fit_test"),
    path("<str:code>/face/", record.face, name="face"),
    path("<str:code>/first-day/sign/", first_day.sign, name="sign_first_day"),
]
