"""Every constant of the trade, once: its value, its unit, and where it is published.

Marks in the comments say how far each figure can be trusted:

- **published**: read in the named source, its official copy or its abstract;
- **quoted**: published, but known to us only as others quote it;
- **common practice, no source**: what makers do, without a publication behind it;
- **from memory**: not checked against the source that is named;
- **computed**: worked out by us from published figures; `tests/outside` repeats it;
- **our own**: a judgement of this program, open to change.

Gallons are US liquid gallons, temperatures degrees Fahrenheit, sugar degrees Brix
(percent of mass, the solids taken as pure sucrose), unless a name says otherwise.
Tables are tuples of rows, sorted by their first column.
"""

from __future__ import annotations

from typing import Final

Table = tuple[tuple[float, float], ...]

# --- Volume and mass ---------------------------------------------------------------------

# The US liquid gallon is 231 cubic inches exactly (published: NIST Handbook 44, Appendix C).
ML_PER_GALLON: Final = 3785.411784
CUPS_PER_GALLON: Final = 16.0
FL_OZ_PER_GALLON: Final = 128.0
PINTS_PER_GALLON: Final = 8.0
# Pounds per US gallon of a liquid of 1 g/mL, in vacuum; in air about 0.1 % less
# (computed from the gallon above and the pound of 453.59237 g).
POUNDS_PER_GALLON_AT_UNIT_DENSITY: Final = 8.345404

# --- Density of sucrose solutions --------------------------------------------------------

# g/mL at 20 C for B degrees Brix: the sum of c[k] * B**k (computed: least squares through the
# CRC Handbook of Chemistry and Physics, concentrative properties of aqueous solutions, sucrose,
# 0 to 84 %; largest error there 0.0002).
SUCROSE_DENSITY_COEFFICIENTS: Final = (
    0.99823,
    3.863044e-3,
    1.229362e-5,
    7.533005e-8,
    -3.137779e-10,
)
# The fit's reach, in Brix.
BRIX_LEAST: Final = 0.0
BRIX_MOST: Final = 84.0
# g/mL of water at 20 C (published: CRC Handbook; the fit's own value at 0 Brix).
WATER_DENSITY_G_ML: Final = 0.99823
# The modulus of the Baume scale for liquids heavier than water, American
# (quoted: Vermont's maple rule).
BAUME_MODULUS: Final = 145.0

# --- Sap for a gallon of syrup -----------------------------------------------------------

# Gallons of sap for one of syrup = 86 / Brix (quoted: C. H. Jones, University of Vermont;
# the verse was published in 1946).
RULE_OF_86: Final = 86.0
# The revised rule, gallons of sap for one of syrup = a / Brix - b, as (syrup Brix, a, b)
# (quoted in Farming Magazine from Perkins and Isselhardt, "The 'Jones Rule of 86' Revisited",
# Maple Syrup Digest 2013; the b beside 88.2 is from memory).
REVISED_RULE: Final = (
    (66.0, 87.1, 0.32),
    (66.9, 88.2, 0.32),
)

# Sugar left in the ice that is skimmed off, Brix: 0 if it were pure, and what some still holds
# (common practice, no source: makers report 0.2 to 1).
ICE_BRIX_PURE: Final = 0.0
ICE_BRIX_USUAL: Final = 0.5
# The share of the sap that may be thrown away as ice (common practice, no source).
ICE_SHARE_MOST: Final = 1 / 3

# --- Legal density of syrup, Brix --------------------------------------------------------

# (published: FDA 21 CFR 168.140; New York 1 NYCRR 270.1; Maine 7 MRSA 892-A; Ontario
# O. Reg. 119/11; Canadian Grade Compendium volume 7.)
LEGAL_BRIX_USUAL: Final = 66.0
# 36 degrees Baume at 60 F (published: UVM Extension, Maple Minute videos, 2022, for Vermont;
# quoted for New Hampshire).
LEGAL_BRIX_VERMONT: Final = 66.9
# Grade A at most (published: USDA AMS, US Standards for Grades of Maple Syrup, 2015,
# 7 CFR 52.5961-2; Canadian Grade Compendium volume 7).
LEGAL_BRIX_MOST: Final = 68.9

# --- The finish --------------------------------------------------------------------------

# Rise of the boiling point above that of water, degrees F, by Brix, for pure sucrose at one
# atmosphere (computed: activity of water by Starzak and Peacock, ln gamma =
# (Q/RT)(1 + a x + b x^2) x^2 with Q = -17638 J/mol, a = -1.0038, b = -0.24653, x the mole
# fraction of sucrose; coefficients published, the form and the year 1997 from memory; steam by
# IAPWS-95). 3000 ft up the rise near syrup is 0.12 F less.
SUCROSE_RISE_F: Final[Table] = (
    (0.0, 0.0),
    (5.0, 0.142),
    (10.0, 0.304),
    (15.0, 0.491),
    (20.0, 0.708),
    (25.0, 0.962),
    (30.0, 1.264),
    (35.0, 1.625),
    (40.0, 2.064),
    (45.0, 2.604),
    (50.0, 3.282),
    (55.0, 4.150),
    (58.0, 4.794),
    (60.0, 5.288),
    (62.0, 5.846),
    (64.0, 6.478),
    (65.0, 6.826),
    (66.0, 7.198),
    (66.5, 7.394),
    (66.9, 7.556),
    (67.0, 7.597),
    (68.0, 8.025),
    (68.9, 8.437),
    (70.0, 8.980),
    (72.0, 10.091),
    (74.0, 11.396),
    (76.0, 12.942),
    (78.0, 14.792),
    (80.0, 17.034),
)
# The rise to draw at, degrees F, for the two legal densities: 7.2 for 66.0 Brix (computed, as
# above), 7.5 for 66.9 (common practice, no source; the computation gives 7.56 at sea level and
# 7.47 at 2000 ft, so 7.5 is right where maples are tapped).
DRAW_RISE_F: Final[Table] = (
    (66.0, 7.2),
    (66.9, 7.5),
)
# Boiling point of water in degrees F from station pressure P in inches of mercury:
# the sum of c[k] * ln(P)**k (computed: fit to IAPWS-95 from 23 to 31.5 inHg, error < 0.001 F).
WATER_BOILS_COEFFICIENTS: Final = (89.3241, 21.74176, 4.219720)
STATION_INHG_LEAST: Final = 23.0
STATION_INHG_MOST: Final = 31.5
# Barometers reduced to sea level (altimeter settings), inHg, that have ever been seen on land
# lie within these (our own: the records, from memory, are 25.7 and 32.0, rounded outward).
ALTIMETER_INHG_LEAST: Final = 25.0
ALTIMETER_INHG_MOST: Final = 32.5
# Standard pressure at sea level, inches of mercury (published: US Standard Atmosphere 1976).
STANDARD_INHG: Final = 29.9213
# P_station = P_altimeter * (1 - LAPSE * feet) ** POWER (US Standard Atmosphere 1976; these two
# from memory, checked against two independent packages in tests/outside).
STANDARD_LAPSE_PER_FT: Final = 6.8756e-6
STANDARD_PRESSURE_POWER: Final = 5.2559
# Heights at which the barometer's reduction is worked out, feet (our own: Death Valley
# is 282 ft below the sea, and above 7000 ft the boiling-point fit ends).
ELEVATION_FT_LEAST: Final = -300.0
ELEVATION_FT_MOST: Final = 7000.0
# A thermometer that says water boils outside these, degrees F, is misread or broken (our own:
# 200 F is 6500 ft up, 214.5 F the highest barometer ever seen).
MEASURED_BOIL_F_LEAST: Final = 200.0
MEASURED_BOIL_F_MOST: Final = 214.5
# What one degree F of thermometer error is worth near the finish, in Brix (computed: the slope
# of the rise table at 66.5 Brix is 0.40 F per Brix).
BRIX_PER_F_NEAR_FINISH: Final = 2.5
