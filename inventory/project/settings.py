"""Django's settings: the one place where the two packages are joined.

Everything a shop may want to change comes from the environment:
CAPDATE_DIR (where the data lives), DATABASE_URL, SECRET_KEY, ALLOWED_HOSTS, CSRF_TRUSTED_ORIGINS,
CAPDATE_LAN, CAPDATE_PROXIES, CAPDATE_HTTPS, DEBUG.
"""

import os
from pathlib import Path

import dj_database_url

BASE_DIR = Path(__file__).resolve().parent.parent.parent
DATA_DIR = Path(os.environ.get("CAPDATE_DIR", BASE_DIR / ".capdate"))


def listed(name: str, default: str = "") -> list[str]:
    """Return a comma-separated environment variable as a list without blanks."""
    return [part.strip() for part in os.environ.get(name, default).split(",") if part.strip()]


DEBUG = os.environ.get("DEBUG", "") == "1"
# Without a key of its own a shop gets one that lives beside its data (see `secret_key`).


def secret_key() -> str:
    """Return SECRET_KEY, else the key kept in the data folder, made at the first start."""
    if "SECRET_KEY" in os.environ:
        return os.environ["SECRET_KEY"]
    kept = DATA_DIR / "secret_key"
    if not kept.exists():
        from django.core.management.utils import get_random_secret_key

        DATA_DIR.mkdir(parents=True, exist_ok=True)
        kept.touch(mode=0o600)
        kept.write_text(get_random_secret_key())
    return kept.read_text()


SECRET_KEY = secret_key()
ALLOWED_HOSTS = listed("ALLOWED_HOSTS", "localhost,127.0.0.1,[::1]")
CSRF_TRUSTED_ORIGINS = listed("CSRF_TRUSTED_ORIGINS")

# Who reads sheets and posters without a login (CIDR), and whose forwarded addresses count.
LAN_NETWORKS = listed("CAPDATE_LAN", "127.0.0.0/8,::1/128,10.0.0.0/8,172.16.0.0/12,192.168.0.0/16")
TRUSTED_PROXIES = listed("CAPDATE_PROXIES")

INSTALLED_APPS = [
    "django.contrib.admin",
    "django.contrib.auth",
    "django.contrib.contenttypes",
    "django.contrib.sessions",
    "django.contrib.messages",
    "whitenoise.runserver_nostatic",
    "django.contrib.staticfiles",
    "import_export",
    "django_htmx",
    "csp",
    "safety",
    "inventory",
]

MIDDLEWARE = [
    "django.middleware.security.SecurityMiddleware",
    "whitenoise.middleware.WhiteNoiseMiddleware",
    "django.contrib.sessions.middleware.SessionMiddleware",
    "django.middleware.common.CommonMiddleware",
    "django.middleware.csrf.CsrfViewMiddleware",
    "django.contrib.auth.middleware.AuthenticationMiddleware",
    "django.contrib.messages.middleware.MessageMiddleware",
    "django.middleware.clickjacking.XFrameOptionsMiddleware",
    "django_htmx.middleware.HtmxMiddleware",
    "csp.middleware.CSPMiddleware",
    "inventory.project.middleware.shop_customs",
]

ROOT_URLCONF = "inventory.project.urls"
WSGI_APPLICATION = "inventory.project.wsgi.application"
ASGI_APPLICATION = "inventory.project.asgi.application"

TEMPLATES = [
    {
        "BACKEND": "django.template.backends.django.DjangoTemplates",
        "DIRS": [BASE_DIR / "templates"],
        "APP_DIRS": True,
        "OPTIONS": {
            "context_processors": [
                "django.template.context_processors.request",
                "django.contrib.auth.context_processors.auth",
                "django.contrib.messages.context_processors.messages",
            ],
        },
    },
]

SQLITE_OPTIONS = {
    # IMMEDIATE: four writers gave no "database is locked"; DEFERRED gave about 100 each.
    "transaction_mode": "IMMEDIATE",
    "timeout": 20,
    "init_command": "PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL; PRAGMA foreign_keys=ON;",
}


def database() -> dict[str, object]:
    """Return the one database: DATABASE_URL, else SQLite in the data folder."""
    if url := os.environ.get("DATABASE_URL"):
        config: dict[str, object] = dict(dj_database_url.parse(url, conn_max_age=60))
        if "sqlite" not in str(config["ENGINE"]):
            return config
    else:
        DATA_DIR.mkdir(parents=True, exist_ok=True)
        config = {"ENGINE": "django.db.backends.sqlite3", "NAME": DATA_DIR / "capdate.sqlite3"}
    # Tests run on a file as the shop does: an in-memory database has neither WAL nor a second writer.
    return config | {"OPTIONS": SQLITE_OPTIONS, "TEST": {"NAME": DATA_DIR / "test.sqlite3"}}


DATABASES = {"default": database()}
DEFAULT_AUTO_FIELD = "django.db.models.BigAutoField"

AUTH_USER_MODEL = "inventory.Person"
AUTH_PASSWORD_VALIDATORS = [{"NAME": "django.contrib.auth.password_validation.MinimumLengthValidator"}]
LOGIN_URL = "people:login"
LOGIN_REDIRECT_URL = "today:home"

LANGUAGE_CODE = "en-gb"
USE_I18N = True
USE_TZ = True
TIME_ZONE = "UTC"

STATIC_URL = "static/"
STATIC_ROOT = DATA_DIR / "static"
STATIC_ROOT.mkdir(parents=True, exist_ok=True)
WHITENOISE_USE_FINDERS = True
MEDIA_ROOT = DATA_DIR / "files"

# CAPDATE_HTTPS=1 says that browsers come by a proxy with TLS: then no cookie travels without it.
# An hour of HSTS, so that a shop that takes its proxy away again is not locked out of its own site for long.
HTTPS = os.environ.get("CAPDATE_HTTPS", "") == "1"
SESSION_COOKIE_SECURE = CSRF_COOKIE_SECURE = HTTPS
SECURE_HSTS_SECONDS = 3600 if HTTPS else 0
if HTTPS and TRUSTED_PROXIES:
    SECURE_PROXY_SSL_HEADER = ("HTTP_X_FORWARDED_PROTO", "https")
SESSION_COOKIE_HTTPONLY = True
SESSION_COOKIE_SAMESITE = "Lax"
SECURE_REFERRER_POLICY = "same-origin"
DATA_UPLOAD_MAX_MEMORY_SIZE = 12 * 1024 * 1024

CONTENT_SECURITY_POLICY = {
    "DIRECTIVES": {
        "default-src": ["'self'"],
        "img-src": ["'self'", "data:"],
        "object-src": ["'none'"],
        "frame-ancestors": ["'none'"],
        "base-uri": ["'self'"],
        "form-action": ["'self'"],
    }
}
