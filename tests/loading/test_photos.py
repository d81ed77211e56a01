"""Photos: upright, small, in the colours they had, and with nothing in the file but the photo."""

from __future__ import annotations

import struct
from collections.abc import Callable
from io import BytesIO

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image, ImageCms, PngImagePlugin
from tests.every import every, many

from tinbook.loading.files import Unfit
from tinbook.loading.photos import LARGEST_PX, QUALITY, SIZES_PX, read_photo
from tinbook.models import Copy

RED, GREEN, BLUE, WHITE = (200, 30, 30), (30, 150, 30), (30, 30, 200), (255, 255, 255)
PLACE = b"Heronsmouth quay, 51.2N"


def saved(image: Image.Image, kind: str = "JPEG", **more: object) -> bytes:
    out = BytesIO()
    image.save(out, kind, **more)
    return out.getvalue()


def corners(wide: int = 80, high: int = 40) -> Image.Image:
    """Red and green above, blue and white below."""
    image = Image.new("RGB", (wide, high))
    for number, colour in enumerate((RED, GREEN, BLUE, WHITE)):
        left, top = number % 2 * wide // 2, number // 2 * high // 2
        image.paste(colour, (left, top, left + wide // 2, top + high // 2))
    return image


def opened(copy: Copy) -> Image.Image:
    image = Image.open(BytesIO(copy.content))
    image.load()
    return image


def seen(copy: Copy) -> list[str]:
    """The colour in the middle of each quarter, by name."""
    image = opened(copy)
    found = []
    for number in range(4):
        at = (image.width * (1 + number % 2 * 2) // 4, image.height * (1 + number // 2 * 2) // 4)
        pixel = image.getpixel(at)
        assert isinstance(pixel, tuple)
        near = {
            sum(abs(a - b) for a, b in zip(pixel, colour, strict=True)): name
            for name, colour in {"red": RED, "green": GREEN, "blue": BLUE, "white": WHITE}.items()
        }
        assert min(near) < 60, pixel
        found.append(near[min(near)])
    return found


def segments(jpeg: bytes) -> list[str]:
    """The markers before the image data, by the layout of the file itself: JPEG, ITU-T T.81, annex B."""
    assert jpeg[:2] == b"\xff\xd8"
    found, at = [], 2
    while jpeg[at + 1] != 0xDA:
        assert jpeg[at] == 0xFF
        found.append(f"{jpeg[at + 1]:02X}")
        at += 2 + struct.unpack(">H", jpeg[at + 2 : at + 4])[0]
    return found


# Which side of the scene the first row and the first column of the file are: Exif 2.32 (CIPA DC-008), tag 274.
ORIENTATION = {
    1: ("top", "left"), 2: ("top", "right"), 3: ("bottom", "right"), 4: ("bottom", "left"),
    5: ("left", "top"), 6: ("right", "top"), 7: ("right", "bottom"), 8: ("left", "bottom"),
}  # fmt: skip


def held(scene: Image.Image, row: str, column: str) -> Image.Image:
    """The scene as the camera stores it, pixel by pixel by the table's own words."""
    turned = row in ("left", "right")
    stored = Image.new("RGB", (scene.height, scene.width) if turned else scene.size)
    for y in range(stored.height):
        for x in range(stored.width):
            far = {
                "top": lambda step: ("y", step), "bottom": lambda step: ("y", scene.height - 1 - step),
                "left": lambda step: ("x", step), "right": lambda step: ("x", scene.width - 1 - step),
            }  # fmt: skip
            at = dict((far[row](y), far[column](x)))
            pixel = scene.getpixel((at["x"], at["y"]))
            assert pixel is not None
            stored.putpixel((x, y), pixel)
    return stored


@every("number", ORIENTATION)
def test_a_photo_stands_as_the_camera_was_held(number: int) -> None:
    exif = Image.Exif()
    exif[274] = number
    photo = read_photo(saved(held(corners(), *ORIENTATION[number]), exif=exif, quality=95), "x.jpg", "x")
    assert (photo.width, photo.height) == (80, 40)
    assert seen(photo.copies[0]) == ["red", "green", "blue", "white"]


def tagged_jpeg() -> bytes:
    exif = Image.Exif()
    exif[0x010E], exif[0x013B] = PLACE.decode(), PLACE.decode()
    exif.get_ifd(0x8825).update({1: "N", 2: (51.0, 12.0, 0.0), 3: "W", 4: (4.0, 5.0, 0.0), 29: PLACE.decode()})
    xmp = b"<x:xmpmeta xmlns:x='adobe:ns:meta/'>" + PLACE + b"</x:xmpmeta>"
    return saved(corners(), exif=exif, comment=PLACE, xmp=xmp)


def tagged_png() -> bytes:
    info = PngImagePlugin.PngInfo()
    info.add_text("Location", PLACE.decode())
    info.add_itxt("XML:com.adobe.xmp", PLACE.decode())
    return saved(corners(), "PNG", pnginfo=info)


def tagged_webp() -> bytes:
    return saved(corners(), "WEBP", xmp=PLACE, exif=b"Exif\0\0" + PLACE, quality=95)


@pytest.mark.parametrize("made", [tagged_jpeg, tagged_png, tagged_webp])
def test_nothing_of_place_or_person_stays(made: Callable[[], bytes]) -> None:
    raw = made()
    assert PLACE in raw or PLACE.decode() in repr(Image.open(BytesIO(raw)).info)
    for copy in read_photo(raw, "x.jpg", "x").copies:
        assert PLACE not in copy.content
        # JFIF's own header, tables and frame; no Exif (E1), profile (E2), notes of programs (ED), comment (FE)
        assert set(segments(copy.content)) <= {"E0", "DB", "C0", "C2", "C4"}
        assert set(opened(copy).info) <= {"jfif", "jfif_version", "jfif_unit", "jfif_density", "progressive",
                                          "progression"}  # fmt: skip


def test_a_large_photo_has_two_copies_and_a_small_one_stays_as_it_is() -> None:
    large = read_photo(saved(corners(4000, 2000)), "x.jpg", "boats")
    assert [(copy.width, copy.height) for copy in large.copies] == [(1000, 500), (1600, 800)]
    assert (large.width, large.height) == (1600, 800)
    between = read_photo(saved(corners(600, 1200)), "x.jpg", "boats")
    assert [(copy.width, copy.height) for copy in between.copies] == [(500, 1000), (600, 1200)]
    (only,) = read_photo(saved(corners(300, 200)), "x.jpg", "boats").copies
    assert (only.width, only.height) == (300, 200)
    assert (SIZES_PX, QUALITY) == ((1000, 1600), 82)


def test_names_follow_the_content() -> None:
    raw = saved(corners(2000, 1000))
    one, two = read_photo(raw, "x.jpg", "boats"), read_photo(raw, "x.jpg", "boats")
    assert one == two
    names = [copy.name for copy in one.copies]
    assert len(set(names)) == 2
    assert all(name.startswith("boats.") and name.endswith(".jpg") for name in names)
    other = read_photo(saved(corners(2000, 1000).rotate(180)), "x.jpg", "boats")
    assert not {copy.name for copy in other.copies} & set(names)


def test_the_colours_stay_when_their_profile_goes() -> None:
    """A profile whose red and blue are changed over: a file of red shows blue."""
    profile = bytearray(ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes())
    red, blue = profile.index(b"rXYZ"), profile.index(b"bXYZ")
    profile[red : red + 4], profile[blue : blue + 4] = b"bXYZ", b"rXYZ"
    image = Image.new("RGB", (40, 40), (230, 0, 0))
    (copy,) = read_photo(saved(image, quality=95, icc_profile=bytes(profile)), "x.jpg", "x").copies
    pixel = opened(copy).getpixel((20, 20))
    assert isinstance(pixel, tuple)
    assert pixel[2] > 200 and pixel[0] < 40
    broken = read_photo(saved(image, icc_profile=b"no profile"), "x.jpg", "x").copies[0]
    plain = opened(broken).getpixel((20, 20))
    assert isinstance(plain, tuple)
    assert plain[0] > 200


def test_every_kind_of_pixel() -> None:
    scene = corners()
    see_through = scene.convert("RGBA")
    see_through.paste((0, 0, 0, 0), (40, 20, 80, 40))
    palette = scene.quantize(8)
    sixteen = Image.new("I;16", (80, 40), 40000)
    for raw in (saved(see_through, "PNG"), saved(palette, "PNG"), saved(scene.convert("CMYK"), quality=95),
                saved(scene, "WEBP", quality=95), saved(see_through, "WEBP", lossless=True)):  # fmt: skip
        assert seen(read_photo(raw, "x.png", "x").copies[0]) == ["red", "green", "blue", "white"]
    grey = opened(read_photo(saved(sixteen, "PNG"), "x.png", "x").copies[0]).convert("L").getpixel((40, 20))
    assert grey == pytest.approx(40000 / 65535 * 255, abs=3)
    for mode in ("L", "LA", "1"):
        read_photo(saved(scene.convert(mode), "PNG"), "x.png", "x")


def test_the_first_picture_of_a_moving_one() -> None:
    frames = [Image.new("RGB", (40, 40), colour) for colour in (RED, BLUE)]
    raw = saved(frames[0], "WEBP", save_all=True, append_images=frames[1:], quality=95)
    pixel = opened(read_photo(raw, "x.webp", "x").copies[0]).getpixel((20, 20))
    assert isinstance(pixel, tuple)
    assert pixel[0] > 150 and pixel[2] < 80


@pytest.mark.parametrize("side", [7800, 20_000])
def test_too_many_pixels_are_refused_before_they_are_unpacked(side: int) -> None:
    raw = saved(Image.new("1", (side, side)), "PNG")
    assert len(raw) < 100_000 and side * side > LARGEST_PX
    with pytest.raises(Unfit, match="more than 60 million pixels"):
        read_photo(raw, "x.png", "x")


@every(
    "raw",
    [b"", b"\xff\xd8\xff", b"not a photo", saved(corners())[:400], saved(corners(), "GIF"), saved(corners(), "BMP")],
)
def test_no_photo_or_half_a_photo(raw: bytes) -> None:
    with pytest.raises(Unfit, match="the photo is damaged, or not a photo at all") as found:
        read_photo(raw, "x.jpg", "x")
    assert found.value.hint


SOUND = [tagged_jpeg(), tagged_png(), tagged_webp()]


@many(150)
@given(raw=st.sampled_from(SOUND), at=st.integers(0, 5000), put=st.binary(min_size=1, max_size=40), cut=st.booleans())
def test_damaged_bytes_give_a_photo_or_a_problem(raw: bytes, at: int, put: bytes, cut: bool) -> None:
    at %= len(raw)
    hurt = raw[:at] + put + (b"" if cut else raw[at + len(put) :])
    try:
        photo = read_photo(hurt, "x.jpg", "x")
    except Unfit as fault:
        assert fault.message and fault.hint
    else:
        assert all(PLACE not in copy.content for copy in photo.copies)
