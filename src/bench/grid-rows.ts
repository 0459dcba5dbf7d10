/** The reference engines at the shipped resolution against twice as fine: what the grid still costs in accuracy. */
import {
  droneEngine,
  engine22Inch,
  engine50Cm,
  twelveSmallPoppets,
  valvelessUTube,
} from '../../shared/calibration/reference-engines.ts';
import { shippedCells } from '../../shared/engine/resolution.ts';
import { simulate } from '../../shared/engine/simulate.ts';

export interface GridRow {
  engine: string;
  cells: number;
  /** Change from the shipped to the doubled number of cells, %. */
  thrust: number;
  frequency: number;
  tsfc: number;
}

/** What is asked of the grid, %. */
export const GRID_BAR = 3;

export function gridRows(): GridRow[] {
  const engines = [droneEngine(), engine22Inch(), engine50Cm(), twelveSmallPoppets(), valvelessUTube()];
  return engines.map((engine) => {
    const cells = shippedCells(engine);
    const shipped = simulate(engine).running;
    const fine = simulate(engine, { cells: 2 * cells }).running;
    if (!shipped || !fine) throw new Error(`${engine.name} does not run at ${cells} and ${2 * cells} cells alike.`);
    const change = (key: 'thrust' | 'frequency' | 'tsfc') => 100 * (fine[key] / shipped[key] - 1);
    return {
      engine: engine.name,
      cells,
      thrust: change('thrust'),
      frequency: change('frequency'),
      tsfc: change('tsfc'),
    };
  });
}
