/** Why an architecture failed, or what holds it back, in one or two sentences with numbers, and the smallest change that would free it. */
import type { Check } from '../../shared/checks/check.ts';
import { figure } from '../../shared/checks/say.ts';
import type { ValveMotion } from '../../shared/engine/performance.ts';
import type { ArchitectureEvidence } from './evidence.ts';
import { closed, constraintWords } from './phrases.ts';
import type { ArchitectureResult } from './results.ts';

export interface Reason {
  reason: string;
  freedBy: string;
  forces: ArchitectureResult['forces'];
  bindingConstraint: string;
}

/** For an architecture without a feasible design; `all` are the architectures of the study. */
export function failureReason(evidence: ArchitectureEvidence, all: readonly ArchitectureEvidence[] = []): Reason {
  const told = ownReason(evidence);
  return told.freedBy === '' ? { ...told, freedBy: nearestRelation(evidence, all) } : told;
}

function ownReason(evidence: ArchitectureEvidence): Reason {
  const { nearest, evaluations, running, failures } = evidence;
  if (nearest === null) {
    const most = failures[0];
    const reason =
      evaluations === 0
        ? `Geometry refused every design${most ? `, most often for "${constraintWords(most.reason)}"` : ''}; none was simulated.`
        : `None of ${evaluations} designs ran${most ? `; the most frequent cause was "${constraintWords(most.reason)}"` : ''}.`;
    const freedBy = evidence.objection === undefined ? '' : `The nearest design: ${closed(evidence.objection)}`;
    return { reason, freedBy, forces: null, bindingConstraint: most?.reason ?? '' };
  }
  const { performance } = nearest.result;
  const valve = performance.running?.valve ?? performance.failedValve;
  const forces = valve === null ? null : forcesOf(valve);
  if (nearest.summary.status === 'ok') {
    const broken = brokenChecks(evidence);
    const worst = broken[0];
    return {
      reason: `${running} of ${evaluations} designs ran by themselves, and none is allowed. The nearest: ${closed(worst?.sentence ?? 'it breaks a binding check')}`,
      freedBy: broken.slice(0, 3).map(relief).join(' '),
      forces,
      bindingConstraint: worst?.id ?? worstViolation(evidence),
    };
  }
  const { message } = performance.verdict;
  const doesNotFollow = valve !== null && valve.followRatio < 1 && forces !== null;
  // The forces say what stopped it; the verdict's own account of them would say it twice.
  const story = doesNotFollow ? `${message.split(':')[0]}: ${forcesWords(forces)}` : message;
  return {
    reason: `None of ${evaluations} designs ran by itself. The nearest: ${closed(story)}`,
    freedBy: valve === null ? '' : cureWords(valve),
    forces,
    // That it dies is what follows; that its valve does not follow is what binds.
    bindingConstraint: doesNotFollow ? 'valve-follows' : worstViolation(evidence) || nearest.summary.reason,
  };
}

/**
 * Where neither the valve nor a check names a cure: the architecture that differs by one choice only (feed before augmenter
 * before intake) and fares better, as a sentence; '' when none does.
 */
function nearestRelation(evidence: ArchitectureEvidence, all: readonly ArchitectureEvidence[]): string {
  const own = evidence.architecture;
  const differences = ({ intake, augmenter, feed }: ArchitectureEvidence['architecture']): number[] =>
    [feed.fuel !== own.feed.fuel || feed.mode !== own.feed.mode, augmenter !== own.augmenter, intake !== own.intake]
      .map((differs, choice) => (differs ? choice + 1 : 0))
      .filter((choice) => choice > 0);
  const better = all
    .map((other) => ({ other, differs: differences(other.architecture) }))
    .filter(({ other, differs }) => differs.length === 1 && other.running > evidence.running)
    .sort((a, b) => Number(b.other.feasible > 0) - Number(a.other.feasible > 0) || a.differs[0] - b.differs[0]);
  if (better.length === 0) return '';
  const { architecture, running, feasible, evaluations } = better[0].other;
  const fared = feasible > 0 ? `${feasible} met every wish` : `${running} ran by themselves`;
  return `The smallest change that was tried and helps is ${architecture.label}: of ${evaluations} designs ${fared}.`;
}

/**
 * Force that suction offers and force needed, time within which the valve must be open and time that it takes. The force
 * needed is by definition that for half of the window, and travel from rest under a constant force takes t ∝ 1/√F.
 */
export function forcesOf(valve: ValveMotion): ArchitectureResult['forces'] {
  const { forceOffered, forceNeeded, followRatio, suctionWindow } = valve;
  if (!(followRatio > 0 && suctionWindow > 0)) return null;
  return {
    offered: forceOffered,
    needed: forceNeeded,
    timeOffered: suctionWindow / 2,
    timeNeeded: suctionWindow / 2 / Math.sqrt(followRatio),
  };
}

/** "suction offers one valve 3.1 N of the 40 N that it needs; with that it takes about 7.2 ms to open and has 2 ms". */
export function forcesWords(forces: NonNullable<ArchitectureResult['forces']>): string {
  const { offered, needed, timeOffered, timeNeeded } = forces;
  return (
    `suction offers one valve ${figure(offered, 2)} N of the ${figure(needed, 2)} N that it needs; ` +
    `with that force it takes about ${figure(timeNeeded * 1e3, 2)} ms to open and has ${figure(timeOffered * 1e3, 2)} ms`
  );
}

/** The smallest change that would let the valve follow, as a sentence; '' when the model names none. */
function cureWords(valve: ValveMotion): string {
  if (valve.cures === null) return '';
  const cure = smallestCure(valve);
  return cure === null
    ? 'No single change of mass, lift, spring or number of valves would free it.'
    : `The smallest single change that would let the valve follow is ${cure}.`;
}

/** "a lift of 1.8 mm instead of 8.5 mm": the cure that changes its figure by the smallest factor; null when there is none. */
function smallestCure(valve: ValveMotion): string | null {
  if (valve.cures === null) return null;
  const { mass, lift, stiffness, valves } = valve.cures;
  const ways: { factor: number; words: string }[] = [];
  if (mass !== null && mass > 0) {
    ways.push({
      factor: valve.movingMass / mass,
      words: `a moving mass of ${figure(mass * 1e3, 2)} g a valve instead of ${figure(valve.movingMass * 1e3, 2)} g`,
    });
  }
  if (lift !== null && lift > 0) {
    ways.push({
      factor: valve.stopLift / lift,
      words: `a lift of ${figure(lift * 1e3, 2)} mm instead of ${figure(valve.stopLift * 1e3, 2)} mm`,
    });
  }
  if (stiffness !== null && stiffness > 0) {
    const present = (2 * Math.PI * valve.naturalFrequency) ** 2 * valve.movingMass;
    ways.push({
      factor: present / stiffness,
      words: `a spring rate of ${figure(stiffness, 2)} N/m instead of ${figure(present, 2)} N/m`,
    });
  }
  if (valves !== null && valves > 0)
    ways.push({ factor: valves, words: `${Math.ceil(valves)} valves that share the same port area` });
  if (ways.length === 0) return null;
  const distance = ({ factor }: { factor: number }): number => Math.abs(Math.log(factor));
  return ways.reduce((a, b) => (distance(b) < distance(a) ? b : a)).words;
}

/** Failed binding checks of the nearest design, worst first. */
export function brokenChecks({ nearest }: ArchitectureEvidence): Check[] {
  if (nearest === null) return [];
  const weight = new Map(nearest.summary.violations.map(({ id, violation }) => [id, violation]));
  return nearest.result.assessment.checks
    .filter((check) => check.binding && check.verdict === 'fail')
    .sort((a, b) => (weight.get(b.id) ?? 0) - (weight.get(a.id) ?? 0));
}

function relief({ title, value, limit, unit }: Check): string {
  if (value === null || limit === null) return `"${title}" would have to pass.`;
  const words = (x: number): string => `${figure(x)}${unit === '' ? '' : ` ${unit}`}`;
  return `"${title}" would have to move from ${words(value)} to ${words(limit)}, or its limit to ${words(value)}.`;
}

function worstViolation({ nearest }: ArchitectureEvidence): string {
  const violations = nearest?.summary.violations ?? [];
  return violations.length === 0 ? '' : violations.reduce((a, b) => (b.violation > a.violation ? b : a)).id;
}
