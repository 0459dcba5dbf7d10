/** What heats and cools the valve of a running engine, from the computed traces and the head cell of the profile. */
import type { Engine } from '../engine/engine.ts';
import type { RunningPerformance } from '../engine/performance.ts';
import { flatPlateFilm, type ValveHeat, valveTemperature } from './valve-temperature.ts';

const AIR_GAS_CONSTANT = 287.05;
/** Lift over stop lift above which the valve counts as open. */
const OPEN = 0.05;
/**
 * Conductance of dry metal contact, W/(m² K), times the share of the valve that touches its seat.
 * From memory (contact of ground steel in air 2000–5000), confidence low.
 */
const SEAT_CONDUCTANCE = { reed: 3000 * 0.25, poppet: 3000 * 0.15 };
/** Part of the way from air to shell temperature that the air-cooled plate takes. Common practice, no source. */
const PLATE_SHARE = 0.3;

/** Mean temperature, K, of the petals or poppet heads. NaN for a valveless engine. */
export function runningValveTemperature(engine: Engine, running: RunningPerformance): number {
  const { intake, site } = engine;
  if (intake.kind === 'valveless') return Number.NaN;
  const stop = intake.kind === 'reed' ? intake.stopLift : intake.lift;
  const lifts = running.traces.valveLift;
  const openShare = Math.max(lifts.filter((lift) => lift > OPEN * stop).length / Math.max(lifts.length, 1), 0.01);
  const portArea =
    intake.kind === 'reed' ? intake.petals * intake.portArea : (intake.valves * Math.PI * intake.portDiameter ** 2) / 4;
  const length = intake.kind === 'reed' ? intake.length : intake.headDiameter;
  const density = site.pressure / (AIR_GAS_CONSTANT * site.temperature);
  const { profile } = running;
  const heat: ValveHeat = {
    openShare,
    gasFilm: profile.filmCoefficient[0],
    gasTemperature: profile.effectiveGasTemperature[0],
    airFilm: flatPlateFilm(running.airFlow / (density * portArea * openShare), length),
    airTemperature: site.temperature,
    seatConductance: SEAT_CONDUCTANCE[intake.kind],
    seatTemperature: site.temperature + PLATE_SHARE * (profile.wallTemperature[0] - site.temperature),
  };
  return valveTemperature(heat);
}
