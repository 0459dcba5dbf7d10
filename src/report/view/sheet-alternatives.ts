/** What thicker or better sheet gains, as a table. */
import type { Candidate, SheetChoice } from '../../ranking/results.ts';
import { duration } from '../format/duration.ts';
import { fixed, percent } from '../format/number.ts';
import { both } from '../format/quantity.ts';

export interface AlternativeRow {
  sheet: string;
  present: boolean;
  yieldUse: string;
  scaling: string;
  oxidation: string;
  creep: string;
  mass: string;
}

/** Longer lives than this are only known to be long. */
const LONG = 3600 * 10_000;

function life(seconds: number | null): string {
  return seconds === null || seconds > LONG ? 'over 10,000 h' : duration(seconds);
}

function scaling(kelvin: number): string {
  return `${fixed(Math.abs(kelvin), 0)} K ${kelvin > 0 ? 'over' : 'clear'}`;
}

export function alternativeRows({ alternatives = [] }: Candidate): AlternativeRow[] {
  return alternatives.map(
    (choice: SheetChoice): AlternativeRow => ({
      sheet: `${choice.name}, ${both(choice.thickness, 'm')}, gauge ${choice.gauge}`,
      present: choice.present,
      yieldUse: percent(choice.yieldUse),
      scaling: scaling(choice.overScalingLimit),
      oxidation: life(choice.oxidationLife),
      creep: life(choice.creepLife),
      mass: choice.present ? 'as it is' : percent(choice.massRatio - 1, { signed: true }),
    }),
  );
}
