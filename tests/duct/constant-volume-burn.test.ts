import { describe, expect, it } from 'vitest';
import { applyCellSources, makeCellSources } from '../../shared/combustion/cell-sources.ts';
import { makeGasClosure } from '../../shared/duct/flow.ts';
import { calibratedConstants } from '../../shared/engine/constants.ts';
import { FUELS } from '../../shared/gas/fuels.ts';
import { makeGasTable } from '../../shared/gas/gas-table.ts';
import { adiabaticFlameTemperature } from '../../shared/reference/adiabatic-flame.ts';
import { march, startFlow, tube } from './support.ts';

describe('a sealed, insulated, sparked charge', () => {
  it.each([
    ['propane', 1],
    ['propane', 0.75],
    ['petrol', 1],
  ] as const)('of %s at φ %d burns to the frozen flame temperature at constant volume', (name, equivalenceRatio) => {
    const fuel = FUELS[name];
    const fuelFraction = equivalenceRatio / (equivalenceRatio + fuel.stoichiometricAirFuelRatio);
    const flow = startFlow(tube(10, 0.1, 1e-3), makeGasClosure(makeGasTable(name)), () => ({
      pressure: 101_325,
      temperature: 298.15,
      fuel: fuelFraction,
    }));
    // No friction means no heat to the wall; turbulence is given and stays.
    const sources = makeCellSources(flow, { ...calibratedConstants(), friction: 0, turbulenceDecay: 0 }, fuel, 298.15);
    for (let i = 0; i < flow.grid.cells; i++) flow.turbulence[i] = 400 * flow.mass[i];
    let released = 0;
    const mass = 0.1 * 1e-3 * flow.mass[0];
    march(flow, 0.1, {
      sources: (dt) => {
        applyCellSources(flow, sources, dt, 0, true);
        released += sources.heatReleased;
      },
    });
    const expected = adiabaticFlameTemperature({
      fuel: name,
      equivalenceRatio,
      temperature: 298.15,
      pressure: 101_325,
      held: 'volume',
      dissociation: false,
    });
    expect(Math.abs(released / (mass * fuelFraction * fuel.lowerHeatingValue) - 1)).toBeLessThan(0.002);
    // Petrol’s tabled heating value and air need are not quite those of its surrogate vapour.
    expect(Math.abs(flow.temperature[5] / expected - 1)).toBeLessThan(name === 'petrol' ? 0.015 : 0.003);
    const products = (1 + fuel.stoichiometricAirFuelRatio) * fuelFraction;
    expect(flow.product[5]).toBeCloseTo(products, 3);
  });
});
