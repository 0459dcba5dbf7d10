import { describe, expect, it } from 'vitest';
import { bandMetric, bandPhrase, rangePhrase } from '../../src/report/format/band.ts';
import { duration, elapsed } from '../../src/report/format/duration.ts';
import { cssString, escapeMarkup } from '../../src/report/format/escape.ts';
import { chance, fixed, percent, significant } from '../../src/report/format/number.ts';
import { both, imperial, metric } from '../../src/report/format/quantity.ts';
import { flagRows, splitFlags } from '../../src/report/view/flags.ts';
import { check } from '../support/fixtures.ts';

const plain = (text: string) => text.replaceAll('\u00a0', ' ');

describe('units, against the definitions in NIST SP 811', () => {
  it.each([
    // 1 lbf = 4.4482216152605 N
    [444.82216, 'N', '445 N', '100 lbf'],
    // 1 lb/(lbf·h) = 0.45359237/(4.4482216 · 3600) kg/(N s)
    [0.45359237 / (4.4482216152605 * 3600), 'kg/(N s)', '0.102 kg/(N·h)', '1.00 lb/(lbf·h)'],
    [0.0254, 'm', '25.4 mm', '1.000 in'],
    [0.00025, 'm', '0.25 mm', '0.0098 in'],
    [3.5, 'm', '3,500 mm', '137.8 in'],
    // 1 psi = 6894.757 Pa
    [137.89514e3, 'Pa', '1.38 bar', '20.0 psi'],
    [12e3, 'Pa', '12.0 kPa', '1.74 psi'],
    [373.15, 'K', '100 °C', '212 °F'],
    [0.45359237, 'kg', '454 g', '16 oz'],
    [2 * 0.45359237, 'kg', '907 g', '32 oz'],
    // 1 lb/min = 7.559873 g/s; 4.5 lb/min
    [0.034019428, 'kg/s', '34.0 g/s', '4.5 lb/min'],
    // 1 ft³/min = 0.4719474 L/s
    [0.04719474, 'm³/s', '47.2 L/s', '100 ft³/min'],
    // 300 kBtu/h
    [87921.321, 'W', '87.9 kW', '300 kBtu/h'],
    [175.12684, 'N/m', '0.175 N/mm', '1.00 lbf/in'],
    [Math.PI, 'rad', '180°', ''],
  ])('%f %s', (value, unit, inMetric, inImperial) => {
    expect(plain(metric(value, unit))).toBe(inMetric);
    expect(plain(imperial(value, unit))).toBe(inImperial);
  });

  it('reads both ways of writing the same unit', () => {
    expect(metric(1e-4, 'kg/(N·s)')).toBe(metric(1e-4, 'kg/(N s)'));
  });

  it('shows a unit that it does not know as it is, and a missing value as a dash', () => {
    expect(plain(metric(12.345, 'µm'))).toBe('12.3 µm');
    expect(both(null, 'N')).toBe('–');
    expect(both(Number.NaN, 'N')).toBe('–');
  });
});

describe('numbers', () => {
  it.each([
    [0, 3, '0'],
    [1234.5, 3, '1,230'],
    [0.0456, 2, '0.046'],
    [9.97, 2, '10'],
    [99.96, 3, '100'],
    [-4.5678, 3, '−4.57'],
    [2.4e-7, 2, '2.4 × 10^−7'],
  ])('%f to %i digits', (value, digits, text) => {
    expect(significant(value, digits)).toBe(text);
  });

  it('never shows minus zero', () => {
    expect(fixed(-0.0001, 2)).toBe('0.00');
  });

  it('keeps small percentages from looking like nothing', () => {
    expect(percent(4e-4)).toBe('0.04 %');
    expect(percent(0.123)).toBe('12 %');
    expect(percent(0.031, { signed: true })).toBe('+3.1 %');
  });

  it('says certainty only when every draw agrees', () => {
    expect(chance(0.999, 1000)).toBe('99 %');
    expect(chance(0.001, 1000)).toBe('1 %');
    expect(chance(1, 64)).toBe('all 64 draws');
    expect(chance(0, 64)).toBe('none of 64 draws');
  });
});

describe('bands', () => {
  it('gives a narrow band the digits that its width allows', () => {
    expect(
      plain(bandPhrase(bandMetric({ low: 0.2134 / 3600, median: 0.2471 / 3600, high: 0.2889 / 3600 }, 'kg/(N s)'))),
    ).toBe('0.25 kg/(N·h) (0.21–0.29)');
  });

  it('shows one unit for all three figures of a life', () => {
    expect(plain(bandPhrase(bandMetric({ low: 700, median: 2400, high: 7300 }, 's')))).toBe('40 min (12–120)');
  });

  it('keeps low, median and high in order for any band', () => {
    for (let i = 0; i < 200; i++) {
      const low = 10 ** ((i % 40) / 5 - 4);
      const median = low * (1 + (i % 7) / 3);
      const high = median * (1 + (i % 11) / 2);
      const text = bandMetric({ low, median, high }, 'N')!;
      const [a, b, c] = [text.low, text.median, text.high].map((t) => Number(t.replaceAll(',', '')));
      expect(a).toBeLessThanOrEqual(b);
      expect(b).toBeLessThanOrEqual(c);
      // Rounding moves no figure by more than a quarter of the width or two digits of itself.
      expect(Math.abs(b - median)).toBeLessThanOrEqual(Math.max((high - low) / 4, median * 0.05, 5e-4));
    }
  });
});

describe('times', () => {
  it.each([
    [0.00315, '3.15 ms'],
    [45, '45 s'],
    [300, '5.0 min'],
    [9000, '2.5 h'],
    [4e6, '46 days'],
  ])('%f s', (seconds, text) => {
    expect(plain(duration(seconds))).toBe(text);
  });

  it('words wall time', () => {
    expect([elapsed(12.4), elapsed(161), elapsed(25_400)]).toEqual(['12 s', '2 min 41 s', '7 h 3 min']);
  });
});

describe('escaping', () => {
  it('makes markup and style strings harmless', () => {
    expect(escapeMarkup(`<b a="1">&'`)).toBe('&lt;b a=&quot;1&quot;&gt;&amp;&#39;');
    expect(escapeMarkup('a\u0000b\u001bc')).toBe('a\ufffdb\ufffdc');
    const css = cssString('x"; } </style><script>\\');
    expect(css).not.toMatch(/[<>;}]/);
    expect(css.slice(1, -1)).not.toContain('"');
  });
});

describe('a band of times wider than one unit', () => {
  it('gives each end the unit that reads best', () => {
    const text = bandMetric({ low: 246, median: 10_440, high: 295_200 }, 's');
    expect(plain(bandPhrase(text))).toBe('2.9 h (4.1 min–82 h)');
    expect(plain(rangePhrase(text))).toBe('4.1 min–82 h');
    expect(plain(bandPhrase(bandMetric({ low: 720, median: 2040, high: 5700 }, 's')))).toBe('34 min (12–95)');
  });
});

describe('flags', () => {
  const stress = check({ id: 'reed-root-stress', unit: 'Pa', value: 220e6, limit: 580e6, margin: 0.62 });

  it('tell stress in MPa and ksi, pressure in bar and psi', () => {
    // 1 ksi = 6.894757 MPa (NIST SP 811).
    const [row] = flagRows([stress]);
    expect([row.value, row.valueImperial, row.limit]).toEqual(['220\u00a0MPa', '31.9\u00a0ksi', '580\u00a0MPa']);
    const [pressure] = flagRows([{ ...stress, id: 'fuel-regulator' }]);
    expect(pressure.value).toBe('2,200\u00a0bar');
  });

  it('do not pretend that a margin far from the limit is known to the percent', () => {
    const margin = (m: number) => flagRows([{ ...stress, margin: m }])[0].margin;
    expect(margin(0.62)).toBe('+62 %');
    expect(margin(-34.94)).toBe('over 10 times short');
    expect(margin(4.2)).toBe('4.2 times clear');
  });

  it('of a compact sheet name what passed in a few words', () => {
    const { open, passed } = splitFlags(flagRows([stress, { ...stress, id: 'other', verdict: 'fail' }]));
    expect(open.map(({ id }) => id)).toEqual(['other']);
    expect(passed).toEqual([`${stress.title}: 220\u00a0MPa, limit 580\u00a0MPa, +62 %`]);
  });
});
