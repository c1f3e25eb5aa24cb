import { BUSHEL_FT3 } from '../base/bushel.ts';
import type { Formula } from '../base/formula.ts';
import { HP_W } from './fan-power.ts';
import { DAMP_GRAIN_FACTOR, PACKING_FACTOR } from './resistance-factors.ts';

/** The equations of bins, airflow and fans. */
export const BIN_FORMULAS: readonly Formula[] = [
  {
    id: 'airflow-resistance',
    title: 'Resistance of grain to airflow',
    functions: [
      'resistancePaM',
      'airflowResistancePaM',
      'bedPressurePa',
      'bedPressureRangePa',
      'velocityOfPressureMS',
      'airflowOfPressure',
      'velocityOfPowerMS',
    ],
    equations: ['g = a * u^2 / ln(1 + b * u)', 'P = f * z * g'],
    rule: `g in Pa per m of clean, loose, dry grain, u the airflow over the floor area in m/s; a and b by crop in the table of constants. P in Pa over a levelled bed z m deep on a full floor; f is the multiplier for packing and fines, by crop or as stated (packing as it fills a bin: up to ${PACKING_FACTOR}; grain in balance with more than 85 % humidity: about ${DAMP_GRAIN_FACTOR}).`,
    sources: [{ key: 'asae-d272-3', place: 'eq. 1 and notes' }],
  },
  {
    id: 'fines',
    title: 'Fines in shelled corn',
    functions: ['finesFactor'],
    equations: ['f = 1 + (14.5566 - 26.418 * u) * x'],
    rule: 'Multiplies the resistance; x the mass of fines over that of the grain, 0 to 0.2; u in m/s, 0.076 to 0.2.',
    sources: [{ key: 'asae-d272-3', place: 'fines' }, { key: 'haque-1978' }],
  },
  {
    id: 'specific-airflow',
    title: 'Airflow for each bushel',
    functions: ['cfmPerBushel', 'velocityOfCfmPerBushel'],
    equations: [`q = u / z * 60 * ${BUSHEL_FT3}`],
    rule: 'q in cfm for each bushel of volume, u in m/s over the floor, z the depth in m. By definition.',
    sources: [{ key: 'test-weight', place: 'bushel of 2150.42 cubic inches' }],
  },
  {
    id: 'operating-point',
    title: 'Where fans and grain balance',
    functions: ['operatingPoint', 'fanFlowM3S'],
    equations: [],
    rule: 'Fans in parallel meet one pressure and their airflows add up; a fan’s airflow is taken straight between the points of its maker’s curve. The pressure at which the bed takes just that air is found by halving; where the curves do not reach it there is no answer.',
    sources: [{ key: 'asae-d272-3', place: 'eq. 1' }],
  },
  {
    id: 'fan-power',
    title: 'Air power and fan size',
    functions: ['airPowerW', 'hpPerThousandBushels'],
    equations: ['N = P * Q', `n = N_s / ${HP_W} / (B / 1000)`],
    rule: 'Air power N in W from the static pressure P in Pa and the airflow Q in m³/s; n in hp per 1,000 bushels from the shaft power N_s in W and B bushels. By definition.',
    sources: [],
  },
  {
    id: 'fan-warming',
    title: 'Warming of air by its fan',
    functions: ['fanWarmingK', 'fanWarmingByPressureK'],
    equations: ['dt = N / (Q * rho * c)', 'dt = P / (eta * rho * c)'],
    rule: 'dt in K; all power ends as heat in the air. N is the electric power in W where the motor stands in the stream, else the shaft’s; eta the efficiency of what stands in the stream; c = 1,006 J/(kg K) of dry air. A heat balance.',
    sources: [{ key: 'engineers-edge-fan' }, { key: 'ashrae-2017', place: 'ch. 1, eq. 30' }],
  },
  {
    id: 'temperature-front',
    title: 'Speed of a front of temperature',
    functions: [
      'bedWaveRatio',
      'moisturePerKInWave',
      'frontRatios',
      'frontSpeedMS',
      'velocityOfFrontMS',
      'airVolumeBehindM3Kg',
      'frontRatioSpread',
    ],
    equations: [],
    rule: 'In a bed whose air leaves each layer in balance with the grain, c s² − (c_a + h W_t + c W_m) s + c_a W_m = 0 has two roots s, kg of dry grain passed for each kg of dry air: the larger for the front of temperature, the smaller for that of moisture. c and c_a are the heats of grain and air for each kg of dry matter and dry air, h the heat of vaporisation from grain, W_t and W_m how the humidity ratio of air in balance rises with temperature and moisture. Warm grain passes faster than cold, by what evaporation carries: a cooling front spreads between its lead and its tail, a warming front stays sharp at the mean. Speed is s times dry air for each m² and second over dry matter for each m³; solved the other way it gives the airflow. Conduction, walls and uneven air are left out.',
    sources: [{ key: 'sutherland-1971' }],
  },
  {
    id: 'front-plateau',
    title: 'Temperature behind a front',
    functions: ['frontPlateauC'],
    equations: [],
    rule: 'The entering air comes into balance with the grain’s moisture at constant enthalpy near the inlet; the temperature at which it does is that of the grain behind the front, found by halving. Dry air makes it colder than the air, damp air warmer.',
    sources: [{ key: 'sutherland-1971' }],
  },
  {
    id: 'grain-volume',
    title: 'Volume of grain in a round bin',
    functions: ['grainVolumeM3', 'levelledDepthM', 'peakHeightOfReposeM'],
    equations: [
      'V = pi * r^2 * z + pi * r_c^2 * y / 3 + pi * r^2 * y_h / 3',
      'z_l = V / (pi * r^2)',
      'y_r = r * tan(alpha)',
    ],
    rule: 'Cylinder of radius r and wall depth z, cone of the peak (radius r_c, height y; a hollow below 0), cone of a hopper y_h deep; z_l the levelled depth; y_r the peak of a heap of repose angle alpha. Lengths in m. Geometry.',
    sources: [],
  },
  {
    id: 'sensor-shares',
    title: 'Share of the grain of each sensor',
    functions: ['sensorShares'],
    equations: [],
    rule: 'Share of the height (half-way to the neighbours on the cable, floor and surface at the ends) times share of the floor (rings half-way between the cables’ distances from the centre, shared equally at one distance). Sensors at or above the surface are out; the shares sum to 1. The kit’s own definition.',
    sources: [],
  },
];
