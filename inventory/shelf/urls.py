"""Addresses of the shelf."""

from django.urls import path

from inventory.shelf import views

app_name = "shelf"
urlpatterns = [
    path("", views.shelf, name="list"),
    path("understood/", views.understood, name="understood"),
    path("<str:code>/", views.bottle, name="container"),
    path("<str:code>/count/", views.count, name="count"),
    path("<str:code>/move/", views.move, name="move"),
    path("<str:code>/discard/", views.discard, name="discard"),
    path("<str:code>/hold/", views.hold, name="hold"),
    path("<str:code>/release/", views.release, name="release"),
    path("<str:code>/correct/", views.correct, name="correct"),
    path("<str:code>/retest/", views.retest, name="retest"),
    path("<str:code>/take-back/<int:seq>/", views.take_back, name="take_back"),
    path("<str:code>/washed/", views.washed, name="washed"),
    path("<str:code>/washed/undo/", views.undo_washed, name="undo_washed"),
]
