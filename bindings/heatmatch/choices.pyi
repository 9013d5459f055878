# Written by bindings/generate.py from the words of the library.
import enum

from typing_extensions import Self

class Choice(str, enum.Enum):  # type: ignore[misc]
    def __new__(cls, value: object) -> Self: ...

def member_name(word: str) -> str: ...

class Technology(Choice):
    MONO_SI = "mono-Si"
    MULTI_SI = "multi-Si"
    HETEROJUNCTION = "heterojunction"
    CDTE = "CdTe"
    CIGS = "CIGS"
    CIS = "CIS"
    A_SI = "a-Si"
    GAAS = "GaAs"

class ConductorMetal(Choice):
    COPPER = "copper"
    NICKEL_CLAD_COPPER = "nickel-clad copper"
    NICKEL = "nickel"
    ALUMINIUM = "aluminium"

class Plating(Choice):
    BARE = "bare"
    TIN = "tin"
    SILVER = "silver"
    NICKEL = "nickel"

class ResetKind(Choice):
    AUTOMATIC = "automatic"
    MANUAL = "manual"
    LATCHING = "latching"
    REPLACE = "replace"
    BY_HAND = "by hand"

class FailureKind(Choice):
    CLOSED = "closed"
    OPEN = "open"
    EITHER = "either"
    NONE_KNOWN = "none known"

class OperatedKind(Choice):
    BY_HAND = "by hand"
    BY_COIL = "by coil"
    BY_TEMPERATURE = "by temperature"
    BY_CURRENT = "by current"
    BY_SIGNAL = "by signal"

class DetectedFault(Choice):
    EARTH_FAULT = "earth fault"
    ARC_FAULT = "arc fault"

class ConnectorPlace(Choice):
    ARRAY_SIDE = "array side"
    COLD_END = "cold end"
    WARM_END = "warm end"
    HOT_END = "hot end"
    NOWHERE = "nowhere"

class MediumForm(Choice):
    GRANULAR = "granular"
    SOLID = "solid"
    LIQUID = "liquid"

class SourceKind(Choice):
    MEASURED = "measured"
    NAMEPLATE = "nameplate"
    DATASHEET = "datasheet"
    DERIVED = "derived"
    CLASS_DEFAULT = "class default"
    REPRESENTATIVE = "representative"
    FROM_MEMORY = "from memory"

class StoreShape(Choice):
    CYLINDER = "cylinder"
    BOX = "box"

class StorePlace(Choice):
    IN_SPACE = "in space"
    OUTSIDE = "outside"

class StandsOn(Choice):
    WOOD = "wood"
    CONCRETE = "concrete"
    SOIL = "soil"
    METAL_LEGS = "metal legs"

class StoreTerminals(Choice):
    BURIED = "buried"
    BOX_OUTSIDE = "box outside"
    THROUGH_WALL = "through wall"

class ArrayPlace(Choice):
    GROUND = "ground"
    BUILDING = "building"

class Earthing(Choice):
    FLOATING = "floating"
    GROUNDED = "grounded"

class StoreMaterial(Choice):
    NONE = "none"
    STEEL = "steel"
    GALVANISED_STEEL = "galvanised steel"
    STAINLESS_STEEL = "stainless steel"
    ALUMINIUM = "aluminium"
    COPPER = "copper"
    CONCRETE = "concrete"
    MASONRY = "masonry"
    CERAMIC = "ceramic"
    GLASS = "glass"
    CERAMIC_FIBRE = "ceramic fibre"
    CALCIUM_SILICATE = "calcium silicate"
    VERMICULITE = "vermiculite"
    PERLITE = "perlite"
    CELLULAR_GLASS = "cellular glass"
    MINERAL_WOOL = "mineral wool"
    STONE_WOOL = "stone wool"
    GLASS_WOOL = "glass wool"
    WOOD = "wood"
    CARDBOARD = "cardboard"
    TEXTILE = "textile"
    STRAW = "straw"
    POLYETHYLENE = "polyethylene"
    CROSS_LINKED_POLYETHYLENE = "cross-linked polyethylene"
    POLYPROPYLENE = "polypropylene"
    PVC = "PVC"
    CPVC = "CPVC"
    GLASS_REINFORCED_PLASTIC = "glass-reinforced plastic"
    POLYSTYRENE = "polystyrene"
    POLYURETHANE = "polyurethane"
    POLYISOCYANURATE = "polyisocyanurate"
    PHENOLIC_FOAM = "phenolic foam"
    ELASTOMERIC_FOAM = "elastomeric foam"
    EPDM = "EPDM"
    BUTYL = "butyl"
    NATURAL_RUBBER = "natural rubber"
    NEOPRENE = "neoprene"
    NITRILE = "nitrile"
    SILICONE = "silicone"
    PTFE = "PTFE"

class Carried(Choice):
    STRING = "string"
    ARRAY = "array"
    BANK = "bank"
    BRANCH = "branch"

class SurroundingsKind(Choice):
    OPEN_AIR = "open air"
    SUNLIT = "sunlit"
    CONDUIT = "conduit"
    BED = "bed"
    CAVITY = "cavity"
    BURIED = "buried"

class WiringCode(Choice):
    NEC = "nec"
    IEC = "iec"

class LayingMethod(Choice):
    FREE_AIR = "free air"
    BUNDLE = "bundle"
    RACEWAY = "raceway"
    THERMAL_INSULATION = "thermal insulation"
    EARTH = "earth"

class Duty(Choice):
    BREAKS_DC = "breaks dc"
    CARRIES_DC = "carries dc"
    PROTECTS_A_STRING = "protects a string"
    SENSES_ONLY = "senses only"

class SensedPlace(Choice):
    WALL = "wall"
    LID = "lid"
    BED = "bed"
    SPACE = "space"

class Answer(Choice):
    YES = "yes"
    NO = "no"
    UNKNOWN = "unknown"

class BillState(Choice):
    KNOWN = "known"
    NO_PART = "no part"
    PRICE_NOT_KNOWN = "price not known"
    OTHER_CURRENCY = "other currency"

class AlternativeKind(Choice):
    MOST_HEAT = "most heat"
    LEAST_MONEY = "least money"
    BELOW_TOUCH_VOLTAGE = "below touch voltage"
    COOLEST = "coolest"
    ALL_OWNED = "all owned"

class DutyMeans(Choice):
    A_DEVICE = "a device"
    AS_STATED = "as stated"
    NOT_MET = "not met"
    NOBODY_STATED = "nobody stated"
    NOT_DUE = "not due"

class Severity(Choice):
    NONE = "none"
    CAUTION = "caution"
    WARNING = "warning"
    DANGER = "danger"
    NOT_ASSESSED = "not assessed"

class WirePart(Choice):
    INSULATION = "insulation"
    JOINT = "joint"
    PLATING = "plating"

class FitMode(Choice):
    EXACT = "exact"
    SPLIT = "split"
    GAP = "gap"

class ResistanceBasis(Choice):
    MEASURED = "measured"
    PRINTED = "printed"
    VOLTS_AND_WATTS = "volts and watts"

class ConductivityEnd(Choice):
    LOW = "low"
    TYPICAL = "typical"
    HIGH = "high"

class VectorWidth(Choice):
    AUTOMATIC = "automatic"
    PORTABLE = "portable"
    AVX2 = "avx2"
    AVX512 = "avx512"

class SwitchCase(Choice):
    WORKS = "works"
    THERMOSTAT_WELDED = "thermostat welded"
    BREAKER_WELDED = "breaker welded"

class SwitchAction(Choice):
    OPENS = "opens"
    CLOSES = "closes"
    CANNOT_OPEN = "cannot open"

class BedModel(Choice):
    R_Z_FIELD = "r-z field"
    WATER = "water"

class ProbePlace(Choice):
    BED = "bed"
    WALL = "wall"
    LID = "lid"
    SHEATH = "sheath"

class UnitSystem(Choice):
    SI = "si"
    US = "us"

class SkyModel(Choice):
    HAY_DAVIES = "hay_davies"
    ISOTROPIC = "isotropic"

class FaultKind(Choice):
    AS_EXPECTED = "as expected"
    ELEMENT_OPEN = "element open"
    TURNS_SHORTED = "turns shorted"
    SECTION_BYPASSED = "section bypassed"
    PANEL_MISSING = "panel missing"
    HOT_JOINT = "hot joint"
    LOW_SUN = "low sun"
    DIRT = "dirt"
    AGED = "aged"
    PANELS_HOOKED_OTHERWISE = "panels hooked otherwise"
    BANK_HOOKED_OTHERWISE = "bank hooked otherwise"
    ANOTHER_ELEMENT = "another element"
    ANOTHER_NUMBER_OF_ELEMENTS = "another number of elements"
    FILL_CONDUCTIVITY = "fill conductivity"
