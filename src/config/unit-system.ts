/**
 * The unit reader: a mathjs instance that knows units and nothing else. It never sees expressions, only one quantity at a time,
 * and the functions that could reach further are switched off once the trade's own units are defined.
 */
import { create, createUnitDependencies, unitDependencies } from 'mathjs';

interface UnitMath {
  unit(text: string): { dimensions: number[]; toSI(): { toJSON(): { value: number | null } } };
  createUnit(definitions: Record<string, string>): unknown;
  import(functions: Record<string, () => never>, options: { override: boolean }): void;
}

/** Units that workshops use and mathjs lacks. inHg and inH2O: conventional values, NIST SP 811 appendix B. */
const TRADE_UNITS: Record<string, string> = {
  inHg: '3386.389 Pa',
  inH2O: '249.0889 Pa',
  barg: '100000 Pa',
  psig: '1 psi',
  psia: '1 psi',
  cfm: '1 ft^3/min',
  thou: '0.001 in',
};

function createRestricted(): UnitMath {
  const math = create({ unitDependencies, createUnitDependencies }) as unknown as UnitMath;
  math.createUnit(TRADE_UNITS);
  const refuse = (): never => {
    throw new Error('not available to configuration text');
  };
  math.import(
    { createUnit: refuse, evaluate: refuse, parse: refuse, compile: refuse, parser: refuse },
    { override: true },
  );
  math.import = refuse;
  return math;
}

const unitMath = createRestricted();

/** Base dimensions that mathjs counts: mass, length, time, current, temperature, luminous intensity, amount, angle, bit. */
export type DimensionExponents = readonly [number, number, number, number, number, number, number, number, number];

export type UnitReading = { ok: true; value: number; dimensions: number[] } | { ok: false };

/** Reads "12.5 lb/(lbf h)" and the like: the value in SI base units (bit for data) and its dimension. */
export function readUnit(text: string): UnitReading {
  try {
    const unit = unitMath.unit(text);
    const value = unit.toSI().toJSON().value;
    if (value === null || value === undefined || typeof value !== 'number') return { ok: false };
    return { ok: true, value, dimensions: unit.dimensions };
  } catch {
    return { ok: false };
  }
}
