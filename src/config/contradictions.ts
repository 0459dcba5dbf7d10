/**
 * Settings that are each well written but cannot stand together. They are looked for in the file's own data, before conversion,
 * so that they are listed together with every other mistake.
 */
import type { Path } from './source-text.ts';

export interface Contradiction {
  path: Path;
  expected: string;
  found: string;
}

type Data = Record<string, unknown>;

/** Contradictions of a study file. */
export function studyContradictions(file: unknown): Contradiction[] {
  const found: Contradiction[] = [];
  const explore = section(section(file).explore);
  const intakes = list(explore.intakes);
  const feeds = list(explore.feeds).map(section);

  for (const [intake, key] of [
    ['reed', 'reed'],
    ['poppet', 'poppet'],
    ['valveless-straight', 'valveless'],
    ['valveless-u', 'valveless'],
  ] as const) {
    if (!intakes.includes(intake) || isSection(explore[key]) || (explore[key] !== undefined && explore[key] !== null))
      continue;
    if (found.some((problem) => problem.path[1] === key)) continue;
    found.push({
      path: ['explore', key],
      expected: `ranges for the intake "${intake}" (write "${key}: {}" for the default ranges)`,
      found: 'no such section',
    });
  }

  const valveless = intakes.filter((intake) => String(intake).startsWith('valveless'));
  if (valveless.length > 0 && feeds.length > 0 && feeds.every((feed) => feed.mode === 'premixed')) {
    found.push({
      path: ['explore', 'feeds'],
      expected: 'a feed that injects fuel (steady-injection or timed-injection) for the valveless intakes',
      found: 'only premixed feeds: an open intake would blow the mixture out',
    });
  }

  const supply = section(section(file).supply);
  if (typeof supply.fuel === 'string' && feeds.length > 0 && !feeds.some((feed) => feed.fuel === supply.fuel)) {
    found.push({
      path: ['supply', 'fuel'],
      expected: `a fuel that one of the feeds burns (${[...new Set(feeds.map((feed) => String(feed.fuel)))].join(', ').slice(0, 60)})`,
      found: JSON.stringify(supply.fuel.slice(0, 60)),
    });
  }
  found.push(...carburettorProblem(supply, feeds));

  found.push(...siteProblem(file));

  const ranking = section(section(file).ranking);
  if (
    ranking.method === 'life-at-bounded-tsfc' &&
    (ranking['tsfc-bound'] === undefined || ranking['tsfc-bound'] === null)
  ) {
    found.push({
      path: ['ranking', 'tsfc-bound'],
      expected: 'a bound for the method "life-at-bounded-tsfc"',
      found: 'nothing',
    });
  }
  if (ranking['tsfc-weight'] === 0 && ranking['life-weight'] === 0) {
    found.push({ path: ['ranking'], expected: 'at least one weight above 0', found: 'both weights 0' });
  }

  const search = section(section(file).search);
  if (
    typeof search.population === 'number' &&
    typeof search.evaluations === 'number' &&
    search.population > search.evaluations
  ) {
    found.push({
      path: ['search', 'population'],
      expected: `a population within the budget of ${search.evaluations} evaluations`,
      found: String(search.population),
    });
  }
  return found;
}

/** Contradictions of an engine file. */
export function engineContradictions(file: unknown): Contradiction[] {
  const found: Contradiction[] = [];
  const { intake: intakeData, sections: sectionData, feed: feedData, supply: supplyData } = section(file);
  const intake = section(intakeData);
  const feed = section(feedData);
  const roles = list(sectionData).map((entry) => section(entry).role);

  if (intake.kind === 'valveless' && feed.mode === 'premixed') {
    found.push({
      path: ['feed', 'mode'],
      expected: 'steady-injection or timed-injection with a valveless intake',
      found: 'premixed',
    });
  }
  if (intake.kind === 'valveless' && roles.length > 0 && roles[0] !== 'intake') {
    found.push({
      path: ['sections', 0, 'role'],
      expected: '"intake" first: a valveless engine begins at its intake mouth',
      found: show(roles[0]),
    });
  }
  if (intake.kind === 'reed' || intake.kind === 'poppet') {
    roles.forEach((role, index) => {
      if (role !== 'intake' && role !== 'intake-cone') return;
      found.push({
        path: ['sections', index, 'role'],
        expected: 'sections behind the valve plate only',
        found: show(role),
      });
    });
  }
  if (roles.length > 0 && !roles.includes('chamber')) {
    found.push({ path: ['sections'], expected: 'a section with the role "chamber"', found: 'none' });
  }
  const supply = section(supplyData);
  if (typeof supply.fuel === 'string' && typeof feed.fuel === 'string' && supply.fuel !== feed.fuel) {
    found.push({
      path: ['supply', 'fuel'],
      expected: `the fuel of the feed, ${show(feed.fuel)}`,
      found: show(supply.fuel),
    });
  }
  found.push(...carburettorProblem(supply, [feed]), ...siteProblem(file));
  return found;
}

function siteProblem(file: unknown): Contradiction[] {
  const { altitude, pressure } = section(section(file).site);
  if ((altitude ?? null) === null || (pressure ?? null) === null) return [];
  return [{ path: ['site'], expected: 'either altitude or pressure, which follow from each other', found: 'both' }];
}

function carburettorProblem(supply: Data, feeds: Data[]): Contradiction[] {
  const modes = feeds.map((feed) => feed.mode);
  if (supply.kind !== 'carburettor' || !modes.some((mode) => typeof mode === 'string') || modes.includes('premixed'))
    return [];
  return [
    {
      path: ['supply', 'kind'],
      expected: 'a supply that injects, or a premixed feed',
      found: 'a carburettor without a premixed feed',
    },
  ];
}

function isSection(value: unknown): value is Data {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function section(value: unknown): Data {
  return isSection(value) ? value : {};
}

function list(value: unknown): unknown[] {
  return Array.isArray(value) ? value : [];
}

function show(value: unknown): string {
  return JSON.stringify(String(value).slice(0, 60));
}
