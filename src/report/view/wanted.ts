/** What the study was asked for, line by line; what was left open is left out. */
import type { Study } from '../../config/study.ts';
import { INTAKE_NAMES } from '../format/architecture-name.ts';
import { duration } from '../format/duration.ts';
import { both } from '../format/quantity.ts';
import { money } from './key-figures.ts';

export interface Line {
  label: string;
  value: string;
}

const ORDERS: Record<Study['ranking']['method'], string> = {
  weighted: 'weighted sum of TSFC and valve life',
  knee: 'knee of the non-dominated line first',
  'life-at-bounded-tsfc': 'longest valve life with TSFC below a bound',
};

export function wantedLines(study: Study): Line[] {
  const { wanted } = study.brief;
  const lines: (Line | null)[] = [
    wanted.thrust === null ? null : { label: 'Thrust', value: both(wanted.thrust, 'N') },
    wanted.endurance === null ? null : { label: 'Running time', value: duration(wanted.endurance) },
    wanted.maxTsfc === null ? null : { label: 'TSFC at most', value: both(wanted.maxTsfc, 'kg/(N s)') },
    wanted.maxLength === null ? null : { label: 'Length at most', value: both(wanted.maxLength, 'm') },
    wanted.maxDiameter === null ? null : { label: 'Diameter at most', value: both(wanted.maxDiameter, 'm') },
    wanted.maxMass === null ? null : { label: 'Mass at most', value: both(wanted.maxMass, 'kg') },
    wanted.maxCost === null ? null : { label: 'Cost at most', value: money(wanted.maxCost, study.brief.currency) },
    { label: 'Air at the site', value: `${both(study.site.pressure, 'Pa')}, ${both(study.site.temperature, 'K')}` },
    { label: 'Intakes explored', value: study.space.intakes.map((i) => INTAKE_NAMES[i]).join(', ') },
    { label: 'Order of merit', value: orderOfMerit(study) },
  ];
  return lines.filter((line) => line !== null);
}

export function orderOfMerit(study: Study): string {
  const { ranking } = study;
  if (ranking.method === 'weighted')
    return `${ORDERS.weighted}, weights ${ranking.tsfcWeight} and ${ranking.lifeWeight}`;
  if (ranking.method === 'life-at-bounded-tsfc' && ranking.tsfcBound !== null)
    return `longest valve life with TSFC below ${both(ranking.tsfcBound, 'kg/(N s)')}`;
  return ORDERS[ranking.method];
}
