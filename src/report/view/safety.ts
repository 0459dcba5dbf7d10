/** The usual cautions. They do not replace local codes, and say so. */
import type { StudyResults } from '../../ranking/results.ts';
import { duration } from '../format/duration.ts';
import { fixed } from '../format/number.ts';
import { distance } from '../format/quantity.ts';

export interface Caution {
  title: string;
  text: string;
}

export interface SafetyView {
  cautions: Caution[];
  noise: { id: string; level: string; distance: string; exposure: string }[];
}

/** Sources: burn threshold ISO 13732-1 (from memory, high confidence); noise dose NIOSH 98-126; CO limits OSHA and NIOSH. */
function cautions(results: StudyResults): Caution[] {
  const propane = results.study.space.feeds.some((f) => f.fuel === 'propane');
  const petrol = results.study.space.feeds.some((f) => f.fuel === 'petrol');
  return [
    {
      title: 'Fuel',
      text: [
        propane
          ? 'Propane is heavier than air and gathers in pits and cellars: run outdoors, on level ground, cylinder upright, upwind and away from the hot engine, with a valve that can be shut from the operator’s place. Never warm a cylinder with a flame. Liquid propane freezes skin.'
          : '',
        petrol
          ? 'Petrol vapour creeps along the ground and lights far away: fill only a cold engine, keep the tank closed, shielded and upwind.'
          : '',
        'Test every joint for leaks before each run. Cylinders, regulators and gas lines are the trade of licensed people in most places.',
      ]
        .filter((t) => t !== '')
        .join(' '),
    },
    {
      title: 'Fire',
      text: 'Clear everything that burns from ten metres behind the tailpipe and three metres around (common practice, no source). A hard start throws burning fuel out of both ends. Keep an extinguisher for liquid and gas fires and a second person who does nothing but stand by it.',
    },
    {
      title: 'Noise',
      text: 'Pulsejets are loud enough to harm hearing within seconds. Wear plugs and muffs together, keep others away, think of the neighbours and of the law. Times below follow the rule that 85 dB(A) may last 8 hours and each 3 dB more halve the time (NIOSH).',
    },
    {
      title: 'Hot metal',
      text: 'The shell glows. Bare metal burns skin at about 51 °C after a minute (ISO 13732-1). Gloves and face shield, no synthetic clothes, hot parts marked until they are cold.',
    },
    {
      title: 'Burst and flying fragments',
      text: 'Late ignition of a full chamber can burst it; valves and their screws break and fly out of the intake. Stand to neither end, and neither in the plane of the valve plate nor in that of a seam. Use a screen that stops steel, not only heat.',
    },
    {
      title: 'Carbon monoxide',
      text: 'The exhaust is rich in carbon monoxide, which has no smell. Never run indoors, not even with the door open. Published limits: 50 ppm over 8 hours (OSHA), 35 ppm (NIOSH), danger to life at 1,200 ppm.',
    },
    {
      title: 'Thrust and tethering',
      text: 'Fix the engine to a stand that carries at least five times its greatest thrust (common practice, no source), and add a separate tether. Never hold it. This report is about test stands; vehicles and aircraft are another matter with laws of their own.',
    },
    {
      title: 'Cutting and welding',
      text: 'Sheet edges and petals cut. Weld in moving air; do not weld near fuel. Stainless and nickel alloys give off harmful fume; zinc-coated sheet must not be used.',
    },
  ];
}

export function safetyView(results: StudyResults): SafetyView {
  return {
    cautions: cautions(results),
    noise: results.candidates.slice(0, 3).flatMap((c) => {
      const { noise } = c.assessment;
      if (!noise) return [];
      return [
        {
          id: c.id,
          level: `${fixed(noise.level, 0)} ± ${fixed(noise.uncertainty, 0)}\u00a0dB(A)`,
          distance: distance(noise.distance),
          exposure: duration(noise.exposureMinutes * 60),
        },
      ];
    }),
  };
}
