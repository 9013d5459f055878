"""The public classes, each with the compiled object that it holds, and what makes them."""

from __future__ import annotations

from heatmatch.face.array import Array as Array
from heatmatch.face.assessed import assess as assess
from heatmatch.face.assessed import assess_circuits as assess_circuits
from heatmatch.face.bank_heat import BankHeat as BankHeat
from heatmatch.face.bed_charge import BedCharge as BedCharge
from heatmatch.face.bill import Bill as Bill
from heatmatch.face.calibration import Calibration as Calibration
from heatmatch.face.calibration import calibrate as calibrate
from heatmatch.face.candidate import Candidate as Candidate
from heatmatch.face.catalog import Catalog as Catalog
from heatmatch.face.circuit import Circuit as Circuit
from heatmatch.face.day_answer import DayAnswer as DayAnswer
from heatmatch.face.day_answer import PartPeak as PartPeak
from heatmatch.face.day_run import DayRun as DayRun
from heatmatch.face.day_run import simulate_day as simulate_day
from heatmatch.face.diagnosis import Diagnosis as Diagnosis
from heatmatch.face.diagnosis import diagnose as diagnose
from heatmatch.face.energy_curve import EnergyCurve as EnergyCurve
from heatmatch.face.installation import Installation as Installation
from heatmatch.face.installation import demo as demo
from heatmatch.face.margin import Margin as Margin
from heatmatch.face.meter_sheet import MeterSheet as MeterSheet
from heatmatch.face.meter_sheet import meter_sheet as meter_sheet
from heatmatch.face.monthly_sky import MonthlySky as MonthlySky
from heatmatch.face.parts_view import PartsView as PartsView
from heatmatch.face.planned import Plan as Plan
from heatmatch.face.planned import plan as plan
from heatmatch.face.ranking import Ranking as Ranking
from heatmatch.face.ranking import rank as rank
from heatmatch.face.readings import Readings as Readings
from heatmatch.face.season import Season as Season
from heatmatch.face.setting import AllowedElements as AllowedElements
from heatmatch.face.setting import CoverArea as CoverArea
from heatmatch.face.setting import ElementFilter as ElementFilter
from heatmatch.face.setting import ExistingCircuit as ExistingCircuit
from heatmatch.face.setting import Goals as Goals
from heatmatch.face.setting import MonthlyNormals as MonthlyNormals
from heatmatch.face.setting import Space as Space
from heatmatch.face.shared_store import simulate_circuits as simulate_circuits
from heatmatch.face.shared_store import simulate_stagnations as simulate_stagnations
from heatmatch.face.stagnation import Stagnation as Stagnation
from heatmatch.face.stagnation import simulate_stagnation as simulate_stagnation
from heatmatch.face.store_log import StoreLog as StoreLog
from heatmatch.face.weather import Weather as Weather
