/**
 * The text of a first season.yaml, every optional part in comments. It reads without a problem as it stands.
 *
 * @param schema  path of the JSON Schema for editors, from the season folder; null leaves the line out
 */
export function starterSeason(schema: string | null): string {
  const line = schema === null ? '' : `# yaml-language-server: $schema=${schema}\n`;
  return line + STARTER;
}

const STARTER = `# A storage season. Change what stands here to your own bins, and take away the "# " of what you can tell.
# Every quantity carries its unit: 36 ft, 11 m, 15 hp, 15 %. Keys that start with x- are your own and ignored.
format: 1
season: My harvest
# starts: 2024-09-20              # first and last local day; readings outside are counted and left out
# ends: 2025-04-30
# prepared_for: Name of the farm
# prepared_by: Your name
site:
  time_zone: America/Chicago      # IANA name; the default zone of every file
  # latitude: 42.1
  # longitude: -94.0
  # elevation: 1050 ft
show_units: us                    # us | si
currency: USD

# tariffs:
#   - id: farm
#     energy:                     # the first rule that matches an hour prices it; the last has no \`when\`
#       - { price: 0.16 USD/kWh, when: { months: 6-9, days: mon-fri, hours: 13:00-19:00 } }
#       - { price: 0.11 USD/kWh }
#     demand:
#       - { price: 9.50 USD/kW, when: { hours: 07:00-22:00 }, ratchet: 60 % }
#     fixed: 38 USD/month
#     connected: 12 USD/hp/year   # on the nameplate horsepower of its fans
#     minimum: 45 USD/month

# prices:
#   corn: { price: 4.35 USD/bu, base_moisture: 15 %, shrink: 1.4 %/point, discount: 0.03 USD/bu/point }
#   soybean:                      # what a buyer posts by steps and bands stands under schedules
#     price: 10.20 USD/bu
#     base_moisture: 13 %
#     schedules:
#       - { name: discount, per: 0.5 point, step: 0.5 point, rates: [{ up_to: 15 %, rate: 1 % of price }, { up_to: 17 %, rate: 2 % of price }], refuse_above: 17 % }
#       - { name: drying, rate: 0.05 USD/bu, step: 0.1 point, bushels: wet }
#       - { name: shrink, above: 13.5 %, rate: 1.3 % of weight }
# drying_alternative:             # what the same points would have cost elsewhere
#   commercial: 0.05 USD/bu/point
#   high_temperature: { fuel: 1.75 USD/gal, fuel_use: 0.02 gal/bu/point, electricity: 0.01 kWh/bu/point }
# measures:                       # what a change would cost once, for its payback in the year-end report
#   - { measure: fans-in-turns, price: 1800 USD }          # other-rule | fans-in-turns | stop-at-target | useful-hours-only | stop-when-through
#   - { measure: other-rule, bins: [B1], price: 650 USD }

bins:
  - id: B1
    diameter: 36 ft
    # name: North bin
    # eave_height: 21 ft
    # floor: full                 # full | partial, with open_floor: 60 %
    grain:
      crop: corn
      depth: 20 ft                # levelled; or a list of { on: 2024-10-04, depth: 12 ft }
      # test_weight: 56 lb/bu
      # moisture_in: 17.8 %
      # moisture_out: 15.1 %
      # target_moisture: 15 %
      # target_temperature: 40 degF
      # filled: 2024-10-04        # a date, or a date and time: 2024-10-04 16:30
      # unloaded: 2025-03-18
    # goal: dry                   # dry | cool | condition | hold
    # air: up                     # up: pushed in below | down: drawn out below
    # managed_as: how the fan was run, in your words
    fans: [F1]
    # cables:
    #   - { id: C1, from_centre: 9 ft, bearing: 0 deg, sensors: { count: 6, first: 2 ft, spacing: 3 ft } }
    #   - { id: C2, from_centre: 0 ft, sensors: { heights: [2 ft, 5 ft, 8 ft, 11 ft] } }

fans:
  - id: F1
    nameplate: 15 hp
    # supply: { phases: 3, volts: 230, power_factor: 0.85 }
    # load: 95 %                  # with motor_efficiency: where only the nameplate tells the power
    # motor_efficiency: 90 %
    # running_above: 4 A
    # tariff: farm
    # curve: [[0 inH2O, 17800 cfm], [4 inH2O, 11900 cfm]]
    # heater: { fuel: propane, output: 60000 BTU/h, price: 1.80 USD/gal, efficiency: 95 % }

# sensors:                        # limits that 95 % of the sensors keep
#   temperature: { accuracy: 1 degF }
#   moisture: { accuracy: 0.5 %, noise: 0.1 %, bias: 0.3 % }

# useful_hours: { moisture: 0.5 %, temperature: 2 degF } # from where on an hour of the fan counts as drying, rewetting, cooling or warming

# files:                          # a pattern must match a file, and each file is read once; date and time in two columns: time: [Date, Time]
#   - path: logs/cables-*.csv
#     holds: grain
#     columns: { time: Stamp, bin: Bin, cable: Cable, sensor: No, temperature: { column: T, unit: degF }, moisture: { column: MC, unit: "%" } }
#   - path: logs/fans.csv
#     holds: fan
#     columns: { time: time, fan: fan, current: { column: amps, unit: A } }
#   - path: logs/plenum.csv
#     holds: plenum
#     columns: { time: time, bin: bin, temperature: { column: t, unit: degF }, humidity: { column: rh, unit: "%" } }
#   - path: weather/site.csv
#     holds: weather
#     columns: { time: time, temperature: { column: temp, unit: degF }, humidity: { column: rh, unit: "%" } }
#   - path: weather/history/*.epw
#     holds: weather
#     format: epw                 # epw | isd-lite | lcd | asos | open-meteo: as downloaded, no columns
#     role: history               # past years beside the season
#   - path: tickets.csv
#     holds: tickets
#     columns: { time: date, bin: bin, direction: way, net: { column: lb, unit: lb }, moisture: { column: mc, unit: "%" } }
#   - path: bills.csv
#     holds: bills
#     columns: { from: from, to: to, tariff: tariff, energy: { column: kwh, unit: kWh }, amount: { column: usd, unit: USD } }
`;
