/** The example of the contract, with the two abbreviated columns of the weather written out. */
export const EXAMPLE = `format: 1
season: Harvest 2024                  # a title
starts: 2024-09-20                    # optional bounds
ends:   2025-04-30
prepared_for: Larkspur Flats
prepared_by:  A. Consultant
site:
  latitude: 42.1
  longitude: -94.0
  elevation: 1050 ft
  time_zone: America/Chicago
show_units: us
currency: USD

tariffs:
  - id: rural-tou
    energy:
      - { price: 0.162 USD/kWh, when: { months: 6-9, days: mon-fri, hours: 13:00-19:00 } }
      - { price: 0.081 USD/kWh, when: { hours: 22:00-06:00 } }
      - { price: 0.112 USD/kWh }
    demand:
      - { price: 9.50 USD/kW, when: { hours: 07:00-22:00 }, ratchet: 60 % }
    fixed: 38 USD/month
    connected: 12 USD/hp/year
    minimum: 45 USD/month

prices:
  corn:    { price: 4.35 USD/bu, base_moisture: 15 %, shrink: 1.4 %/point, discount: 0.03 USD/bu/point }
drying_alternative:
  commercial: 0.05 USD/bu/point
  high_temperature: { fuel: 1.75 USD/gal, fuel_use: 0.02 gal/bu/point, electricity: 0.01 kWh/bu/point }

bins:
  - id: B1
    name: North 36
    diameter: 36 ft
    eave_height: 21 ft
    floor: full
    grain:
      crop: corn
      depth: 20 ft
      test_weight: 56 lb/bu
      moisture_in: 17.8 %
      isotherm: modified Henderson D245.5
      target_moisture: 15 %
      target_temperature: 40 degF
      filled: 2024-10-04
      unloaded: 2025-03-18
    goal: dry
    air: up
    airflow_factor: 1.5
    managed_as: dry-air window
    strategy: equilibrium-window
    fans: [F1]
    cables:
      - { id: C1, from_centre: 9 ft, bearing: 0 deg,   sensors: { count: 6, first: 2 ft, spacing: 3 ft } }
      - { id: C5, from_centre: 0 ft, sensors: { heights: [2 ft, 5 ft, 8 ft, 11 ft, 14 ft, 17 ft] } }
  - id: B2
    diameter: 11 m
    floor: partial
    open_floor: 60 %
    grain:
      crop: soybean
      depth:
        - { on: 2024-10-01, depth: 3 m }
        - { on: 2024-10-03 14:30, depth: 5 m }
        - { on: 2025-04-01T00:00Z, depth: 0 m }
      moisture_out: 12.5 %
    air: down
    cables:
      - { id: K1, from_centre: 100 cm, bearing: 270 deg, sensors: { count: 3, first: 0.5 m, spacing: 1 m, numbered: down } }
fans:
  - id: F1
    nameplate: 15 hp
    supply: { phases: 3, volts: 230, power_factor: 0.85 }
    load: 95 %
    motor_efficiency: 90 %
    running_above: 4 A
    tariff: rural-tou
    curve:
      - [0 inH2O, 17800 cfm]
      - [4 inH2O, 11900 cfm]
    heater: { fuel: propane, output: 60000 BTU/h, price: 1.80 USD/gal, efficiency: 95 % }

sensors:
  temperature: { accuracy: 1 degF }
  moisture:    { accuracy: 0.5 %, noise: 0.1 %, bias: 0.3 %, isotherm: modified Henderson D245.5 }

files:
  - path: logs/cables-*.csv
    holds: grain
    shape: long
    columns: { time: Stamp, bin: Bin, cable: Cable, sensor: No, temperature: { column: T, unit: degF }, moisture: { column: MC, unit: "%" } }
  - path: logs/b2.csv
    holds: grain
    bin: B2
    shape: wide
    columns: { time: DateTime, temperature: { headers: "T {cable}-{sensor}", unit: degC }, moisture: { headers: "M {cable}-{sensor}", unit: "%" } }
    time_format: MM/dd/yyyy hh:mm a
    time_zone: America/Chicago
  - path: logs/fans.csv
    holds: fan
    columns: { time: time, fan: fan, current: { column: amps, unit: A } }
  - path: logs/plenum.csv
    holds: plenum
    columns: { time: time, bin: bin, temperature: { column: t, unit: degF }, humidity: { column: rh, unit: "%" }, static_pressure: { column: sp, unit: inH2O } }
  - path: weather/site.csv
    holds: weather
    columns: { time: time, temperature: { column: temp, unit: degF }, humidity: { column: rh, unit: "%" }, dew_point: { column: dp, unit: degF }, pressure: { column: bp, unit: inHg } }
  - path: weather/history/*.epw
    holds: weather
    format: epw
    role: history
  - path: tickets.csv
    holds: tickets
    columns: { time: date, bin: bin, direction: way, net: { column: lb, unit: lb }, moisture: { column: mc, unit: "%" } }
  - path: probes.csv
    holds: probes
    columns: { time: date, bin: bin, height: { column: ft, unit: ft }, from_centre: { column: r, unit: ft }, moisture: { column: mc, unit: "%" }, temperature: { column: t, unit: degF } }
  - path: bills.csv
    holds: bills
    columns: { from: from, to: to, tariff: tariff, energy: { column: kwh, unit: kWh }, demand: { column: kw, unit: kW }, amount: { column: usd, unit: USD } }
`;

/** The files that the example names; only their names matter here. */
export const EXAMPLE_FILES: Readonly<Record<string, string>> = Object.fromEntries(
  [
    'logs/cables-2.csv',
    'logs/cables-1.csv',
    'logs/b2.csv',
    'logs/fans.csv',
    'logs/plenum.csv',
    'weather/site.csv',
    'weather/history/1998.epw',
    'tickets.csv',
    'probes.csv',
    'bills.csv',
  ].map((path) => [path, 'x\n']),
);
