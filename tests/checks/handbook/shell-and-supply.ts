/** Shell, fuel supply and starting air against outside figures. */
import { CELSIUS } from '../../../shared/durability/property-table.ts';
import { carburettor, cylinder, onPetrol, reed } from '../scenario-kit.ts';
import { all, between, figureOf, type Handbook, limitOf, near, STANDARD_AIR, shellAt, tube } from './entry.ts';

const steel = all(tube(0.2, 0.2, 1e-3), (input) => {
  input.engine.shell.material = 'low-carbon-steel';
});

/** lb/h of propane from kBtu/h at 21 500 Btu/lb gross, in kg/s. */
const kBtu = (perHour: number) => ((perHour * 1000) / 21500) * (0.45359237 / 3600);
const PROPANE_GAMMA = 1.13;
const sonic = ((PROPANE_GAMMA + 1) / 2) ** (PROPANE_GAMMA / (PROPANE_GAMMA - 1));

export const SHELL_HANDBOOK: Record<string, Handbook> = {
  'shell-hot-yield': near(
    'EN 1993-1-2 table 3.1: 0.47 of yield at 600 °C; p D/2t',
    (1e5 * 0.2) / 2e-3 / (0.47 * 210e6),
    () => figureOf(reed(all(steel, shellAt(600 + CELSIUS, 1e5)))(), 'shell-hot-yield'),
  ),
  'shell-external-pressure': near(
    'Windenburg & Trilling 1934, ν 0.3: 2.60 E (t/D)^2.5/(L/D − 0.45 √(t/D)), 0.8 for out-of-roundness',
    (0.8 * 2.6 * 202e9 * (1 / 200) ** 2.5) / (1 - 0.45 * Math.sqrt(1 / 200)),
    () => limitOf(reed(all(steel, shellAt(293.15, 1e5, 1e4)))(), 'shell-external-pressure'),
    0.01,
  ),
  'shell-creep': near(
    'stainless design data: 304 breaks at 650 °C under 117 MPa after 1000 h',
    3.6e6,
    () => {
      const peak = (117e6 * 2 * 1e-3) / 0.2 / 0.7;
      return figureOf(reed(all(tube(0.2, 0.2, 1e-3), shellAt(650 + CELSIUS, peak)))(), 'shell-creep');
    },
    1e-3,
  ),
  'shell-oxidation': near('ASM: 304 scales above 870 °C in intermittent service', 870 + CELSIUS, () =>
    limitOf(reed()(), 'shell-oxidation'),
  ),
  'shell-wastage': near(
    'cyclic test table: 304 takes up 1.7 g/m² a face in 100 h at 815 °C; Cr₂O₃ and Fe₂O₃ bind 2.2–2.3 g of metal a gram',
    (0.25 * 1e-3 * 7930 * 360e3) / (2 * 1.7e-3 * 2.25),
    () => figureOf(reed(all(tube(0.2, 0.2, 1e-3), shellAt(815 + CELSIUS, 1e4)))(), 'shell-wastage'),
    0.05,
  ),
  'thermal-growth': near('linear expansion of 304, 18.7e-6 /K: 1 m by 700 K is 13.09 mm', 13.09e-3, () =>
    figureOf(
      reed(all(tube(0.2, 1, 1e-3), (i, r) => shellAt(i.engine.site.temperature + 700, 1e5)(i, r)))(),
      'thermal-growth',
    ),
  ),
};

export const SUPPLY_HANDBOOK: Record<string, Handbook> = {
  'fuel-match': near('common practice, no source: a carburettor cannot feed an injected engine', 0, () =>
    figureOf(
      reed((input) => {
        input.engine.feed = { fuel: 'petrol', mode: 'steady-injection', equivalenceRatio: 1 };
        input.brief.supply = carburettor(1);
      })(),
      'fuel-match',
    ),
  ),
  // Half an hour from warm liquid gives more than for ever: by the heat that 45 kg of liquid and its steel hold, 0 to 6 times.
  'cylinder-evaporation': between(
    'supplier and generator manuals: a full 100-lb cylinder gives 277 kBtu/h for ever at 16 °C',
    0.85 * kBtu(277),
    7 * kBtu(277),
    () =>
      figureOf(
        reed((input) => {
          input.engine.site.temperature = 16 + CELSIUS;
          input.brief.wanted.endurance = 1800;
          input.brief.supply = cylinder({ capacity: 45.36, fill: 1, regulatorPressure: 0.1e5 });
        })(),
        'cylinder-evaporation',
      ),
  ),
  'liquid-draw': near(
    'CoolProp: 374.9 kJ/kg at 0 °C; 20 K of superheat at 1.66 kJ/(kg K)',
    374.9 + 33.2,
    () =>
      limitOf(
        reed((input, running) => {
          input.engine.site.temperature = CELSIUS;
          running.fuelFlow = 1e-3;
        })(),
        'liquid-draw',
      ),
    1e-4,
  ),
  'fuel-regulator': near(
    'CoolProp: propane at 20 °C stands at 836.5 kPa',
    836.5e3 - STANDARD_AIR,
    () =>
      figureOf(
        reed((input) => {
          input.engine.site.temperature = 20 + CELSIUS;
        })(),
        'fuel-regulator',
      ),
    4e-3,
  ),
  'injection-pressure': near(
    'NACA 1135: a gas of γ 1.13 chokes at p0/p = ((γ+1)/2)^(γ/(γ−1))',
    STANDARD_AIR * (sonic - 1),
    () => limitOf(reed()(), 'injection-pressure'),
  ),
  'fuel-jet': near(
    'Bernoulli: 7 g/s of petrol (740 kg/m³) under 4 bar through Cd 0.8',
    Math.sqrt((4 * 0.007) / (Math.PI * 0.8 * Math.sqrt(2 * 740 * 4e5))),
    () =>
      figureOf(
        reed((input) => {
          input.engine.feed = { fuel: 'petrol', mode: 'premixed', equivalenceRatio: 1 };
          input.brief.supply = { kind: 'pressure-injection', fuel: 'petrol', pressure: 4e5, capacity: 20 };
        })(),
        'fuel-jet',
      ),
  ),
  'run-time': near('mass balance: 36 kg at 7 g/s', 36 / 0.007, () => figureOf(reed()(), 'run-time')),
  'carburettor-rating': near(
    'ISO 2533: air at 15 °C and 1 atm has 1.225 kg/m³',
    0.35 / 1.225,
    () => limitOf(reed(onPetrol(0.5))(), 'carburettor-rating'),
    1e-3,
  ),
  'carburettor-loss': near(
    'Bernoulli: as much drop as suction costs 1 − 1/√2; a rating holds at 3.0 inHg',
    1 - Math.SQRT1_2,
    () =>
      figureOf(
        reed(
          all(onPetrol(0.5), (input, running) => {
            const density = input.engine.site.pressure / (287.05 * input.engine.site.temperature);
            running.traces.intakeFlow = running.traces.intakeFlow.map(() => 0.5 * density);
            running.meanSuction = 3 * 3386.39;
          }),
        )(),
        'carburettor-loss',
      ),
    1e-3,
  ),
  'starting-pressure': near(
    'common practice, no source: 0.5 bar is lost in regulator and hose of an 8 bar tank',
    7.5e5,
    () => figureOf(reed()(), 'starting-pressure'),
  ),
  'starting-flow': near(
    'ISO 2533: 0.12 kg/s of free air at 15 °C and 1 atm',
    0.12 / 1.225,
    () => limitOf(reed()(), 'starting-flow'),
    1e-3,
  ),
  'starting-tank': near(
    'adiabatic blowdown, closed form: 10 → 5 bar gives up 1 − 0.5^(1/1.4) of the air',
    1 - 0.5 ** (1 / 1.4),
    () => {
      const input = reed((i) => {
        i.brief.startingAir.tank = { volume: 1, pressure: 10e5 - STANDARD_AIR, delivery: 0 };
        const start = i.performance.starts.at(-1)!;
        start.airPressure = 5e5 - STANDARD_AIR - 0.5e5;
      })();
      return (figureOf(input, 'starting-tank') * 0.12) / (10e5 / (287.05 * input.engine.site.temperature));
    },
  ),
};
