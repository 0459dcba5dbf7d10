/** Fabrication, noise and people, and the brief against outside figures. */
import { gaugeTable } from '../../../shared/durability/sheet-gauge.ts';
import { partsList } from '../../../shared/fabrication/parts.ts';
import { bent, onPetrol, poppet, reed } from '../scenario-kit.ts';
import { all, between, checkOf, figureOf, type Handbook, limitOf, near, STANDARD_AIR, shellAt, tube } from './entry.ts';

const gauge = (number: number) => gaugeTable.find((g) => g.gauge === number)!.thickness;

/** dB(A) at 1 m, read back from the stand-off for a whole working day. */
function levelAtOneMetre(): number {
  const input = reed((i) => {
    i.brief.wanted.endurance = 8 * 3600;
  })();
  return 85 + 20 * Math.log10(limitOf(input, 'noise-stand-off'));
}

/** Pounds force and pounds an hour in the sentence of a check. */
const spoken = (sentence: string, unit: RegExp): number => Number(unit.exec(sentence)![1]);

export const SHOP_HANDBOOK: Record<string, Handbook> = {
  'smallest-roll': near('plane geometry: the tailpipe of 0.10 m is the smallest of the drawing', 0.1, () =>
    figureOf(reed()(), 'smallest-roll'),
  ),
  'widest-sheet': near('plane geometry: 0.8 m of tailpipe on rolls of 0.3 m takes 3 courses', 3, () => {
    const input = reed((i) => {
      i.brief.tools.rollWidth = 0.3;
    })();
    return spoken(checkOf(input, 'widest-sheet').sentence, /in (\d+) courses/);
  }),
  'thickest-cut': near(
    'manufacturers’ standard gauge: 18 gauge on tools for 16 gauge, 0.0478 of 0.0598 in',
    1 - 0.0478 / 0.0598,
    () => {
      const input = reed((i) => {
        i.engine.shell.thickness = gauge(18);
        i.brief.tools.thickestCut = gauge(16);
      })();
      return checkOf(input, 'thickest-cut').margin!;
    },
  ),
  'cone-angle': near(
    'cone pattern 65 → 32 over 60 mm: slant 62.2274 mm, so cos of the half-angle is 60/62.2274 (exact)',
    60 / 62.2274,
    () =>
      Math.cos(
        figureOf(
          reed((i) => {
            i.engine.sections = [
              { role: 'chamber', length: 0.1, startDiameter: 0.065, endDiameter: 0.065 },
              { role: 'chamber-cone', length: 0.06, startDiameter: 0.065, endDiameter: 0.032 },
            ];
          })(),
          'cone-angle',
        ),
      ),
  ),
  'bend-radius': near('plane geometry: R 0.2 m on 0.1 m of tube', 2, () => figureOf(bent()(), 'bend-radius')),
  weldability: between('common practice, no source: TIG joins sheet of 0.5 mm and more', 0.4e-3, 0.6e-3, () =>
    limitOf(reed()(), 'weldability'),
  ),
  'stock-sheet': near('arithmetic: 3.9 m of tube whose girth fills the sheet’s width takes 4 sheets of 1 m', 4, () =>
    figureOf(
      reed((i, r) => {
        tube(0.3, 3.9, 1.2e-3)(i, r);
        i.brief.sheets = [{ material: '304', thickness: 1.2e-3, width: 1, length: 1.01, sheets: 9, price: 1 }];
      })(),
      'stock-sheet',
    ),
  ),
  'stock-strip': near('arithmetic: 0.25 mm wanted, 0.20 mm in stock is a fifth off', 0.2, () =>
    figureOf(
      reed((i) => {
        i.brief.strips[0].thickness = 0.2e-3;
      })(),
      'stock-strip',
    ),
  ),
  'part-count': near('the parts list: 7 poppets add 7 of each valve part', 7, () => {
    const input = poppet()();
    const more = poppet((i) => {
      if (i.engine.intake.kind === 'poppet') i.engine.intake.valves = 14;
    })();
    const kinds = partsList(input.engine).filter((part) => part.count % 7 === 0).length;
    return (figureOf(more, 'part-count') - figureOf(input, 'part-count')) / kinds;
  }),
};

export const PEOPLE_HANDBOOK: Record<string, Handbook> = {
  'noise-exposure': near('NIOSH 98-126: 100 dB(A) for 15 min (27 dB more outside muffs over plugs)', 900, () =>
    figureOf(
      reed((i) => {
        i.brief.limits.operatorDistance = 10 ** ((levelAtOneMetre() - 127) / 20);
      })(),
      'noise-exposure',
    ),
  ),
  'noise-stand-off': near(
    'NIOSH 98-126: 100 dB(A) for 15 min against 85 dB(A) for 8 h, 6 dB a doubling',
    10 ** (15 / 20),
    () => {
      const at = (seconds: number) =>
        limitOf(
          reed((i) => {
            i.brief.wanted.endurance = seconds;
          })(),
          'noise-stand-off',
        );
      return at(8 * 3600) / at(900);
    },
  ),
  'radiant-heat': near(
    'Stefan–Boltzmann: a 0.1 × 1 m tube at 1000 K, emissivity 0.75, at 2 m: ε σ T⁴ D L/π r²',
    (0.75 * 5.670374e-8 * (1000 ** 4 - 288.15 ** 4) * 0.1) / (Math.PI * 4),
    () =>
      figureOf(
        reed(
          all(tube(0.1, 1, 1e-3), shellAt(1000, 1e4), (i) => {
            i.brief.limits.operatorDistance = 2;
          }),
        )(),
        'radiant-heat',
      ),
  ),
  'hot-surface': near('ISO 13732-1 (memory, high): bare metal burns in 1 min above 51 °C', 51 + 273.15, () =>
    limitOf(reed()(), 'hot-surface'),
  ),
  // 10 % of the heat is missing: at 28 % of the heat for CO (ΔHf 110.5 of 393.5 kJ/mol), 13.9 % of the carbon.
  'carbon-monoxide': near(
    'NIOSH IDLH 1200 ppm of 100 m³; carbon balance with heats of formation, propane 36.03/44.10 carbon',
    (1200e-6 * 100 * (STANDARD_AIR / (8.31446 * 288.15)) * 0.02801) /
      (0.007 * (36.03 / 44.1) * (0.1 / (1 - 110.5 / 393.5)) * (28.01 / 12.011)),
    () => figureOf(reed()(), 'carbon-monoxide'),
    5e-3,
  ),
};

export const BRIEF_HANDBOOK: Record<string, Handbook> = {
  thrust: near(
    'AIAA 2005-0228: 102 lbf is 453.7 N',
    102,
    () => {
      const input = reed((i, r) => {
        r.thrust = 453.7;
        i.brief.wanted.thrust = 100;
      })();
      return spoken(checkOf(input, 'thrust').sentence, /\(([\d.]+) lbf\)/);
    },
    1e-3,
  ),
  tsfc: near(
    'units: 2.5 lb/(lbf·h) is 0.2549 kg/(N·h)',
    2.5,
    () => {
      const input = reed((i, r) => {
        r.tsfc = 0.25493 / 3600;
        i.brief.wanted.maxTsfc = 1e-4;
      })();
      return spoken(checkOf(input, 'tsfc').sentence, /\(([\d.]+) lb\/\(lbf·h\)\)/);
    },
    1e-3,
  ),
  length: between('plane geometry: sections of 0.3, 0.2 and 0.8 m, and an intake before them', 1.3, 1.45, () =>
    figureOf(reed()(), 'length'),
  ),
  diameter: between('plane geometry: a chamber of 0.16 m and its flange', 0.16, 0.24, () =>
    figureOf(reed()(), 'diameter'),
  ),
  mass: near(
    'plane geometry: 0.5 m more of Ø 0.1 × 1.2 mm tube of 7930 kg/m³ adds π (D + t) t L ρ',
    Math.PI * 0.1012 * 1.2e-3 * 0.5 * 7930,
    () => {
      const longer = reed((i) => {
        i.engine.sections[2].length += 0.5;
      })();
      return figureOf(longer, 'mass') - figureOf(reed()(), 'mass');
    },
    1e-3,
  ),
  budget: near('arithmetic: a spark plug of 6 more costs 6 more', 6, () => {
    const cost = (hardware: Record<string, number>) =>
      figureOf(
        reed((i, r) => {
          onPetrol(0.5)(i, r);
          i.brief.wanted.maxCost = 1000;
          i.brief.prices.hardware = hardware;
        })(),
        'budget',
      );
    return cost({ 'spark plug': 6 }) - cost({});
  }),
};
