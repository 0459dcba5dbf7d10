import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readStudy } from '../../src/config/read-study.ts';
import type { Study } from '../../src/config/study.ts';
import { assembleResults } from '../../src/ranking/assemble.ts';
import type { ArchitectureEvidence, FinalistEvidence, StudyEvidence } from '../../src/ranking/evidence.ts';
import { rankingCsv } from '../../src/ranking/ranking-csv.ts';
import { resultsJson } from '../../src/ranking/results-json.ts';
import { robustnessFrom } from '../../src/ranking/robustness.ts';
import { architecturesOf, type DesignSpace } from '../../src/space/architectures.ts';
import { assessment, check, dies, heavyValve, result, runs, summary } from '../support/fixtures.ts';

function demo(): Study {
  const reading = readStudy(readFileSync('configs/demo-quick.yaml', 'utf8'), 'demo-quick');
  if (!reading.ok) throw new Error('demo is not read');
  return reading.study;
}

const STUDY = demo();
const SPACES = architecturesOf(STUDY);
const spaceOf = (intake: string): DesignSpace =>
  SPACES.find(({ architecture }) => architecture.intake === intake && !architecture.augmenter)!;

function middle(space: DesignSpace): number[] {
  return space.variables.map((variable) =>
    variable.kind === 'choice'
      ? 0
      : variable.kind === 'integer'
        ? Math.round((variable.low + variable.high) / 2)
        : (variable.low + variable.high) / 2,
  );
}

function finalist(intake: string, tsfc: number, life: number): FinalistEvidence {
  const space = spaceOf(intake);
  const draws = Array.from({ length: 64 }, (_, i) =>
    summary({ tsfc: tsfc * (0.95 + i / 640), valveLife: life, thrust: 135 + i / 4, status: i < 3 ? 'dies' : 'ok' }),
  );
  const nominal = { low: life / 3, median: life, high: life * 3 };
  return {
    space,
    x: middle(space),
    result: result(runs({ tsfc }), assessment({ valveLife: nominal })),
    summary: summary({ tsfc, valveLife: life }),
    robustness: robustnessFrom({ seed: 's', key: intake }, draws, nominal),
    sensitivities: [],
  };
}

function works(intake: string): ArchitectureEvidence {
  return {
    architecture: spaceOf(intake).architecture,
    evaluations: 40,
    running: 30,
    feasible: 12,
    failures: [{ reason: 'thrust', count: 18 }],
    nearest: null,
  };
}

function poppetDies(): ArchitectureEvidence {
  const space = spaceOf('poppet');
  return {
    architecture: space.architecture,
    evaluations: 40,
    running: 0,
    feasible: 0,
    failures: [{ reason: 'intake does not follow', count: 40 }],
    nearest: {
      space,
      x: middle(space),
      result: result(
        dies(heavyValve()),
        assessment({ valveLife: null, checks: [check({ id: 'engine-runs', verdict: 'fail' })] }),
      ),
      summary: summary({
        status: 'dies',
        reason: 'intake does not follow',
        tsfc: null,
        valveLife: null,
        violations: [{ id: 'valve-follows', violation: 0.92 }],
      }),
    },
  };
}

function evidence(over: Partial<StudyEvidence> = {}): StudyEvidence {
  return {
    study: STUDY,
    modelVersion: 'm',
    toolVersion: 't',
    architectures: [works('reed'), poppetDies(), works('valveless-u')],
    finalists: [finalist('valveless-u', 12e-5, 36000), finalist('reed', 7.5e-5, 2400)],
    tradePoints: [
      {
        architecture: 'reed_plain_premixed-propane',
        tsfc: 8e-5,
        valveLife: 2000,
        thrust: 150,
        feasible: true,
        reason: '',
      },
    ],
    evaluations: { total: 400, screen: 80, full: 120, refused: 30, robustness: 200 },
    stoppedBecause: 'the budget is spent',
    convergence: [{ evaluations: 120, hypervolume: 0.4 }],
    constants: [],
    validation: [],
    ...over,
  };
}

describe('results of a study', () => {
  const results = assembleResults(evidence());

  it('numbers the candidates in rank order and draws the front by rising TSFC', () => {
    expect(results.candidates.map(({ id }) => id)).toEqual(['C1', 'C2']);
    expect(results.candidates.every(({ feasible, nonDominated }) => feasible && nonDominated)).toBe(true);
    const reed = results.candidates.find(({ architecture }) => architecture.intake === 'reed')!;
    expect(results.front[0]).toBe(reed.id);
    for (const { why } of results.candidates) expect(why).toContain('three draws in four stay below');
  });

  it('names the engine to build first, with numbers, bands and chance', () => {
    const first = results.candidates[0];
    expect(results.answer[0]).toContain(`Build ${first.id}: ${first.architecture.label}.`);
    expect(results.answer[0]).toMatch(
      /\d+ N \(\d+(\.\d+)? lbf; 5–95 %: \d+ to \d+ N\) at 95 Hz and uses .*kg\/\(N·h\) \(.*lb\/\(lbf·h\)\)/,
    );
    expect(results.answer.at(-1)).toMatch(/^How far to trust it: .*in 61 of 64 draws/);
  });

  it('says why not a poppet, with forces, times and the smallest change that would free it', () => {
    const sentence = results.answer.find((text) => text.startsWith('Why not poppet valves?'))!;
    expect(sentence).toContain('None of 40 designs ran by itself.');
    expect(sentence).toContain(
      'suction offers one valve 3.1 N of the 40 N that it needs; with that force it takes about 7.2 ms to open and has 2 ms.',
    );
    expect(sentence).toContain('9 valves that share the same port area');
    const poppet = results.architectures.find(({ architecture }) => architecture.intake === 'poppet')!;
    expect(poppet.forces).toMatchObject({ offered: 3.1, needed: 40, timeOffered: 0.002 });
    // Travel from rest under a constant force: s = F t²/(2 m), so t ∝ 1/√F; the force needed is that for half of the window.
    expect(poppet.forces!.timeNeeded).toBeCloseTo(0.002 * Math.sqrt(40 / 3.1), 12);
    expect(poppet.reason.match(/ 40 N/g)).toHaveLength(1);
    expect(poppet.leastViolating?.bindingConstraint).toBe('valve follows');
  });

  it('names what binds a valve that does not follow, although the engine also dies', () => {
    const dying = poppetDies();
    dying.nearest!.summary.violations.push({ id: 'self-sustaining', violation: 0.99 });
    const { architectures } = assembleResults(evidence({ architectures: [works('reed'), dying] }));
    expect(architectures[1].leastViolating?.bindingConstraint).toBe('valve follows');
  });

  it('points to the architecture one choice away where no cure is known', () => {
    const steady = SPACES.find(
      ({ architecture: { intake, augmenter, feed } }) =>
        intake === 'reed' && !augmenter && feed.mode === 'steady-injection',
    )!.architecture;
    const none: ArchitectureEvidence = {
      ...works('reed'),
      architecture: steady,
      running: 0,
      feasible: 0,
      failures: [{ reason: 'no ignition', count: 40 }],
    };
    const { architectures } = assembleResults(
      evidence({ finalists: [], architectures: [none, works('valveless-u'), works('reed')] }),
    );
    expect(architectures[0].freedBy).toBe(
      'The smallest change that was tried and helps is reed valves, no augmenter, premixed propane: of 40 designs 12 met every wish.',
    );
    const alone = assembleResults(evidence({ architectures: [none, works('poppet')] }));
    expect(alone.architectures[0].freedBy).toBe('');
  });

  it('says what geometry holds against the nearest design where it refuses all', () => {
    const refused: ArchitectureEvidence = {
      ...works('reed'),
      evaluations: 0,
      running: 0,
      feasible: 0,
      failures: [{ reason: 'max-length', count: 99 }],
      objection: 'The engine is 2.3 m long and 2 m is allowed; shorten the tailpipe.',
    };
    const [reed] = assembleResults(
      evidence({ finalists: [], architectures: [refused, works('valveless-u')] }),
    ).architectures;
    expect(reed.reason).toContain('Geometry refused every design, most often for "max length"');
    expect(reed.freedBy).toBe('The nearest design: The engine is 2.3 m long and 2 m is allowed; shorten the tailpipe.');
  });

  it('keeps what screening cost and saved', () => {
    const screening = { screened: 80, full: 40, spent: 60, withoutScreening: 80, audited: 4, overturned: 0 };
    expect(assembleResults(evidence({ screening })).screening).toEqual(screening);
  });

  it('says what was explored and why the search stopped', () => {
    expect(results.answer.find((text) => text.startsWith('Explored:'))).toBe(
      'Explored: 120 designs in 3 architectures, 400 simulations in all; 60 designs ran by themselves and 24 met every wish. The search stopped because: the budget is spent.',
    );
  });

  it('groups the failures by intake and tells the nearest valve of all', () => {
    const space = SPACES.find(({ architecture }) => architecture.intake === 'poppet' && architecture.augmenter)!;
    const one = poppetDies();
    const lighter = structuredClone(heavyValve());
    Object.assign(lighter, { forceOffered: 12, followRatio: 12 / 40 });
    const other: ArchitectureEvidence = {
      ...one,
      architecture: space.architecture,
      nearest: {
        ...one.nearest!,
        space,
        x: middle(space),
        result: result(dies(lighter), one.nearest!.result.assessment),
      },
    };
    const { answer } = assembleResults(evidence({ architectures: [works('reed'), one, other, works('valveless-u')] }));
    const told = answer.filter((text) => text.startsWith('Why not poppet valves?'));
    expect(told).toHaveLength(1);
    expect(told[0]).toContain('None of 80 designs in 2 architectures ran by itself.');
    expect(told[0]).toContain('12 N of the 40 N');
    expect(answer.findIndex((text) => text.startsWith('Why not'))).toBe(answer.indexOf(told[0]));
  });

  it('keeps what thicker or better sheet gains, the present sheet first', () => {
    const [present, ...others] = results.candidates[0].alternatives!;
    expect(present).toMatchObject({
      present: true,
      massRatio: 1,
      thickness: results.candidates[0].engine.shell.thickness,
    });
    expect(others.length).toBeGreaterThan(0);
    // Hoop stress p d/(2 t) falls with thickness, so the next thicker gauge of the same sheet is used less.
    expect(others[0].thickness).toBeGreaterThan(present.thickness);
    expect(others[0].yieldUse).toBeLessThan(present.yieldUse);
  });

  it('gives the same bytes for the same evidence, whatever the order of keys', () => {
    const again = assembleResults(
      structuredClone({ ...evidence(), finalists: [], architectures: [] }) as StudyEvidence,
    );
    expect(again.candidates).toEqual([]);
    expect(resultsJson(assembleResults(evidence()))).toBe(resultsJson(results));
    expect(JSON.parse(resultsJson(results)).study).toEqual(JSON.parse(JSON.stringify(STUDY)));
  });

  it('refuses to write what is not a number', () => {
    const broken = structuredClone({ ...results });
    broken.candidates[0].score = Number.NaN;
    expect(() => resultsJson(broken)).toThrow(/candidates\[0\]\.score/);
  });

  it('writes a table that a spreadsheet reads and does not run', () => {
    const spoilt = structuredClone(results);
    spoilt.candidates[0].why = '=HYPERLINK("x"), "quoted"';
    const lines = rankingCsv(spoilt).split('\r\n');
    expect(lines).toHaveLength(4);
    expect(lines[0].split(',')[0]).toBe('rank');
    expect(lines[1]).toContain(`"'=HYPERLINK(""x""), ""quoted"""`);
    const tsfcColumn = lines[0].split(',').indexOf('TSFC lb/(lbf h)');
    const reedRow = lines.find((line) => line.includes('reed valves'))!;
    // 7.5e-5 kg/(N s): 1 kg/(N s) is 9.80665 · 3600 lb/(lbf h), by the standard acceleration of gravity.
    const cells = reedRow.match(/("([^"]|"")*"|[^,]*)(,|$)/g)!.map((cell) => cell.replace(/,$/, ''));
    expect(Number(cells[tsfcColumn])).toBeCloseTo(7.5e-5 * 9.80665 * 3600, 4);
  });
});

describe('a study without one feasible design', () => {
  it('names what stopped the nearest and what would have to move', () => {
    const broken = check({
      verdict: 'fail',
      value: 90,
      margin: -0.32,
      sentence: 'It gives 90 N; 133 N is wanted: scale every diameter by 1.22.',
    });
    const near: ArchitectureEvidence = {
      ...works('reed'),
      feasible: 0,
      nearest: {
        space: spaceOf('reed'),
        x: middle(spaceOf('reed')),
        result: result(runs({ thrust: 90 }), assessment({ checks: [broken] })),
        summary: summary({ thrust: 90, violations: [{ id: 'thrust', violation: 0.32 }] }),
      },
    };
    const results = assembleResults(evidence({ finalists: [], architectures: [near, poppetDies()], tradePoints: [] }));
    const [reed] = results.architectures;
    expect(reed.reason).toContain(
      '30 of 40 designs ran by themselves, and none is allowed. The nearest: It gives 90 N; 133 N is wanted',
    );
    expect(reed.freedBy).toBe('"Thrust wanted" would have to move from 90 N to 133 N, or its limit to 90 N.');
    expect(results.answer.join(' ')).toContain('Why not poppet valves?');
    expect(results.answer[0]).toMatch(/^No design/);
  });
});

describe('wishes that contradict physics', () => {
  const said = (change: (study: Study) => void, over: Partial<StudyEvidence> = {}): string => {
    const study = demo();
    study.brief.wanted = { ...study.brief.wanted, thrust: null, endurance: null, maxTsfc: null };
    change(study);
    return assembleResults(evidence({ ...over, study })).contradictions.join('\n');
  };

  it('are not found where there are none', () => {
    expect(said(() => {})).toBe('');
  });

  it('endurance longer than any valve gives', () => {
    const text = said(
      (study) => {
        study.brief.wanted.endurance = 1e5;
      },
      { finalists: [finalist('reed', 7.5e-5, 2400)] },
    );
    expect(text).toContain('The longest life among 60 engines that ran is 40 min');
  });

  it('thrust beyond the ranges', () => {
    expect(said((study) => (study.brief.wanted.thrust = 900))).toContain(
      'The strongest of 60 engines that ran in these ranges gives 150 N',
    );
  });

  it('a mixture that cannot burn, and one that cannot burn all', () => {
    // Flammability of propane in air 2.1 to 9.5 % by volume: US Bureau of Mines Bulletin 627.
    expect(said((study) => (study.space.equivalenceRatio = { low: 0.2, high: 0.4 }))).toContain('does not burn');
    expect(said((study) => (study.space.equivalenceRatio = { low: 1.25, high: 1.3 }))).toContain(
      'gets 12.5 kg at most, so 20 % of the fuel at least leaves unburnt',
    );
  });

  it('more fuel than the supply holds', () => {
    const text = said((study) => {
      study.brief.wanted.thrust = 140;
      study.brief.wanted.endurance = 7200;
    });
    // 7.5e-5 kg/(N s) · 140 N · 7200 s = 75.6 kg against 45 kg · 0.8.
    expect(text).toContain('takes at least 75.6 kg of propane');
    expect(text).toContain('holds 36 kg');
  });

  it('two wishes that no engine meets together', () => {
    const apart = evidence().architectures.map((architecture) => ({ ...architecture, feasible: 0 }));
    const text = said(
      (study) => {
        study.brief.wanted.thrust = 145;
        study.brief.wanted.endurance = 10000;
      },
      { architectures: apart },
    );
    expect(text).toContain('but none of 60 that ran gives both');
  });
});
