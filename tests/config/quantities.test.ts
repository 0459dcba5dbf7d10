import { describe, expect, it } from 'vitest';
import { type QuantityKind, readQuantity } from '../../src/config/quantities.ts';

function si(text: string, kind: QuantityKind): number {
  const reading = readQuantity(text, kind);
  if (!reading.ok) throw new Error(`${reading.expected} / ${reading.found}`);
  return reading.value;
}

describe('quantities as people write them', () => {
  // Exact definitions: international yard and pound (1959), NIST SP 811 appendix B.
  it.each([
    ['40 lbf', 'force', 40 * 4.4482216152605],
    ['1.25 in', 'length', 0.03175],
    ['1 1/4 in', 'length', 0.03175],
    ['5/8"', 'length', 0.015875],
    ['12 degC', 'temperature', 285.15],
    ['12 °C', 'temperature', 285.15],
    ['50 degF', 'temperature', 283.15],
    ['3 bar', 'gauge pressure', 3e5],
    ['30 psig', 'gauge pressure', 30 * 6894.757293168],
    ['29.92 inHg', 'absolute pressure', 29.92 * 3386.389],
    ['45 min', 'time', 2700],
    ['2.5 lb/(lbf h)', 'tsfc', (2.5 * 0.45359237) / 4.4482216152605 / 3600],
    ['0.25 kg/(N h)', 'tsfc', 0.25 / 3600],
    ['200 L/min', 'volume flow', 0.2 / 60],
    ['250 cfm', 'volume flow', (250 * 0.3048 ** 3) / 60],
    ['2 N/mm', 'stiffness', 2000],
    ['180 deg', 'angle', Math.PI],
    ['600 cm²', 'area', 0.06],
    ['20 MB', 'data', 160e6],
  ] as [string, QuantityKind, number][])('%s is %s', (text, kind, value) => {
    expect(si(text, kind) / value).toBeCloseTo(1, 9);
  });

  // Manufacturers' standard gauge, published table.
  it.each([
    ['16 gauge', 0.0598],
    ['18 ga', 0.0478],
    ['20 gage', 0.0359],
    ['22 Gauge', 0.0299],
  ])('%s by the published gauge table', (text, inches) => {
    expect(si(text, 'thickness')).toBeCloseTo(inches * 0.0254, 9);
  });

  it('keeps the noise of conversion out of the canonical form', () => {
    expect(si('18 mm', 'length')).toBe(0.018);
  });
});

describe('quantities that are refused', () => {
  it.each([
    [40, 'force', 'the number 40 without a unit'],
    ['40', 'force', 'the number 40 without a unit'],
    ['40 lb', 'force', 'a mass (a pound of force is "lbf"'],
    ['12 C', 'temperature', 'write "degC"'],
    ['1,25 in', 'length', 'decimal point'],
    ['3 furlongs', 'force', 'unit is not known'],
    ['-3 mm', 'length', '"-3 mm"'],
    ['0 mm', 'length', '"0 mm"'],
    ['1e99 m', 'length', '"1e99 m"'],
    ['18 gauge', 'force', 'sheet thickness'],
    ['99 gauge', 'thickness', '"99 gauge"'],
    ['18 swg', 'thickness', 'wire gauge'],
    ['3 psig', 'absolute pressure', 'gauge pressure'],
    [null, 'length', 'an empty value'],
    [undefined, 'length', 'nothing'],
    [['1 m'], 'length', 'a list'],
    ['', 'length', '""'],
    [`1 m${' '.repeat(10)}${'*m'.repeat(40)}`, 'length', 'characters'],
  ] as [unknown, QuantityKind, string][])('%j as %s', (input, kind, found) => {
    const reading = readQuantity(input, kind);
    expect(reading.ok).toBe(false);
    if (reading.ok) return;
    expect(reading.found).toContain(found);
    expect(reading.expected.length).toBeGreaterThan(5);
  });

  it('never evaluates what looks like an expression', () => {
    for (const text of [
      '1 m; import({})',
      'createUnit("x")',
      '1 cos(3)',
      '2 + 3 m',
      'f(x)=x m',
      '1 constructor',
      '1 __proto__',
    ]) {
      expect(readQuantity(text, 'length').ok).toBe(false);
    }
  });

  it('shows by example what to write', () => {
    const reading = readQuantity(40, 'force');
    expect(reading).toMatchObject({ ok: false, expected: 'a force with its unit, for example "40 lbf"' });
  });
});
