"""An address as a code to scan."""

from __future__ import annotations

from markupsafe import Markup


def code(address: str) -> Markup:
    """An address as a code to scan (QR, ISO/IEC 18004), with the quiet zone of four modules it needs."""
    import segno

    modules = segno.make(address, error="m", micro=False)
    svg = modules.svg_inline(border=4, omitsize=True, dark="#000", light="#fff", svgclass="tb-code", lineclass=None)
    return Markup(svg.replace("<svg", Markup('<svg role="img" aria-label="{}"').format(f"Code for {address}"), 1))
