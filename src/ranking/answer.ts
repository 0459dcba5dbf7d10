/** Page one in short paragraphs: which engine to build, with numbers, bands and trust; why not the others; what was explored. */
import type { IntakeChoice } from '../config/study.ts';
import { brokenChecks, forcesWords } from './architecture-reasons.ts';
import type { StudyEvidence } from './evidence.ts';
import {
  asLong,
  closed,
  fuelAgainst,
  fuelWords,
  lifeWords,
  moreOrLess,
  shareWords,
  thrustWords,
  withoutCapital,
} from './phrases.ts';
import type { ArchitectureResult, Candidate } from './results.ts';

const INTAKE_NAMES: Record<IntakeChoice, string> = {
  reed: 'reed valves',
  poppet: 'poppet valves',
  'valveless-straight': 'a straight valveless engine',
  'valveless-u': 'a U-bent valveless engine',
};

/** Paragraphs, the lead first. */
export function answerParagraphs(
  evidence: StudyEvidence,
  candidates: readonly Candidate[],
  architectures: readonly ArchitectureResult[],
): string[] {
  const best = candidates.find((candidate) => candidate.feasible) ?? null;
  const trusted = best ?? candidates[0] ?? null;
  return [
    ...(best === null ? noneParagraphs(candidates, architectures) : bestParagraphs(best, candidates)),
    ...whyNot(evidence, best, candidates, architectures),
    exploredParagraph(evidence),
    ...(trusted === null ? [] : [trustOf(trusted)]),
  ];
}

function bestParagraphs(best: Candidate, candidates: readonly Candidate[]): string[] {
  const lead = `Build ${best.id}: ${best.architecture.label}. ${figuresOf(best)}`;
  const rivals = candidates.filter(
    (candidate) => candidate.feasible && candidate.nonDominated && candidate.id !== best.id,
  );
  const longer = pick(rivals, (c) => -(c.robustness.valveLife?.median ?? 0));
  const thriftier = pick(rivals, (c) => c.robustness.tsfc?.median ?? Infinity);
  const others: string[] = [];
  if (longer !== null && lifeOf(longer) > 1.1 * lifeOf(best)) {
    others.push(
      `If life counts more, ${longer.id} (${longer.architecture.label}): it lasts ${asLong(lifeOf(longer), lifeOf(best))} and uses ${moreOrLess(fuelOf(longer), fuelOf(best), 'more', 'less')} fuel.`,
    );
  }
  if (thriftier !== null && fuelOf(thriftier) < 0.97 * fuelOf(best)) {
    others.push(
      `If fuel counts more, ${thriftier.id} (${thriftier.architecture.label}): it uses ${moreOrLess(fuelOf(thriftier), fuelOf(best), 'more', 'less')} fuel and lasts ${asLong(lifeOf(thriftier), lifeOf(best))}.`,
    );
  }
  return others.length > 0 ? [lead, others.join(' ')] : [lead];
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
  const frequency = Math.round(robustness.frequency?.median ?? running.frequency);
  return `It gives ${thrust} at ${frequency} Hz and uses ${fuel}${lasting}.`;
}

function trustOf({ id, robustness }: Candidate): string {
  const { draws, sustainChance, feasibleChance } = robustness;
  const runs = shareWords(sustainChance, draws);
  const meets = Math.round(feasibleChance * draws);
  return `How far to trust it: with the model's constants and the workshop's tolerances varied within their errors, ${id} runs by itself in ${runs} draws and meets every wish in ${meets}${feasibleChance < 0.5 ? ', so its margins are thin' : ''}.`;
}

function noneParagraphs(candidates: readonly Candidate[], architectures: readonly ArchitectureResult[]): string[] {
  const nearest = candidates[0];
  if (nearest !== undefined) {
    const failing = nearest.assessment.checks.find((check) => check.binding && check.verdict === 'fail');
    const stopped = failing
      ? ` What stops it: ${closed(failing.sentence)}`
      : ' It runs too seldom when constants and tolerances are varied.';
    return [
      `No design meets every wish. The nearest is ${nearest.id}: ${nearest.architecture.label}. ${figuresOf(nearest)}${stopped}`,
    ];
  }
  const closest = architectures.find(({ leastViolating }) => leastViolating !== null) ?? architectures[0];
  if (closest === undefined) return ['Nothing could be explored.'];
  return [
    `No design runs by itself. The nearest architecture is ${closest.architecture.label}: ${closed(withoutCapital(closest.reason))}`,
    closest.freedBy,
  ].filter((sentence) => sentence !== '');
}

/** One paragraph for each kind of intake that is not the answer, poppets first. */
function whyNot(
  evidence: StudyEvidence,
  best: Candidate | null,
  candidates: readonly Candidate[],
  architectures: readonly ArchitectureResult[],
): string[] {
  const intakes = [...new Set(architectures.map(({ architecture }) => architecture.intake))].sort(
    (a, b) => Number(b === 'poppet') - Number(a === 'poppet'),
  );
  return intakes.flatMap((intake): string[] => {
    if (intake === best?.architecture.intake) return [];
    const own = architectures.filter(({ architecture }) => architecture.intake === intake);
    const working = candidates.find((candidate) => candidate.feasible && candidate.architecture.intake === intake);
    return [`Why not ${INTAKE_NAMES[intake]}? ${reasonAgainst(evidence, own, working ?? null, best)}`];
  });
}

function reasonAgainst(
  evidence: StudyEvidence,
  own: readonly ArchitectureResult[],
  working: Candidate | null,
  best: Candidate | null,
): string {
  if (working && best) {
    return `The best of them, ${working.id}, uses ${fuelAgainst(fuelOf(working), fuelOf(best), best.id)} and lasts ${asLong(lifeOf(working), lifeOf(best))}.`;
  }
  if (own.some(({ feasible }) => feasible > 0)) {
    return 'Some designs met every wish in the search, but none kept its place when it was looked at closely.';
  }
  const designs = own.reduce((sum, { evaluations }) => sum + evaluations, 0);
  const running = own.reduce((sum, a) => sum + a.running, 0);
  const among = `${designs} designs${own.length > 1 ? ` in ${own.length} architectures` : ''}`;
  if (running > 0)
    return `${running} of ${among} ran by themselves, and none is allowed. ${nearestBroken(evidence, own)}`;
  return `None of ${among} ran by itself. ${nearestToFollowing(own)}`.trim();
}

/** What is broken by the design that breaks least. */
function nearestBroken(evidence: StudyEvidence, own: readonly ArchitectureResult[]): string {
  const ids = new Set(own.map(({ architecture }) => architecture.id));
  const near = evidence.architectures.filter(
    ({ architecture, nearest }) => ids.has(architecture.id) && nearest?.summary.status === 'ok',
  );
  const least = pick(near, ({ nearest }) => nearest!.summary.violations.reduce((sum, v) => sum + v.violation, 0));
  const worst = least === null ? undefined : brokenChecks(least)[0];
  return worst === undefined
    ? ''
    : `The nearest (${least!.architecture.label}): ${closed(withoutCapital(worst.sentence))}`;
}

/** The valve that comes nearest to following the suction, or the most frequent cause when no valve was at fault. */
function nearestToFollowing(own: readonly ArchitectureResult[]): string {
  const failing = own.filter(({ forces }) => forces !== null && forces.offered < forces.needed);
  const near = pick(failing, ({ forces }) => forces!.needed / forces!.offered);
  if (near !== null) {
    return `The nearest (${near.architecture.label}): ${forcesWords(near.forces!)}. ${near.freedBy}`.trim();
  }
  const counts = new Map<string, number>();
  for (const { failures } of own)
    for (const { reason, count } of failures) counts.set(reason, (counts.get(reason) ?? 0) + count);
  const most = pick([...counts], ([, count]) => -count);
  return most === null ? '' : `The most frequent cause was "${most[0]}".`;
}

function exploredParagraph({ architectures, evaluations, stoppedBecause }: StudyEvidence): string {
  const designs = architectures.reduce((sum, a) => sum + a.evaluations, 0);
  const running = architectures.reduce((sum, a) => sum + a.running, 0);
  const feasible = architectures.reduce((sum, a) => sum + a.feasible, 0);
  return (
    `Explored: ${designs} designs in ${architectures.length} ${architectures.length === 1 ? 'architecture' : 'architectures'}, ${evaluations.total} simulations in all; ` +
    `${running} designs ran by themselves and ${feasible} met every wish. The search stopped because: ${closed(withoutCapital(stoppedBecause))}`
  );
}

/** Middle of the draws, as the tables show it, so that the reader finds each ratio in them; the rank weighs quartiles. */
function fuelOf({ robustness, performance }: Candidate): number {
  return robustness.tsfc?.median ?? performance.running?.tsfc ?? Number.NaN;
}

function lifeOf({ robustness, assessment }: Candidate): number {
  return (robustness.valveLife ?? assessment.valveLife)?.median ?? Number.NaN;
}

/** The one with the smallest key; the first of equals. */
function pick<T>(from: readonly T[], key: (item: T) => number): T | null {
  return from.length === 0 ? null : from.reduce((a, b) => (key(b) < key(a) ? b : a));
}
