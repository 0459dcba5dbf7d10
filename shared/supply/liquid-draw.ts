/** Heat that a vaporiser coil must give to liquid propane: latent heat and superheat to `outlet`, W. First law. */
import { latentHeat, PROPANE } from './propane.ts';

export function vaporiserDuty(flow: number, liquidTemperature: number, outlet: number): number {
  return flow * (latentHeat(liquidTemperature) + PROPANE.gasHeat * Math.max(outlet - liquidTemperature, 0));
}
