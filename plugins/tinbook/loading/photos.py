"""Photos: turned upright, made small enough for screen and paper, and stripped of everything that cannot be seen in
them."""

from __future__ import annotations

import hashlib
import struct
import warnings
from io import BytesIO
from typing import TYPE_CHECKING

from tinbook.loading.files import Unfit
from tinbook.models import Copy, PictureFile

if TYPE_CHECKING:
    from PIL import Image

SIZES_PX = (1000, 1600)
"""The longer side on paper and on a screen, in px."""
QUALITY = 82
LARGEST_PX = 60_000_000
READ = ("JPEG", "PNG", "WEBP")
# What decoders raise for bytes that are damaged or not a picture at all.
DAMAGE = (OSError, ValueError, TypeError, SyntaxError, EOFError, IndexError, KeyError, struct.error, OverflowError)
SAVE_AGAIN = "open it in a picture program and save it again as .jpg"


def read_photo(raw: bytes, file: str, slug: str) -> PictureFile:
    """A photo as JPEG copies named by `slug`. Raises Unfit if it is not a picture, or has too many pixels."""
    from PIL import Image

    try:
        image = _upright(raw)
        wanted = SIZES_PX if max(image.size) > SIZES_PX[0] else SIZES_PX[:1]
        copies = tuple(_copy(image, most, slug) for most in wanted)
    except Image.DecompressionBombError:
        raise _too_large() from None
    except DAMAGE:
        raise Unfit("unreadable", "the photo is damaged, or not a photo at all", SAVE_AGAIN) from None
    return PictureFile(file=file, kind="photo", width=copies[-1].width, height=copies[-1].height, copies=copies)


def _too_large() -> Unfit:
    message = f"the photo has more than {LARGEST_PX // 1_000_000} million pixels"
    return Unfit("too large", message, "save it smaller: 2000 pixels wide is plenty")


def _upright(raw: bytes) -> Image.Image:
    """The photo as the camera was held, no larger than a screen needs, in plain RGB on white."""
    from PIL import Image, ImageOps

    with warnings.catch_warnings():
        # Our own limit is lower.
        warnings.simplefilter("ignore")
        image: Image.Image = Image.open(BytesIO(raw), formats=READ)
        if image.width * image.height > LARGEST_PX:
            raise _too_large()
        most = SIZES_PX[-1]
        # A JPEG is decoded at a fraction of its size where that is enough.
        image.draft("RGB", (most, most))
        profile = image.info.get("icc_profile")
        image.load()
        try:
            upright = ImageOps.exif_transpose(image)
        except DAMAGE:
            upright = image  # an unreadable tag says nothing about how the camera was held
    if upright.mode.startswith("I"):
        upright = upright.convert("I").point(lambda value: value / 256).convert("L")
    elif upright.mode not in ("L", "RGB", "CMYK"):
        upright = upright.convert("RGBA")
    upright.thumbnail((most, most), Image.Resampling.LANCZOS, reducing_gap=3.0)
    return _plain(upright, profile)


def _plain(image: Image.Image, profile: bytes | None) -> Image.Image:
    """On white and in sRGB, so that colours survive without their profile; a new image, which carries nothing over."""
    from PIL import Image, ImageCms

    plain = Image.new("RGB", image.size, "white")
    if image.mode == "RGBA":
        plain.paste(image, mask=image.getchannel("A"))
        image = plain
    if profile and image.mode != "L":
        try:
            source = ImageCms.ImageCmsProfile(BytesIO(profile))
            turned = ImageCms.profileToProfile(image, source, ImageCms.createProfile("sRGB"), outputMode="RGB")
            image = turned or image
        except (ImageCms.PyCMSError, OSError, ValueError):
            pass  # an unreadable profile is worth no more than none
    plain = Image.new("RGB", image.size)
    plain.paste(image.convert("RGB"))
    return plain


def _copy(image: Image.Image, most: int, slug: str) -> Copy:
    """The image with its longer side at most `most` px."""
    from PIL import Image

    small = image.copy()
    small.thumbnail((most, most), Image.Resampling.LANCZOS)
    out = BytesIO()
    small.save(out, "JPEG", quality=QUALITY, optimize=True, progressive=True)
    content = out.getvalue()
    digest = hashlib.sha256(content).hexdigest()[:10]
    return Copy(f"{slug}.{digest}.jpg", small.width, small.height, content)
