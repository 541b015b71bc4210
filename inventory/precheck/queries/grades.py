"""What became of the check's rules: shown, passed by a word, and graded anew."""

from dataclasses import dataclass
from datetime import datetime

from inventory.models import Override, RuleGrade, Shop, Shown
from inventory.precheck.rules.catalogue import RULES, Rule, rule_of
from inventory.precheck.rules.rates import Rate, Seen
from inventory.precheck.rules.rates import rates as rates_of


@dataclass(frozen=True)
class RuleRow:
    """A rule's rate with its words, its last reasons, and the grade that an owner gave it."""

    rate: Rate
    rule: Rule | None
    reasons: tuple[str, ...]
    given: str


def rates(shop: Shop, since: datetime) -> list[RuleRow]:
    """Return the rules shown since an instant, those passed too often first."""
    shown = Shown.objects.filter(job__shop=shop, first_at__gte=since).exclude(grade="tell")
    passed = Override.objects.filter(job__shop=shop, given_at__gte=since).order_by("-given_at")
    rows = list(passed.values_list("code", "grade", "job_id", "about", "reason"))
    reasons: dict[tuple[str, str], list[str]] = {}
    for code, grade, _, _, reason in rows:
        reasons.setdefault((code, grade), []).append(reason)
    graded = given(shop)
    seen = [_seen(*row) for row in shown.values_list("code", "grade", "job_id", "about")]
    return [
        RuleRow(rate, rule_of(rate.code), tuple(reasons.get((rate.code, rate.grade), ())[:3]),
                graded.get(rate.code, ""))
        for rate in rates_of(seen, [_seen(*row[:4]) for row in rows])
    ]  # fmt: skip


def _seen(code: str, grade: str, job: int, about: str) -> Seen:
    return code, grade, f"{job} {about}"


def given(shop: Shop) -> dict[str, str]:
    """Return the grade that stands for each rule an owner graded."""
    rows = RuleGrade.objects.filter(shop=shop).order_by("given_at", "id")
    return dict(rows.values_list("code", "grade"))


def grade_of(shop: Shop, code: str) -> str:
    """Return the grade that an owner gave a rule, "" for as it comes."""
    return given(shop).get(code, "")


def regrades(shop: Shop) -> "list[tuple[RuleGrade, Rule | None]]":
    """Return every grade that was ever given, the newest first, with its rule."""
    rows = RuleGrade.objects.filter(shop=shop).select_related("by").order_by("-given_at", "-id")
    return [(row, rule_of(row.code)) for row in rows[:50]]


def never_shown(shop: Shop) -> list[Rule]:
    """Return the rules of which nothing was shown yet, so that they can be graded all the same."""
    codes = set(Shown.objects.filter(job__shop=shop).values_list("code", flat=True).distinct())
    return [rule for rule in RULES if not any(rule.covers(code) for code in codes)]
