/** Page one in sentences: which engine to build, with numbers, bands and trust; why not the others; what was explored. */
import { figure } from '../../shared/checks/say.ts';
import type { IntakeChoice } from '../config/study.ts';
import type { StudyEvidence } from './evidence.ts';
import { closed, fuelWords, lifeWords, moreOrLess, shareWords, thrustWords, withoutCapital } from './phrases.ts';
import { lowerQuartileLog, upperQuartile } from './quantiles.ts';
import type { ArchitectureResult, Candidate } from './results.ts';

const INTAKE_NAMES: Record<IntakeChoice, string> = {
  reed: 'reed valves',
  poppet: 'poppet valves',
  'valveless-straight': 'a straight valveless engine',
  'valveless-u': 'a U-bent valveless engine',
};

export function answerSentences(
  evidence: StudyEvidence,
  candidates: readonly Candidate[],
  architectures: readonly ArchitectureResult[],
): string[] {
  const best = candidates.find((candidate) => candidate.feasible) ?? null;
  return [
    ...(best === null ? noneSentences(candidates, architectures) : bestSentences(best, candidates)),
    ...whyNot(best, candidates, architectures),
    exploredSentence(evidence),
  ];
}

function bestSentences(best: Candidate, candidates: readonly Candidate[]): string[] {
  const sentences = [`Build ${best.id}: ${best.architecture.label}. ${figuresOf(best)}`, trustOf(best)];
  const rivals = candidates.filter(
    (candidate) => candidate.feasible && candidate.nonDominated && candidate.id !== best.id,
  );
  const longer = pick(rivals, (c) => -(c.robustness.valveLife?.median ?? 0));
  const thriftier = pick(rivals, (c) => c.robustness.tsfc?.median ?? Infinity);
  if (longer !== null && lifeOf(longer) > 1.1 * lifeOf(best)) {
    sentences.push(
      `If life counts more, ${longer.id} (${longer.architecture.label}): it lasts ${times(lifeOf(longer), lifeOf(best))} and uses ${moreOrLess(fuelOf(longer), fuelOf(best), 'more', 'less')} fuel.`,
    );
  }
  if (thriftier !== null && fuelOf(thriftier) < 0.97 * fuelOf(best)) {
    sentences.push(
      `If fuel counts more, ${thriftier.id} (${thriftier.architecture.label}): it uses ${moreOrLess(fuelOf(thriftier), fuelOf(best), 'more', 'less')} fuel and lasts ${times(lifeOf(thriftier), lifeOf(best))}.`,
    );
  }
  return sentences;
}

function figuresOf({ performance, robustness, assessment }: Candidate): string {
  const { running } = performance;
  if (running === null) return 'It does not run by itself.';
  const thrust = thrustWords(robustness.thrust?.median ?? running.thrust, robustness.thrust);
  const fuel = fuelWords(robustness.tsfc?.median ?? running.tsfc);
  const life = robustness.valveLife ?? assessment.valveLife;
  const lasting =
    life === null
      ? ''
      : `; its ${assessment.valveLifeCycles !== null && running.valve !== null ? 'valves' : 'shell'} should last ${lifeWords(life)}`;
  return `It gives ${thrust} at ${figure(running.frequency)} Hz and uses ${fuel}${lasting}.`;
}

function trustOf({ robustness }: Candidate): string {
  const { draws, sustainChance, feasibleChance } = robustness;
  const runs = shareWords(sustainChance, draws);
  const meets = Math.round(feasibleChance * draws);
  return `With the model's constants and the workshop's tolerances varied within their errors it runs by itself in ${runs} draws and meets every wish in ${meets}${feasibleChance < 0.5 ? ', so its margins are thin' : ''}.`;
}

function noneSentences(candidates: readonly Candidate[], architectures: readonly ArchitectureResult[]): string[] {
  const nearest = candidates[0];
  if (nearest !== undefined) {
    const failing = nearest.assessment.checks.find((check) => check.binding && check.verdict === 'fail');
    const stopped = failing
      ? ` What stops it: ${closed(failing.sentence)}`
      : ' It runs too seldom when constants and tolerances are varied.';
    return [
      `No design meets every wish. The nearest is ${nearest.id}: ${nearest.architecture.label}. ${figuresOf(nearest)}${stopped}`,
      trustOf(nearest),
    ];
  }
  const closest = architectures.find(({ leastViolating }) => leastViolating !== null) ?? architectures[0];
  if (closest === undefined) return ['Nothing could be explored.'];
  return [
    `No design runs by itself. The nearest architecture is ${closest.architecture.label}: ${closed(withoutCapital(closest.reason))}`,
    closest.freedBy,
  ].filter((sentence) => sentence !== '');
}

/** One sentence for each kind of intake that is not the answer. */
function whyNot(
  best: Candidate | null,
  candidates: readonly Candidate[],
  architectures: readonly ArchitectureResult[],
): string[] {
  const intakes = [...new Set(architectures.map(({ architecture }) => architecture.intake))];
  return intakes.flatMap((intake): string[] => {
    if (intake === best?.architecture.intake) return [];
    const own = architectures.filter(({ architecture }) => architecture.intake === intake);
    const working = candidates.find((candidate) => candidate.feasible && candidate.architecture.intake === intake);
    if (working && best) {
      return [
        `Why not ${INTAKE_NAMES[intake]}? The best of them, ${working.id}, uses ${moreOrLess(fuelOf(working), fuelOf(best), 'more', 'less')} fuel than ${best.id} and lasts ${times(lifeOf(working), lifeOf(best))}.`,
      ];
    }
    if (own.some(({ feasible }) => feasible > 0)) {
      return [
        `Why not ${INTAKE_NAMES[intake]}? Some designs met every wish in the search, but none kept its place when it was looked at closely.`,
      ];
    }
    const told = own.find(({ forces, reason }) => forces !== null && reason !== '') ?? own[0];
    return [`Why not ${INTAKE_NAMES[intake]}? ${closed(told.reason)}${told.freedBy === '' ? '' : ` ${told.freedBy}`}`];
  });
}

function exploredSentence({ architectures, evaluations, stoppedBecause }: StudyEvidence): string {
  const designs = architectures.reduce((sum, a) => sum + a.evaluations, 0);
  const running = architectures.reduce((sum, a) => sum + a.running, 0);
  const feasible = architectures.reduce((sum, a) => sum + a.feasible, 0);
  return (
    `Explored: ${designs} designs in ${architectures.length} ${architectures.length === 1 ? 'architecture' : 'architectures'}, ${evaluations.total} simulations in all; ` +
    `${running} designs ran by themselves and ${feasible} met every wish. The search stopped because: ${closed(withoutCapital(stoppedBecause))}`
  );
}

function fuelOf({ robustness, performance }: Candidate): number {
  return robustness.tsfc === null ? (performance.running?.tsfc ?? Number.NaN) : upperQuartile(robustness.tsfc);
}

function lifeOf({ robustness, assessment }: Candidate): number {
  const life = robustness.valveLife ?? assessment.valveLife;
  return life === null ? Number.NaN : lowerQuartileLog(life);
}

/** "2.1 times as long", "as long". */
function times(value: number, other: number): string {
  const ratio = value / other;
  return Math.abs(ratio - 1) < 0.05 ? 'as long' : `${figure(ratio, 2)} times as long`;
}

function pick(candidates: readonly Candidate[], key: (candidate: Candidate) => number): Candidate | null {
  return candidates.length === 0 ? null : candidates.reduce((a, b) => (key(b) < key(a) ? b : a));
}
