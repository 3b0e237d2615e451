import { type Surroundings, secondsToReach, temperatureAfterC } from '../conductor/shortHeating.ts';
import type { Thermal } from '../conductor/thermal.ts';
import { damageLimitC, overloadLimitC, SHORT_TIME_S, shortLimitC } from '../tables/adiabatic.ts';
import type { InsulationC } from '../tables/ampacity.ts';

/** A conductor as a short finds it. */
export interface FaultConductor extends Surroundings {
  readonly thermal: Thermal;
  readonly insulationC: InsulationC;
}

/**
 * Seconds until a constant current has damaged the insulation; Infinity: never. Up to 5 s the short-circuit limit counts
 * (160 or 250 degC), beyond 5 s class + 50 K, so a conductor that lies between the two at 5 s is damaged then.
 * Falls with current, without a jump. Sources: BS 7671 Table 43.1; ISO 6722-1 (memory); `shortHeating.ts`.
 * 'awg:4', copper, 105 degC from 50 degC in 50 degC: 2000 A in 1.87 s, 1000 A in 7.3 s, 300 A in 99 s, 170 A never.
 */
export function damageSeconds(conductor: FaultConductor, currentA: number): number {
  const { thermal, insulationC } = conductor;
  const short = secondsToReach(thermal, currentA, shortLimitC(insulationC), conductor);
  if (short <= SHORT_TIME_S) return short;
  return Math.max(SHORT_TIME_S, secondsToReach(thermal, currentA, overloadLimitC(insulationC), conductor));
}

/**
 * Largest current the conductor stands for good, A: it settles at class + 50 K; 0 where the air is hotter than that.
 * I^2 = G (Tx - Ta) / r(Tx). 'awg:4', copper, 105 degC, in 30 degC: 193 A.
 */
export function sustainedA({ thermal, insulationC, ambientC }: FaultConductor): number {
  const { lossWPerMK, ohmPerM20, betaC } = thermal;
  const limit = overloadLimitC(insulationC);
  const ohm = (ohmPerM20 * (betaC + limit)) / (betaC + 20);
  return Math.sqrt(Math.max(0, lossWPerMK * (limit - ambientC)) / ohm);
}

/** Temperature after that time, less the limit that holds then, K; above 0 the insulation is damaged. */
export function excessK(conductor: FaultConductor, currentA: number, seconds: number): number {
  return (
    temperatureAfterC(conductor.thermal, currentA, seconds, conductor) - damageLimitC(conductor.insulationC, seconds)
  );
}
