import type { CheckRule, Judgement } from './rule.ts';
import { notApplicable } from './rule.ts';

export const fuelMatch: CheckRule = {
  id: 'fuel-match',
  title: 'Supply fits the feed',
  source: 'common practice, no source',
  binding: true,
  judge({ engine, brief }): Judgement {
    const { supply } = brief;
    if (supply === null) return notApplicable('No fuel supply is stated.');
    const { feed } = engine;
    const wrong =
      supply.fuel !== feed.fuel
        ? `the supply holds ${supply.fuel}, the engine burns ${feed.fuel}: change one of them`
        : supply.kind === 'carburettor' && feed.mode !== 'premixed'
          ? 'a carburettor can only feed a premixed intake: inject, or draw the air through it'
          : null;
    const ok = wrong === null;
    return {
      verdict: ok ? 'pass' : 'fail',
      value: ok ? 1 : 0,
      limit: 1,
      unit: '',
      margin: ok ? 0 : -1,
      sentence: ok
        ? `The ${supply.kind} supply of ${supply.fuel} fits the ${feed.mode} feed.`
        : `The supply does not fit: ${wrong}.`,
    };
  },
};
