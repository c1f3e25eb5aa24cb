import type { Formula } from '../base/formula.ts';

/** The equations of a bed of grain. */
export const SIMULATION_FORMULAS: readonly Formula[] = [
  {
    id: 'bed-balances',
    title: 'A layer of a bed: water and heat',
    functions: ['passAir', 'bedHolds', 'bedImbalance'],
    equations: ['W_1 = W_0 + R * (M_0 - M_1)', 'h_0 + R * g_0 = h_1 + R * g_1'],
    rule: 'In a step, grain and leaving air of each layer end at one temperature. R dry matter over dry air, kg/kg; W humidity ratio and h enthalpy of the air entering (0) and leaving (1); M moisture as a fraction of the dry matter and g heat of the grain in J for each kg of it, before (0) and after (1). What leaves a layer enters the next. Both balances close whatever moisture is found.',
    sources: [{ key: 'thompson-1972' }],
  },
  {
    id: 'bed-rate',
    title: 'A layer of a bed: how fast it follows',
    functions: ['passAir'],
    equations: ['M_1 = M_0 - k * dt * (M_1 - M_e)'],
    rule: 'k thin-layer rate in 1/s, dt step in s, M_e the moisture that is in balance with the air leaving the layer, by the isotherm in use; solved by Newton’s steps within bounds. At low airflow M_1 tends to M_e, and for a bed without a rate it is M_e. Grain is never in balance with air above saturation, so what would condense stays on it.',
    sources: [{ key: 'bloome-shove-1971' }],
  },
  {
    id: 'grain-heat',
    title: 'Heat held by grain',
    functions: ['grainHeatJKg'],
    equations: ['g = (c_d + c_w * M) * T - B'],
    rule: 'g in J for each kg of dry matter, from dry grain and liquid water at 0 °C; T in °C, M fraction of the dry matter, c_d and c_w from the crop’s specific heat. B is the heat that binds the water: R_v T² d(ln RH)/dT at 10 °C, summed over the moisture, so that it fits the isotherm in use.',
    sources: [{ key: 'rodriguez-arias-1963' }],
  },
  {
    id: 'thin-layer-corn',
    title: 'Thin-layer rate of corn',
    functions: ['misraBrookerPage'],
    equations: [
      'k_p = exp(-7.1735 + 1.2793 * ln(1.8 * T + 32) + 0.1378 * v)',
      'n = 0.0811 * ln(RH) + 0.0078 * M_0',
      'k = ln(2) / (ln(2) / k_p)^(1 / n) / 3600',
    ],
    rule: 'The part of the water still to go is exp(−k_p t^n) after t hours; T in °C from 2.2 up, RH and the dry-basis M_0 in percent, v in m/s. The bed takes one constant k in 1/s with the same half-time at 65 %, 25 % and 0.1 m/s; below 2.2 °C its logarithm falls on as there. From memory; another equation for cold corn is about twice as fast.',
    sources: [{ key: 'misra-brooker-1980' }],
  },
  {
    id: 'thin-layer-cereals',
    title: 'Thin-layer rate of wheat and barley',
    functions: ['thinLayerOf'],
    equations: ['k_w = 2000 * exp(-5094 / (T + 273.15))', 'k_b = 139.3 * exp(-4426 / (T + 273.15))'],
    rule: 'k in 1/s of wheat (w) and barley (b), T in °C. Durum and soft wheat go as wheat, oats as barley; crops without a rate of their own take corn’s. From memory.',
    sources: [{ key: 'ocallaghan-1971' }],
  },
  {
    id: 'bed-conduction',
    title: 'Heat through grain at rest',
    functions: ['conduct', 'wallConductanceWM3K'],
    equations: ['q = lambda * (T_2 - T_1) / dz', 'U = 5.783 * lambda / r^2'],
    rule: 'q in W/m² between layers dz apart, lambda of the bulk in W/(m K), by the temperatures at the end of the step; to plenum and headspace through half a layer and a film of 1.5 and 4 W/(m² K) (memory). U in W/(m³ K) from the mean of a round bin’s grain to its wall: the slowest decay of a cylinder of radius r, 2.405² = 5.783; the rim’s quick first part is left out. Moisture does not move in grain at rest.',
    sources: [{ key: 'carslaw-jaeger-1959', place: 'ch. 3 and 7' }],
  },
  {
    id: 'bed-level',
    title: 'Filling and drawing a bed',
    functions: ['setLevel', 'setState'],
    equations: ['M = (m_1 * M_1 + m_2 * M_2) / (m_1 + m_2)', '(m_1 + m_2) * g = m_1 * g_1 + m_2 * g_2'],
    rule: 'A layer that holds m_1 kg of dry matter and takes m_2 more mixes their water and their heat; what is drawn comes from the surface, as a centre sump takes it (common practice). Balances of water, heat and dry matter.',
    sources: [],
  },
  {
    id: 'bed-spoiling',
    title: 'Storage time and respiration in a bed',
    functions: ['spoil', 'storageLifeOf', 'storageLifeBy'],
    equations: ['S = S_0 + dt / t', 'Q = 15.6e6 * x', 'w = 0.6 * x'],
    rule: 'S share of the allowable storage time used, dt hours at a state for which the crop’s rule allows t hours. Where the rule counts dry matter, its loss x in kg/kg gives Q in J/kg of heat and w in kg/kg of water (C₆H₁₂O₆ + 6 O₂ → 6 CO₂ + 6 H₂O, 2816 kJ/mol, textbook). The heat ends where grain is at 60 °C (memory) and the loss at 5 %, the end of the curve. The dry matter itself is kept. That shares of time add up is the kit’s own definition.',
    sources: [{ key: 'steele-1969' }],
  },
];
