/** For each check: an input that passes it and one that trips it (fail or caution). */
import { RUNNING_SCENARIOS } from './running-scenarios.ts';
import type { Scenario } from './scenario-kit.ts';
import { SUPPLY_AND_SHOP_SCENARIOS } from './shop-scenarios.ts';

export const SCENARIOS: Record<string, Scenario> = { ...RUNNING_SCENARIOS, ...SUPPLY_AND_SHOP_SCENARIOS };
