"""Scripts and styles made small say the same."""

from pathlib import Path

import pytest

from tinbook.plugin import squeeze as room


def test_scripts_and_styles_get_smaller_and_nothing_else_is_touched(tmp_path: Path) -> None:
    (tmp_path / "a.js").write_text("// said\nexport const  once = 1;\n", "utf-8")
    (tmp_path / "a.css").write_text("/* said */\na { color: var(--ink); }\n", "utf-8")
    (tmp_path / "a.png").write_bytes(b"\x89PNG\n")
    room.squeeze(tmp_path)
    assert (tmp_path / "a.js").read_text("utf-8").rstrip(";") == "export const once=1"
    assert (tmp_path / "a.css").read_text("utf-8") == "a{color:var(--ink)}"
    assert (tmp_path / "a.png").read_bytes() == b"\x89PNG\n"


def test_without_the_minifier_they_go_out_as_written(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "a.js").write_text("// said\n", "utf-8")
    monkeypatch.setattr(room, "minify", None)
    room.squeeze(tmp_path)
    assert (tmp_path / "a.js").read_text("utf-8") == "// said\n"


def test_a_page_loses_its_indents_and_says_the_same() -> None:
    page = "<body>\n\n   <p>One\n      <b>two</b> three</p>\n\t\n  <script>\n  say(1);\n  </script>\n</body>"
    assert room.tight(page) == "<body>\n<p>One\n<b>two</b> three</p>\n<script>\nsay(1);\n</script>\n</body>"
    typed = "<pre>\n  mix:\n\n    - eggs</pre>"
    assert room.tight(typed) == typed
