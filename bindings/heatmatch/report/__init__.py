"""The report: one page for screen and print."""

from heatmatch.report.page import report as report
