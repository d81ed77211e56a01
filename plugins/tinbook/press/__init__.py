"""Sheets and templates as PDF, set by Typst: one wheel for every system, tagged (PDF/UA-1), in the book's typefaces."""

from tinbook.press.setting import sheet_pdf, templates_pdf

__all__ = ["sheet_pdf", "templates_pdf"]
