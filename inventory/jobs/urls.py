"""Addresses of the jobs."""

from django.urls import path

from inventory.jobs.views import closing, jobs, panels, services, steps

app_name = "jobs"
urlpatterns = [
    path("", jobs.listed, name="list"),
    path("book/", jobs.book, name="book"),
    path("services/", services.services, name="services"),
    path("services/new/", services.new, name="new_service"),
    path("services/<int:pk>/", services.service, name="service"),
    path("services/<int:pk>/steps/new/", services.step, name="new_service_step"),
    path("services/<int:pk>/steps/<int:step>/", services.step, name="service_step"),
    path("services/<int:pk>/steps/<int:step>/remove/", services.remove_step, name="remove_service_step"),
    path("services/<int:pk>/archive/", services.archive, name="archive_service"),
    path("<str:code>/", jobs.job, name="job"),
    path("<str:code>/edit/", jobs.edit, name="edit"),
    path("<str:code>/move/", jobs.move, name="move"),
    path("<str:code>/cancel/", jobs.cancel, name="cancel"),
    path("<str:code>/again/", jobs.book_again, name="book_again"),
    path("<str:code>/close/", closing.close, name="close"),
    path("<str:code>/rinsed/<str:step>/", closing.sign_rinse, name="sign_rinse"),
    path("<str:code>/sign/<slug:stage>/", closing.sign, name="sign"),
    path("<str:code>/panels/", panels.panels, name="panels"),
    path("<str:code>/panels/usual/", panels.add_usual, name="usual_panels"),
    path("<str:code>/panels/edit/", panels.edit, name="edit_panels"),
    path("<str:code>/panels/readings/", panels.read, name="read_panels"),
    path("<str:code>/panels/readings/<int:pk>/undo/", panels.undo, name="undo_reading"),
    path("<str:code>/panels/arrivals/", panels.arrivals, name="arrivals"),
    path("<str:code>/steps/new/", steps.step, name="new_step"),
    path("<str:code>/steps/<str:step>/", steps.step, name="step"),
    path("<str:code>/steps/<str:step>/remove/", steps.remove_step, name="remove_step"),
]
