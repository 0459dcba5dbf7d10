import { VALVE_MATERIALS } from '../durability/valve-materials.ts';
import type { Facts } from './facts.ts';
import { atLeast, type CheckRule, notApplicable, noWorseThanCaution } from './rule.ts';
import { duration, figure } from './say.ts';

/** Median life against the endurance wanted; a low end below it is a caution. */
export const valveLifeCheck: CheckRule = {
  id: 'valve-life',
  title: 'Valve outlives the run',
  source:
    'Basquin (1910) with SAE J1099 exponents, Goodman and Smith–Watson–Topper mean stress, Hunt (1960) impact stress; lognormal scatter',
  binding: true,
  judge(facts) {
    const { engine, running, brief, endurance, life } = facts;
    if (running === null) return notApplicable('The engine does not run.');
    if (engine.intake.kind === 'valveless') return notApplicable('There is no valve; see the life of the shell.');
    const { band, cycles, limiter } = life();
    const found = `${duration(band.low)} to ${duration(band.high)}, middle ${duration(band.median)} (${count(cycles.median)} cycles), by ${limiter}`;
    const asked =
      brief.wanted.endurance === null ? `${duration(endurance)} (no endurance stated)` : duration(endurance);
    const cure = `${cureOf(limiter)}${otherStrip(facts)}`;
    const judged = atLeast(
      { value: band.median, limit: endurance, unit: 's', cautionMargin: 0 },
      {
        pass: `Valves last ${found}; ${asked} asked.`,
        caution: `Valves last ${found}; ${asked} asked.`,
        fail: `Valves last ${found}, less than the ${asked} asked: ${cure}.`,
      },
    );
    if (judged.verdict === 'pass' && band.low < endurance) {
      return {
        ...judged,
        verdict: 'caution',
        sentence: `Valves last ${found}: an unlucky set breaks before ${asked}; carry spares, or ${cure}.`,
      };
    }
    return brief.wanted.endurance === null ? noWorseThanCaution(judged) : judged;
  },
};

function cureOf(limiter: string): string {
  if (limiter.includes('seat'))
    return 'less lift slows the blow on the seat, and a strip of higher fatigue strength bears more';
  if (limiter.includes('stop')) return 'less lift, a flatter stop, a softer landing or thinner strip';
  if (limiter.includes('port')) return 'narrower ports or thicker strip';
  if (limiter.includes('root')) return 'a longer or thinner petal';
  return 'a lighter valve, less lift, a thicker head or valves in one piece';
}

/** What the best other strip would give, when it gives more. */
function otherStrip({ life, strips }: Facts): string {
  const [best] = strips();
  if (best === undefined || best.band.median < 1.05 * life().band.median) return '';
  return `, or take ${VALVE_MATERIALS[best.material].name}, in which the same petal lasts about ${duration(best.band.median)}`;
}

function count(cycles: number): string {
  return cycles < 1e6 ? figure(cycles, 2) : `${figure(cycles / 1e6, 2)} million`;
}
