"""What hypothesis may draw: amounts, sugars and temperatures as sugarers meet them."""

from __future__ import annotations

from hypothesis import strategies as st

# Amounts to the hundredth and sugars to the hundredth: nobody measures finer, and differences
# that vanish in binary fractions are not what the properties are about.
gallons = st.integers(min_value=0, max_value=200_000).map(lambda n: n / 100)
some_gallons = st.integers(min_value=1, max_value=200_000).map(lambda n: n / 100)
sap_brix = st.integers(min_value=20, max_value=1200).map(lambda n: n / 100)
syrup_brix = st.integers(min_value=6000, max_value=7000).map(lambda n: n / 100)
any_brix = st.integers(min_value=0, max_value=8400).map(lambda n: n / 100)
water_boils_f = st.integers(min_value=2000, max_value=2145).map(lambda n: n / 10)
# What no measurement is.
not_numbers = st.sampled_from([float("nan"), float("inf"), float("-inf")])
