import { prechargeOhm, rcTimeS } from '../../calc/supply/capacitor.ts';
import { finding, fittingPlace, type Rule } from './rule.ts';

/** What a resistor by hand may take at first, W, and the share of the voltage that may be left when the fuse goes in. Source: our choice. */
const PEAK_W = 7;
const LEFT_SHARE = 0.05;

/** RULES 8: a capacitor of which no pre-charge is told: a note, with the resistor that does it and how long it takes. */
export const capacitorPrecharge: Rule = {
  id: 'capacitor-precharge',
  sensitive: false,
  check: ({ model }) => {
    const volts = model.settings.chargingV.value;
    return model.circuit.capacitors.flatMap(({ fitting }) => {
      if (fitting.precharged) return [];
      const farads = fitting.capacitanceF.value;
      const ohm = prechargeOhm(volts, PEAK_W);
      const seconds = rcTimeS({ farads, ohm, fromV: volts, toV: LEFT_SHARE * volts });
      return [
        finding('capacitor-precharge', {
          severity: 'note',
          places: [fittingPlace(fitting)],
          params: { farads, prechargeOhm: ohm, seconds },
          source: 'rcCircuit',
        }),
      ];
    });
  },
};
