"""The car's page: what goes in, in which order and how, and whether the tailgate will shut."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from nesting.car import Car, Lie, WayIn, find_way_in, fits_turned
from nesting.cut_sequence import is_over_limit, piece_mass_kg
from nesting.job import Job
from nesting.layout import Place, RestLeaf
from nesting.lengths import Length
from plans.sections.codes import WASTE
from plans.sections.numbers import count_of, show, show_kg, show_size, show_with_unit
from plans.sections.worked import Worked, WorkedSheet
from plans.sections.yard import list_yard_pieces


@dataclass(frozen=True, slots=True, kw_only=True)
class CarPiece:
    """A piece to load.

    Attributes:
        number: Its place in the order of loading, from 1.
        load: The trip that it goes with, from 1.
        code: "P1"; "S2" for a sheet that is left whole.
        sheet: Number of the sheet it comes from.
        material: Material and thickness.
        length: The side that lies along the car.
        width: The side across.
        thickness: How thick it is.
        way: How it lies.
        size: "1016 × 1220", the side along the car first.
        mass: Its mass in kilograms.
        people: 1, or 2 where it is over the lift limit.
        lie: "flat on the floor" or another way.
        check: "1220 across, tilted: passes 1040 × 740, which leaves 10 free all round".
    """

    number: int
    load: int
    code: str
    sheet: int
    material: str
    length: Length
    width: Length
    thickness: Length
    way: Lie
    size: str
    mass: str
    people: int
    lie: str
    check: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CarPage:
    """Everything on the car's page.

    Attributes:
        pieces: In the order of loading.
        loads: How many trips.
        opening: "opening 1080 × 760 mm".
        sides: Width and height of the opening.
        side_texts: The same as printed: "1080", "760".
        room: What is free of it for the pieces, across between the arches and upwards.
        floor: "floor 1620 mm long, 1040 mm between the arches".
        clearance: "10 mm free on every side, taken off already".
        total: "5 pieces, 98.6 kg in all, 2 trips".
        left_behind: Pieces that nothing is cut from: leave them at the yard, or see whether they
            go in.
        does_not_fit: Sheets that do not go in, a sentence each.
        notes: What to look to before driving.
    """

    pieces: tuple[CarPiece, ...]
    loads: int
    opening: str
    sides: tuple[Length, Length]
    side_texts: tuple[str, str]
    room: tuple[Length, Length]
    floor: str
    clearance: str
    total: str
    left_behind: tuple[str, ...]
    does_not_fit: tuple[str, ...]
    notes: tuple[str, ...]


NOTES = (
    "Measure the opening before you pay: what decides is its narrowest place, not the floor.",
    "A piece may fit until the tailgate is shut. Close it slowly, and look at the glass.",
    "Tie every piece down, also a single one. Nothing loose, nothing beside or past the driver.",
    "Reaching over the end, loads on the roof: the local traffic law and the manuals decide.",
    "Carry the pieces flat into the house the same day; a sheet that leans against a wall bows.",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Loaded:
    """A piece with where it comes from and how it goes in."""

    sheet: WorkedSheet
    place: Place
    way: WayIn
    thickness: Length


def make_car_page(worked: Worked) -> CarPage | None:
    """Return the car's page; None where the job names no car or nothing is bought."""
    job = worked.job
    car = job.car
    bought = [sheet for sheet in worked.sheets if not sheet.sheet.owned]
    if car is None or not bought:
        return None
    loaded: list[_Loaded] = []
    outside: dict[str, str] = {}
    left: list[str] = []
    for sheet in bought:
        thickness = max(sheet.sheet.thickness, sheet.sheet.real_thickness)
        for place in list_yard_pieces(sheet):
            way = find_way_in(car, place.rect.length, place.rect.width, thickness)
            if sheet.codes[place.path] == WASTE and isinstance(place.node, RestLeaf):
                left.append(_say_left(job, sheet, place))
            elif way is None:
                outside.setdefault(sheet.sheet.name, _say_outside(job, sheet, place))
            else:
                loaded.append(_Loaded(sheet=sheet, place=place, way=way, thickness=thickness))
    loads = _fill_loads(car, sorted(loaded, key=_by_order))
    pieces = tuple(_pieces(job, car, loads))
    mass = sum((piece_mass_kg(one.sheet.sheet, one.place.rect) for one in loaded), Fraction(0))
    trips = f", {count_of(len(loads), 'trip')}" if len(loads) > 1 else ""
    return CarPage(
        pieces=pieces,
        loads=len(loads),
        opening=f"opening {show_size(car.opening_width, car.opening_height, job.unit)} "
        f"{job.unit.value}, wide × high",
        sides=(car.opening_width, car.opening_height),
        side_texts=(show(car.opening_width, job.unit), show(car.opening_height, job.unit)),
        room=(car.room_width, car.room_height),
        floor=f"floor {show_with_unit(car.floor_length, job.unit)} long, "
        f"{show_with_unit(car.arch_width, job.unit)} between the arches",
        clearance=f"{show_with_unit(car.clearance, job.unit)} kept free on every side of a piece",
        total=f"{count_of(len(pieces), 'piece')}, {show_kg(mass)} kg in all{trips}",
        left_behind=tuple(left),
        does_not_fit=tuple(outside.values()),
        notes=NOTES,
    )


def _by_order(one: _Loaded) -> tuple[bool, int, int, tuple[int, ...]]:
    """Order pieces for loading: flat ones first, the largest at the bottom."""
    rect = one.place.rect
    return (
        one.way.lie is not Lie.FLAT,
        -rect.length * rect.width,
        one.sheet.number,
        one.place.path,
    )


def _fill_loads(car: Car, pieces: list[_Loaded]) -> list[list[_Loaded]]:
    """Return the trips: each takes what goes in on top of or beside what lies there."""
    loads: list[list[_Loaded]] = []
    for piece in pieces:
        load = next((load for load in loads if _goes_in(car, [*load, piece])), None)
        if load is None:
            loads.append([piece])
        else:
            load.append(piece)
    return loads


def _goes_in(car: Car, load: list[_Loaded]) -> bool:
    """Return whether pieces go in together.

    Flat ones lie on each other. Tilted ones lean together as one thick board over them.
    """
    flat = sum(one.thickness for one in load if one.way.lie is Lie.FLAT)
    others = [one for one in load if one.way.lie is not Lie.FLAT]
    height = car.room_height - flat
    if not others:
        return height >= 0
    bundle = max(one.way.across for one in others), sum(one.thickness for one in others)
    return fits_turned(bundle, (car.room_width, height))


def _pieces(job: Job, car: Car, loads: list[list[_Loaded]]) -> Iterator[CarPiece]:
    number = 0
    for trip, load in enumerate(loads, start=1):
        for one in load:
            number += 1
            sheet = one.sheet.sheet
            yield CarPiece(
                number=number,
                load=trip,
                code=one.sheet.codes[one.place.path],
                sheet=one.sheet.number,
                material=f"{sheet.material} {show(sheet.thickness, job.unit)}",
                length=one.way.along,
                width=one.way.across,
                thickness=one.thickness,
                way=one.way.lie,
                size=show_size(one.way.along, one.way.across, job.unit),
                mass=show_kg(piece_mass_kg(sheet, one.place.rect)),
                people=2 if is_over_limit(job, sheet, one.place.rect) else 1,
                lie=one.way.lie.value,
                check=_say_check(job, car, one.way),
            )


def _say_check(job: Job, car: Car, way: WayIn) -> str:
    """Return how a piece passes, with the room that it passes through."""
    room = show_size(car.room_width, car.room_height, job.unit)
    along = f"{show(way.along, job.unit)} of {show(car.room_length, job.unit)} along"
    across = show(way.across, job.unit)
    if way.lie is Lie.FLAT:
        return f"{along}, {across} of {show(car.room_width, job.unit)} across"
    if way.lie is Lie.EDGE:
        return f"{along}, {across} of {show(car.room_height, job.unit)} upright"
    return f"{along}, {across} passes {room} tilted"


def _say_left(job: Job, sheet: WorkedSheet, place: Place) -> str:
    size = show_size(place.rect.length, place.rect.width, job.unit)
    return f"sheet {sheet.number}: {size} {job.unit.value}, waste: nothing is cut from it"


def _say_outside(job: Job, sheet: WorkedSheet, place: Place) -> str:
    size = show_size(place.rect.length, place.rect.width, job.unit)
    return f"{sheet.sheet.name}, {size} {job.unit.value}, does not go in: have it delivered."
