"""Which sheet a part or a cabinet is to be cut from: material and thickness."""

from dataclasses import dataclass
from typing import Final

from nesting.lengths import Length, mm
from nesting.reading.fields import Fields
from nesting.reading.values import did_you_mean, listed, with_unit
from nesting.sheets import Sheet

THICKEST: Final = mm(100)
NAMELESS: Final = "sheet"


@dataclass(frozen=True, slots=True, kw_only=True)
class Stock:
    """The sheets of the job file, as what is cut from them sees them.

    Attributes:
        sheets: The sheets that could be read.
        is_complete: False where a sheet is faulty or missing: then nobody can say what a part may
            be cut from, and nothing is said. True without sheets where none is needed.
    """

    sheets: tuple[Sheet, ...]
    is_complete: bool

    @property
    def materials(self) -> list[str]:
        """The materials there are, in the order of the file."""
        return list(dict.fromkeys(sheet.material for sheet in self.sheets))

    def thicknesses(self, material: str) -> list[Length]:
        """Return the nominal thicknesses of a material, in the order of the file."""
        found = (sheet.thickness for sheet in self.sheets if sheet.material == material)
        return list(dict.fromkeys(found))


def read_material(fields: Fields, stock: Stock) -> tuple[str, Length]:
    """Return material and nominal thickness from the keys of these names.

    Either may be left out where the sheets leave no choice. Where there are no sheets and none
    is needed, the thickness must be there and the material may have no name.
    """
    if stock.is_complete and not stock.sheets:
        return fields.text("material", NAMELESS), fields.length("thickness", most=THICKEST)
    material = fields.text("material") if fields.has("material") else ""
    thickness = fields.length("thickness", most=THICKEST) if fields.has("thickness") else 0
    if not fields.is_sound or not stock.is_complete:
        return material, thickness
    material = _choose_material(fields, stock, material)
    if not fields.is_sound:
        return material, thickness
    return material, _choose_thickness(fields, stock.thicknesses(material), material, thickness)


def _choose_material(fields: Fields, stock: Stock, material: str) -> str:
    known = stock.materials
    if not material and len(known) == 1:
        return known[0]
    if not material:
        fields.fault(
            "'material' is left out, and the sheets are of several",
            f"Write which it is: {listed(known, 'or')}.",
        )
    elif material not in known:
        fields.fault(
            f"no sheet is of {material!r}",
            f"{did_you_mean(material, known)}"
            f"The sheets are of {listed(known, 'and')}; write one of these, or add a [[sheet]].",
            "material",
        )
    return material


def _choose_thickness(
    fields: Fields, known: list[Length], material: str, thickness: Length
) -> Length:
    names = [with_unit(each, fields.unit) for each in known]
    if not thickness and len(known) == 1:
        return known[0]
    if not thickness:
        fields.fault(
            f"'thickness' is left out, and sheets of {material!r} come in several",
            f"Write which it is: {' or '.join(names)}.",
        )
    elif thickness not in known:
        nearest = min(known, key=lambda each: (abs(each - thickness), each))
        there = f"There are {', '.join(names)}. " if len(known) > 1 else ""
        fields.fault(
            f"no sheet of {material!r} is sold as {with_unit(thickness, fields.unit)} thick",
            f"{there}Write the nominal thickness, which is how the sheet is sold; "
            f"the nearest is {with_unit(nearest, fields.unit)}.",
            "thickness",
        )
    return thickness
