"""What is accepted as a data sheet's file: a real parse, not a name."""

from __future__ import annotations

import re
from typing import Any

from django.core.exceptions import ValidationError
from django.core.files.uploadedfile import UploadedFile

from safety.pdf_pages import Unreadable, pages_in

LARGEST = 20 * 1024 * 1024


def check_pdf(file: UploadedFile[Any]) -> None:
    """Raise ValidationError unless it is a whole PDF of a bearable size that opens, whatever its name."""
    if (file.size or 0) > LARGEST:
        raise ValidationError(f"The file has {(file.size or 0) / 1e6:.0f} MB; a sheet may have 20 MB.")
    file.seek(0)
    data = file.read()
    file.seek(0)
    if not data.startswith(b"%PDF-"):
        raise ValidationError("This is not a PDF. Ask the supplier for the sheet as PDF, or print it to one.")
    starts = re.findall(rb"startxref\s+(\d+)\s+%%EOF", data[-2048:])
    if not starts:
        raise ValidationError("This PDF has no end: it was cut short. Download it again.")
    table = data[int(starts[-1]) :][:40].lstrip()
    if not (table.startswith(b"xref") or re.match(rb"\d+\s+\d+\s+obj", table)):
        raise ValidationError("This PDF is damaged: its table of contents is not where it says.")
    try:
        pages_in(data)
    except Unreadable as refusal:
        raise ValidationError(refusal.says) from refusal
