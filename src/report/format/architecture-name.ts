/** Short names of architectures, for labels and narrow columns. */
import type { Feed } from '../../../shared/engine/engine.ts';
import type { IntakeChoice } from '../../config/study.ts';
import type { Architecture } from '../../space/architecture.ts';

export const INTAKE_NAMES: Record<IntakeChoice, string> = {
  reed: 'reed',
  poppet: 'poppet',
  'valveless-straight': 'valveless straight',
  'valveless-u': 'valveless U',
};

export const FEED_NAMES: Record<Feed['mode'], string> = {
  premixed: 'premixed',
  'steady-injection': 'steady injection',
  'timed-injection': 'timed injection',
};

/** "reed + augmenter, premixed propane". */
export function shortName(architecture: Architecture): string {
  const { intake, augmenter, feed } = architecture;
  return `${INTAKE_NAMES[intake]}${augmenter ? ' + augmenter' : ''}, ${FEED_NAMES[feed.mode]} ${feed.fuel}`;
}
