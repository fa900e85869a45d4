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

# Sugar of sap and of concentrate that a question may name, Brix (our own).
SAP_BRIX: Final = (0.2, 30.0)

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

# --- Instruments -------------------------------------------------------------------------

# What a syrup hydrometer made for 60 F shows when the syrup is 66.9 Brix, by the syrup's
# temperature in degrees F (quoted: the chart of Vermont's maple rule).
VERMONT_CHART_BRIX: Final[Table] = (
    (50.0, 67.4),
    (60.0, 66.9),
    (70.0, 66.4),
    (80.0, 65.9),
    (90.0, 65.4),
    (100.0, 64.8),
    (110.0, 64.3),
    (120.0, 63.8),
    (130.0, 63.3),
    (140.0, 62.8),
    (149.0, 62.3),
    (158.0, 61.8),
    (167.0, 61.4),
    (176.0, 60.9),
    (185.0, 60.4),
    (193.0, 60.0),
    (202.0, 59.6),
    (209.0, 59.0),
)
# The chart's own density, Brix.
VERMONT_CHART_FOR_BRIX: Final = 66.9
# The hottest syrup to test, degrees F; the stem's hot line is made for it (quoted: instrument
# makers; their hot line, 59.1 Brix, is 0.1 above the chart's last row).
HOT_TEST_F_MOST: Final = 211.0
# How far to trust a hot test, Brix either way (our own, from the 0.1 between chart and hot
# line and the 0.1 between the scale's marks).
HOT_TEST_BRIX_DOUBT: Final = 0.2
# Readings that a syrup hydrometer's scale holds, Brix (common practice, no source).
SYRUP_SCALE_BRIX_LEAST: Final = 45.0
SYRUP_SCALE_BRIX_MOST: Final = 75.0

# What to add to a sap hydrometer's reading, Brix, by the sap's temperature in degrees F, when
# the stem says 60 F; for another stem take away the row of its own temperature (computed:
# density of water by IAPWS-95, glass swelling 25e-6 per kelvin, at 2.5 Brix; the sugar's own
# expansion, left out, is worth 0.08 at 2.5 Brix and 0.14 at 5 when the sap is far off the stem).
SAP_HYDROMETER_ADD_BRIX: Final[Table] = (
    (32.0, -0.112),
    (33.0, -0.125),
    (38.0, -0.167),
    (45.0, -0.172),
    (50.0, -0.140),
    (55.0, -0.083),
    (60.0, 0.0),
    (65.0, 0.106),
    (68.0, 0.180),
    (70.0, 0.233),
    (75.0, 0.381),
    (80.0, 0.549),
)
# Readings that a sap hydrometer holds, Brix (common practice, no source).
SAP_SCALE_BRIX_MOST: Final = 15.0
# What a sap hydrometer can be read to, Brix (common practice, no source).
SAP_HYDROMETER_DOUBT_BRIX: Final = 0.1

# Refractometer scales, Brix, and the temperatures that its own compensation covers, degrees F
# (common practice, no source: what the instruments' labels say).
REFRACTOMETER_SAP_BRIX: Final = (0.0, 10.0)
REFRACTOMETER_SYRUP_BRIX: Final = (58.0, 90.0)
REFRACTOMETER_COMPENSATED_F: Final = (50.0, 86.0)

# What a gallon of finished syrup, measured at a temperature in degrees F, shrinks to when it
# is cold (60 F), in gallons (computed: density of 66.9 % sucrose by the equation in Bubnik,
# Kadlec, Urban and Bruhns, Sugar Technologists Manual, 1995, page 164).
HOT_SYRUP_SHRINKS_TO: Final[Table] = (
    (60.0, 1.0),
    (100.0, 0.9912),
    (140.0, 0.9814),
    (160.0, 0.9762),
    (185.0, 0.9694),
    (200.0, 0.9653),
    (212.0, 0.9620),
)

# Syrup that is thickened or thinned by the cup has at least this, Brix (our own).
THICKNESS_BRIX_LEAST: Final = 40.0

# --- Boiling -----------------------------------------------------------------------------

# Gallons of water an hour from a square foot of flat pan at a full boil: usual, poor and
# strong fire (common practice, no source; a flue pan about 2).
FLAT_PAN_RATE: Final = 1.0
FLAT_PAN_RATE_LEAST: Final = 0.6
FLAT_PAN_RATE_MOST: Final = 1.5
# Gallons an hour from a round pot on a propane ring (common practice, no source).
RING_RATE_LEAST: Final = 1.0
RING_RATE_MOST: Final = 2.0
# Depth of sap to keep in the pan, inches (published: Ohio State University Extension), and the
# depth never to go under (common practice, no source).
PAN_DEPTH_IN: Final = 2.0
PAN_DEPTH_IN_LEAST: Final = 1.0
# Boils on record from which a person's own rate is worth more than the table (our own: the
# median of three survives one wrong record).
BOILS_ENOUGH: Final = 3
CUBIC_INCHES_PER_GALLON: Final = 231.0
SQUARE_INCHES_PER_FT2: Final = 144.0

# How far from the expected syrup a batch may fall before it is worth a word, as a share (our
# own: 5 % for the sap hydrometer at 2 Brix, 5 % for a pail's marks, doubled).
YIELD_SHARE_LOW: Final = 0.85
YIELD_SHARE_HIGH: Final = 1.15
# What lies in a pan that was not drawn empty, Brix (our own: somewhere on its way).
PAN_HELD_BRIX_LEAST: Final = 20.0
PAN_HELD_BRIX_MOST: Final = 60.0

# --- Heat and fuel -----------------------------------------------------------------------

# BTU a pound to bring sap from 38 F to the boil, and to boil the water off (computed:
# IAPWS-95).
HEAT_TO_BOIL_BTU_PER_LB: Final = 174.0
HEAT_TO_EVAPORATE_BTU_PER_LB: Final = 970.0
# A cord is 128 cubic feet; a face cord about a third of one (common practice, no source: its
# depth is the stick's length).
FACE_CORDS_PER_CORD: Final = 3.0
CUBIC_FEET_PER_CORD: Final = 128.0
# Heat in a cord of wood at 20 % moisture, BTU (published: University of Kentucky, firewood
# properties).
CORD_BTU: Final[dict[str, float]] = {
    "hickory": 29.3e6,
    "white oak": 27.9e6,
    "beech": 26.3e6,
    "sugar maple": 25.9e6,
    "red oak": 25.9e6,
    "white ash": 24.6e6,
    "cherry": 20.5e6,
    "silver maple": 19.3e6,
    "hemlock": 17.3e6,
    "basswood": 15.2e6,
    "white pine": 15.0e6,
}
# Propane (quoted: US Energy Information Administration, 91,333 to 91,500 BTU a gallon by year;
# 4.24 lb a gallon, 21,500 BTU a pound; a full small cylinder holds 20 lb).
PROPANE_BTU_PER_LB: Final = 21500.0
PROPANE_LB_PER_GALLON: Final = 4.24
PROPANE_LB_PER_CYLINDER: Final = 20.0
# The share of the fire's heat that reaches the sap, low and high.
# A wood evaporator (published: Ohio State University Extension).
EVAPORATOR_EFFICIENCY: Final = (0.40, 0.60)
# A bare block arch (common practice, no source).
BLOCK_ARCH_EFFICIENCY: Final = (0.15, 0.30)
# A propane ring under a pot (our own: the span between the two cases usually worked out).
PROPANE_EFFICIENCY: Final = (0.50, 0.65)

# --- Tapping -----------------------------------------------------------------------------

# Diameter at 4.5 ft, inches, from which a tree takes one tap, two, three, four, by guideline.
# "conservative" is the one we use.
TAP_GUIDELINES_IN: Final[dict[str, tuple[float, ...]]] = {
    # published: North American Maple Syrup Producers Manual; van den Berg and others,
    # University of Vermont, 2012, found it generally sustainable
    "conservative": (12.0, 18.0),
    # quoted: the same manual; mapleresearch.org, "A History of Taps and Tree Size"
    "traditional": (10.0, 15.0, 20.0, 25.0),
    # quoted: University of Maine Cooperative Extension, Bulletin 7036
    "Maine": (10.0, 20.0, 25.0),
    # published: Leuty, Ontario, 2014, after the University of Vermont: 30 and 60 cm
    "Ontario": (30 / 2.54, 60 / 2.54),
    # published: Maple News, after a 2005 Maple Digest article; a second tap only in a very
    # large or fast-growing tree, which a diameter does not tell
    "cautious": (12.0,),
}
# A tree's girth or diameter, inches: over this, ask which of the two was measured (our own).
ROUND_OR_ACROSS_IN: Final = 30.0
# The largest trees, inches across (our own: the record maples are about 100).
DIAMETER_IN_MOST: Final = 100.0
# How exactly a tree is measured, inches across (our own: a tape around it is read to 1/8 in).
DIAMETER_IN_DOUBT: Final = 0.04
# Depth of the hole, inches, and the most (published: Ohio State University Extension, 2025).
TAP_DEPTH_IN: Final = 1.5
TAP_DEPTH_IN_MOST: Final = 2.0
# Drill bits by spile, inches (published: G. Cook, UVM Extension).
BIT_TODAY_IN: Final = 5 / 16
BIT_OLDER_BUCKET_IN: Final = 7 / 16
# Spiles that are made, inches across, smallest and largest (our own bounds).
SPILE_IN: Final = (1 / 4, 5 / 8)
# How far from last year's hole, inches sideways and, at the same time, inches up or down, by
# guideline. We use the cautious end of Vermont's "2 to 4 in sideways and 6 to 12 in up or down".
FROM_OLD_HOLE_IN: Final[dict[str, tuple[float, float]]] = {
    # published: Perkins, UVM Proctor Maple Research Center, 2024
    "Vermont": (4.0, 12.0),
    "Vermont, at least": (2.0, 6.0),
    # published: Ohio State University Extension, 2025
    "Ohio": (4.0, 6.0),
    # published: Ontario, 2014
    "Ontario": (1.0, 12.0),
    # quoted: University of Maine
    "Maine": (6.0, 24.0),
}
# So far to the side of an old hole the height does not matter, inches (published: UVM
# Extension, of holes still open).
BESIDE_OLD_HOLE_IN: Final = 6.0
# Height of a tap above the ground, inches (common practice, no source: 2 to 4 ft, allowing
# for snow that melts).
TAP_HEIGHT_IN: Final = (24.0, 48.0)

# Sap from a bucket tap in a season, gallons, low and high (quoted: University of Maine, 5 to
# 15 on average; 40 to 80 possible).
SAP_PER_TAP_SEASON_GALLONS: Final = (5.0, 15.0)
# Sap from a bucket tap on a big day, gallons (quoted: Penn State Extension 2011, 2 from a tree
# in a good run; 1 on a good day is common practice, no source).
SAP_PER_TAP_BIG_DAY_GALLONS: Final = 2.0
SAP_PER_TAP_GOOD_DAY_GALLONS: Final = 1.0
# More than this from a tap in a day is doubtful, gallons (our own: twice a big day).
SAP_PER_TAP_DAY_DOUBTFUL_GALLONS: Final = 4.0
# Big days that the storage should hold before it is boiled (our own; Kurokawa and others,
# iForest 2024, found 74 % of the sap on 20 % of the days: plan for peaks).
STORAGE_BIG_DAYS: Final = 2.0

# Taps that give nothing after so many days are likely dry for good (our own; Ober, Ohio State
# University Extension: a hole runs little over 30 days by gravity).
TAPS_OLD_DAYS: Final = 42
# More taps than this are no backyard's (our own: what a plan is made for).
TAPS_MOST: Final = 5000

# --- Storage -----------------------------------------------------------------------------

# Days that sap keeps, by the warmest it is stored at, degrees F (the first row quoted: many
# extension pages say at or below 38 F and 7 days; the last published: OSU Extension, growth is
# rapid above 50; the rows between are our own judgement, growth being slow below 40).
SAP_KEEPS_DAYS: Final = (
    (35.0, 7),
    (38.0, 5),
    (45.0, 2),
    (50.0, 1),
)
SAP_KEEPS_DAYS_WARMER: Final = 0
# Days when nobody has measured it (our own: "boil in 2 to 3 days for best" at 36 to 38 F).
SAP_KEEPS_DAYS_UNMEASURED: Final = 3
# Temperatures of stored sap that can be, degrees F (our own).
STORE_F_LEAST: Final = -40.0
STORE_F_MOST: Final = 120.0
# Keep stored sap at or under this, degrees F (quoted: many extension pages).
STORE_COLD_F: Final = 38.0

# --- Bottling ----------------------------------------------------------------------------

# Syrup must be this hot when the cap goes on, degrees F (published: CFIA maple manual, 180 to
# 185; OMAFRA: fill at 185 to 190 so that it is at least 180 under the cap).
BOTTLE_F_LEAST: Final = 180.0
BOTTLE_F: Final = 185.0
# Hotter darkens it (quoted: Michigan State University Extension).
BOTTLE_F_MOST: Final = 200.0
# Share of a jar that must be filled (published: CFIA).
FILL_SHARE_LEAST: Final = 0.90
# Sugar over which crystals come in the cold, Brix (published: OMAFRA, 2013, 67 to 68).
CRYSTALS_BRIX: Final = 68.0

# --- Grades ------------------------------------------------------------------------------

# Grade A classes by the least light transmission, percent (560 nm, 10 mm cell, glycerol 100):
# colour and taste (published: USDA AMS 2015; the same words in New York, Canada, Quebec and
# Ontario).
GRADE_A_CLASSES: Final = (
    (75.0, "Golden", "delicate"),
    (50.0, "Amber", "rich"),
    (25.0, "Dark", "robust"),
    (0.0, "Very Dark", "strong"),
)

# --- Trees and seasons -------------------------------------------------------------------

# A new season begins on this month and day (our own: midsummer, far from any sap).
SEASON_BEGINS: Final = (7, 1)
# A tree that has given nothing for so many days while others were gathered is asked after
# (our own).
NOT_EMPTIED_DAYS: Final = 4
