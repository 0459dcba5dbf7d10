import { TOUCH_LIMIT } from '../noise/heat-radiation.ts';
import { atMost, type CheckRule, notApplicable, noWorseThanCaution } from './rule.ts';
import { celsius } from './say.ts';

export const hotSurface: CheckRule = {
  id: 'hot-surface',
  title: 'Hot metal',
  source: 'ISO 13732-1 (from memory, confidence high): bare metal burns within 1 min above 51 °C',
  binding: false,
  judge({ running, hottest }) {
    if (running === null) return notApplicable('The engine does not run.');
    const value = hottest();
    const found = `The shell reaches ${celsius(value)}; ${celsius(TOUCH_LIMIT)} burns a hand within a minute`;
    const words = `${found}: fence it, let it cool before touching, and keep fuel lines and dry grass away.`;
    return noWorseThanCaution(
      atMost(
        { value, limit: TOUCH_LIMIT, unit: 'K', cautionMargin: 0 },
        { pass: `${found}.`, caution: words, fail: words },
      ),
    );
  },
};
