"""The fixed words of posters on screen, in the poster's language."""

from django import template

from safety.print.words import say

register = template.Library()


@register.simple_tag
def said(english: str, language: str, **filled: object) -> str:
    """Return fixed words of the table in a language, their blanks filled."""
    return say(english, language, **filled)
