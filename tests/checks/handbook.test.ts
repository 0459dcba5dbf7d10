import { describe, expect, it } from 'vitest';
import { CHECK_RULES } from '../../shared/checks/registry.ts';
import { RUNNING_HANDBOOK } from './handbook/running.ts';
import { SHELL_HANDBOOK, SUPPLY_HANDBOOK } from './handbook/shell-and-supply.ts';
import { BRIEF_HANDBOOK, PEOPLE_HANDBOOK, SHOP_HANDBOOK } from './handbook/shop-and-people.ts';

const HANDBOOK = {
  ...RUNNING_HANDBOOK,
  ...SHELL_HANDBOOK,
  ...SUPPLY_HANDBOOK,
  ...SHOP_HANDBOOK,
  ...PEOPLE_HANDBOOK,
  ...BRIEF_HANDBOOK,
};

describe('each check against a figure from outside', () => {
  it('none is left out', () => {
    expect(Object.keys(HANDBOOK).sort()).toEqual(CHECK_RULES.map((rule) => rule.id).sort());
  });
  it.each(Object.entries(HANDBOOK).map(([id, entry]) => [id, entry.source, entry] as const))(
    '%s: %s',
    (_, __, { found, low, high }) => {
      const value = found();
      expect(value).toBeGreaterThanOrEqual(low);
      expect(value).toBeLessThanOrEqual(high);
    },
  );
});
