"""Plan files made by hand: every figure below was worked out on paper, none by the project.

The first shows the guide figures of a published example: with 38 mm and 130 mm from the kerf to
the edges of the base plate and a kerf of 2.4 mm, a keep size of 356 mm has the guide at 318 mm or
at 488.4 mm. All stock and prices are invented.
"""

from typing import Any

Json = dict[str, Any]

ROW_KEYS = (
    *("hold", "hold_size", "direction", "measure_from", "keep", "keep_code"),
    *("guide_left", "guide_right", "unusable", "free_code", "setting"),
)


def row(number: int, *figures: object) -> Json:
    return {"number": str(number), **dict(zip(ROW_KEYS, figures, strict=True))}


def cut(number: int, direction: str, band: tuple[float, ...], kerf: float) -> Json:
    return {
        "number": number,
        "direction": direction,
        "band": box(*band),
        "by": "home",
        "kerf": kerf,
    }


def box(x: float, y: float, length: float, width: float) -> Json:
    return {"x": x, "y": y, "length": length, "width": width}


def part(
    code: str,
    name: str,
    rect: tuple[float, ...],
    finished: tuple[float, float],
    *,
    turned: bool = False,
    grain: str = "any",
) -> Json:
    return {
        "code": code,
        "name": name,
        **box(*rect),
        "turned": turned,
        "grain": grain,
        "finished": list(finished),
    }


def line(code: str, finished: str, blank: str, thickness: str, status: str = "final") -> Json:
    return {
        "code": code,
        "finished": finished,
        "blank": blank,
        "thickness": thickness,
        "status": status,
    }


def trims(left: float, right: float, top: float, bottom: float) -> Json:
    return {"left": left, "right": right, "top": top, "bottom": bottom}


def sheet(number: int = 1, **given: object) -> Json:
    return {
        "number": number,
        "stock": "lime 18",
        "material": "lime plywood",
        "thickness": 18,
        "measured": None,
        "grain": "length",
        "price": 30.0,
        "trim": trims(0, 0, 0, 0),
        "offcuts": [],
        **given,
    }


def plan(*sheets: Json, unit: str = "mm", face: str = "back", kerf: float = 2.4) -> Json:
    price = sum(one["price"] for one in sheets)
    inches = unit == "in"
    return {
        "format": "setout plan",
        "version": 1,
        "fingerprint": "made by hand",
        "job": "Puppet theatre",
        "unit": unit,
        "marked_face": face,
        "saw": {
            "kerf": kerf,
            "base_left": 38.1 if inches else 38,
            "base_right": 130.175 if inches else 130,
            "guide_length": 2700,
            "lift_limit_kg": 20,
        },
        "cost": price,
        "bound": price,
        "minutes": 42.5,
        "sheets": list(sheets),
        "unplaced": [],
    }


def metric() -> Json:
    """Back face up, trims, a turned part, an oversize part, an offcut and waste."""
    return plan(
        sheet(
            measured=17.7,
            length=1000,
            width=500,
            trim=trims(10, 10, 10, 10),
            parts=[
                part("A1", "Wing", (10, 10, 562, 356), (562, 356), grain="length"),
                part("B1", "Flap", (574.4, 10, 300, 356), (356, 300), turned=True, grain="width"),
                part("C1", "Rail", (10, 368.4, 600, 100), (597, 97)),
            ],
            cuts=[
                cut(1, "rip", (0, 7.6, 1000, 2.4), 2.4),
                cut(2, "crosscut", (7.6, 10, 2.4, 490), 2.4),
                cut(3, "rip", (10, 366, 990, 2.4), 2.4),
                cut(4, "crosscut", (572, 10, 2.4, 356), 2.4),
                cut(5, "crosscut", (874.4, 10, 2.4, 356), 2.4),
                cut(6, "crosscut", (610, 368.4, 2.4, 131.6), 2.4),
                cut(7, "rip", (10, 468.4, 600, 2.4), 2.4),
            ],
            offcuts=[{"code": "L1", **box(10, 470.8, 600, 29.2)}],
            printed={
                "size": "1000 × 500",
                "trims": "left 10, right 10, top 10, bottom 10",
                "rows": _metric_rows(),
                "parts": [
                    line("A1", "562 × 356", "562 × 356", "17.7"),
                    line("B1", "356 × 300", "356 × 300", "17.7"),
                    line("C1", "597 × 97", "600 × 100", "17.7", "oversize"),
                ],
                "offcuts": [{"code": "L1", "size": "600 × 29.2"}],
                "sums": [
                    {"piece": "P2", "text": "490 = 356 + 2.4 + 131.6 left"},
                    {"piece": "P3", "text": "990 = 562 + 2.4 + 300 + 2.4 + 123.2 left"},
                    {"piece": "P4", "text": "990 = 600 + 2.4 + 387.6 left"},
                ],
            },
        )
    )


def _metric_rows() -> list[Json]:
    top, left = ("rip", "top edge"), ("crosscut", "left edge")
    trim = ("-30.4", "140", "left", "WASTE")
    return [
        row(1, "S1", "1000 × 500", *top, "trim 10", "P1", *trim, 1),
        row(2, "P1", "1000 × 490", *left, "trim 10", "P2", *trim, 2),
        row(3, "P2", "990 × 490", *top, "356", "P3", "318", "488.4", "", "P4", 3),
        row(4, "P3", "990 × 356", *left, "562", "A1", "524", "694.4", "", "P5", 4),
        row(5, "P5", "425.6 × 356", *left, "300", "B1", "262", "432.4", "right", "WASTE", 5),
        row(6, "P4", "990 × 131.6", *left, "600", "P6", "562", "732.4", "", "WASTE", 6),
        row(7, "P6", "600 × 131.6", *top, "100", "C1", "62", "232.4", "right", "L1", 7),
    ]


def inches() -> Json:
    """Front face up, fractions, and a last cut that runs off the piece: 1/16 in is removed."""
    low, left = ("rip", "bottom edge"), ("crosscut", "left edge")
    return plan(
        sheet(
            length=1219.2,
            width=609.6,
            thickness=19.05,
            parts=[
                part("A1", "Side", (0, 0, 358.775, 266.7), (358.775, 266.7), grain="length"),
                part("A2", "Floor", (0, 269.875, 358.775, 338.1375), (358.775, 338.1375)),
            ],
            cuts=[
                cut(1, "crosscut", (358.775, 0, 3.175, 609.6), 3.175),
                cut(2, "rip", (0, 266.7, 358.775, 3.175), 3.175),
                cut(3, "rip", (0, 608.0125, 358.775, 1.5875), 3.175),
            ],
            offcuts=[{"code": "L1", **box(361.95, 0, 857.25, 609.6)}],
            printed={
                "size": "48 × 24",
                "trims": "left 0, right 0, top 0, bottom 0",
                "rows": [
                    row(1, "S1", "48 × 24", *left, "14 1/8", "P1", "12 5/8", "19 3/8", "", "L1", 1),
                    row(2, "P1", "14 1/8 × 24", *low, "10 1/2", "A1", "9", "15 3/4", "", "P2", 2),
                    row(
                        3,
                        "P2",
                        "14 1/8 × 13 3/8",
                        *low,
                        "13 5/16",
                        "A2",
                        "11 13/16",
                        "18 9/16",
                        "right",
                        "",
                        3,
                    ),
                ],
                "parts": [
                    line("A1", "14 1/8 × 10 1/2", "14 1/8 × 10 1/2", "3/4"),
                    line("A2", "14 1/8 × 13 5/16", "14 1/8 × 13 5/16", "3/4"),
                ],
                "offcuts": [{"code": "L1", "size": "33 3/4 × 24"}],
                "sums": [{"piece": "P1", "text": "24 = 10 1/2 + 1/8 + 13 5/16 + 1/16"}],
            },
        ),
        unit="in",
        face="front",
        kerf=3.175,
    )


def thin_trim() -> Json:
    """A trim of 2 under a kerf of 3, the trimmed sheet itself the part; a second sheet uncut."""
    bare = {"length": 400, "width": 300}
    trimmed = sheet(
        **bare,
        trim=trims(0, 0, 0, 2),
        parts=[part("A1", "Lid", (0, 2, 400, 298), (400, 298))],
        cuts=[cut(1, "rip", (0, 0, 400, 2), 3)],
        printed={
            "size": "400 × 300",
            "trims": "left 0, right 0, top 2, bottom 0",
            "rows": [
                row(
                    1,
                    *("S1", "400 × 300", "rip", "top edge", "trim 2", "A1"),
                    *("-39", "132", "left", "", 1),
                )
            ],
            "parts": [line("A1", "400 × 298", "400 × 298", "18")],
            "offcuts": [],
            "sums": [],
        },
    )
    uncut = sheet(
        2,
        **bare,
        stock="lime 18, small",
        parts=[part("A2", "Tray", (0, 0, 400, 300), (400, 300))],
        cuts=[],
        printed={
            "size": "400 × 300",
            "trims": "left 0, right 0, top 0, bottom 0",
            "rows": [],
            "parts": [line("A2", "400 × 300", "400 × 300", "18")],
            "offcuts": [],
            "sums": [],
        },
    )
    return plan(trimmed, uncut, kerf=3)


def no_kerf() -> Json:
    """A kerf of 0 is legal: three parts of 100 come out of 300. One setting serves two cuts."""
    left = ("crosscut", "left edge")
    return plan(
        sheet(
            length=300,
            width=200,
            grain="none",
            price=0,
            parts=[
                part("A1", "Tile", (0, 0, 100, 200), (100, 200)),
                part("A2", "Tile", (100, 0, 100, 200), (200, 100), turned=True),
                part("A3", "Tile", (200, 0, 100, 200), (100, 200)),
            ],
            cuts=[
                cut(1, "crosscut", (100, 0, 0, 200), 0),
                cut(2, "crosscut", (200, 0, 0, 200), 0),
            ],
            printed={
                "size": "300 × 200",
                "trims": "left 0, right 0, top 0, bottom 0",
                "rows": [
                    row(1, "S1", "300 × 200", *left, "100", "A1", "62", "230", "", "P1", 1),
                    row(2, "P1", "200 × 200", *left, "100", "A2", "62", "230", "right", "A3", 1),
                ],
                "parts": [
                    line("A1", "100 × 200", "100 × 200", "18"),
                    line("A2", "200 × 100", "200 × 100", "18"),
                    line("A3", "100 × 200", "100 × 200", "18"),
                ],
                "offcuts": [],
                "sums": [{"piece": "S1", "text": "300 = 100 + 0 + 100 + 0 + 100 left"}],
            },
        ),
        kerf=0,
    )


SAMPLES = {
    "metric": metric,
    "inches": inches,
    "thin trim": thin_trim,
    "no kerf": no_kerf,
}
